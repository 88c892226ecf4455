package org.mottle.export.problem;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Collects what is wrong with the input so that one run tells everything. Formats are those of
 * {@link String#format} in the root locale, so that numbers look the same everywhere. Not for
 * sharing between threads.
 */
public final class Problems {
  /** How many rows a single line names before it says how many more there are. */
  private static final int NAMED = 20;

  private final List<String> lines = new ArrayList<>();

  public Problems add(String format, Object... values) {
    lines.add(values.length == 0 ? format : String.format(Locale.ROOT, format, values));
    return this;
  }

  /** Takes over the lines of a refusal met on the way. */
  public Problems add(InputRefused refused) {
    lines.addAll(refused.lines());
    return this;
  }

  public Problems require(boolean fine, String format, Object... values) {
    return fine ? this : add(format, values);
  }

  public boolean isEmpty() {
    return lines.isEmpty();
  }

  public List<String> lines() {
    return List.copyOf(lines);
  }

  public void throwIfAny() {
    if (!lines.isEmpty()) {
      throw new InputRefused(lines);
    }
  }

  /** "3, 4, 7 and 37 more": enough to find the fault, never a page of it. */
  public static String listed(List<?> items) {
    return listed(items, NAMED);
  }

  /** As {@link #listed(List)} with at most {@code most} items named. */
  public static String listed(List<?> items, int most) {
    String named =
        items.stream().limit(most).map(String::valueOf).collect(Collectors.joining(", "));
    return items.size() <= most ? named : named + " and " + (items.size() - most) + " more";
  }
}
