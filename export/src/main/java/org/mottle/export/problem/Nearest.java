package org.mottle.export.problem;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/**
 * The known word nearest to a mistyped one: one that goes on where the typed word stops, else by
 * edit distance (Levenshtein 1966). Of equally near words the first in the given order.
 */
public final class Nearest {
  /** A single letter begins too many words to mean one of them. */
  private static final int SHORTEST_BEGINNING = 2;

  private Nearest() {}

  /** The nearest of {@code known}, if it is near enough to be what was meant. */
  public static Optional<String> to(String typed, Collection<String> known) {
    Comparator<String> byDistance = Comparator.comparingInt(k -> distance(typed, k));
    Optional<String> longer =
        typed.length() < SHORTEST_BEGINNING
            ? Optional.empty()
            : known.stream().filter(k -> k.startsWith(typed)).min(byDistance);
    return longer.or(() -> known.stream().min(byDistance).filter(k -> isNear(typed, k)));
  }

  private static boolean isNear(String typed, String known) {
    int most = Math.max(2, Math.max(typed.length(), known.length()) / 2);
    int distance = distance(typed, known);
    return distance <= most && distance < typed.length(); // a letter at least must be the same
  }

  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(substituted, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
