package org.mottle.export.settings;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * A place in a settings file with its path, so that every message can say where. What is wrong goes
 * to the problems of the file; the reader goes on with the value it would use without the key.
 */
final class SettingsNode {
  private final String file;
  private final Problems problems;
  private final String path;
  private final Object value;

  private SettingsNode(String file, Problems problems, String path, Object value) {
    this.file = file;
    this.problems = problems;
    this.path = path;
    this.value = value;
  }

  /**
   * @param file what messages call it
   * @param value maps, lists, texts, numbers, booleans, null
   */
  static SettingsNode root(String file, Problems problems, Object value) {
    return new SettingsNode(file, problems, "", value);
  }

  boolean absent() {
    return value == null;
  }

  void problem(String what) {
    problems.add("%s%s: %s", file, path.isEmpty() ? "" : ", " + path, what);
  }

  SettingsNode at(String key) {
    Object child = value instanceof Map<?, ?> map ? map.get(key) : null;
    return new SettingsNode(file, problems, path.isEmpty() ? key : path + "." + key, child);
  }

  /** The keys here, in the order of the file; anything but keys and values is a problem. */
  Set<String> keys() {
    if (value instanceof Map<?, ?>) {
      @SuppressWarnings("unchecked") // the keys of YAML and JSON are text
      Map<String, ?> map = (Map<String, ?>) value;
      return map.keySet();
    }
    if (!absent()) {
      problem(
          "expected keys and values"
              + (path.isEmpty() ? ", as cell_m: 0.5 on a line of its own" : "")
              + ", was "
              + shown());
    }
    return Set.of();
  }

  void allow(String... known) {
    keys().forEach(key -> requireKnown(key, Arrays.asList(known), "unknown key"));
  }

  /** A key that is none of {@code known} is a problem, which begins with {@code what}. */
  void requireKnown(String key, List<String> known, String what) {
    if (!known.contains(key)) {
      problem(
          what
              + " '"
              + key
              + "'; "
              + Nearest.to(key, known)
                  .map(near -> "did you mean '" + near + "'?")
                  .orElse("known here: " + String.join(", ", known)));
    }
  }

  Optional<String> text() {
    if (absent()) {
      return Optional.empty();
    }
    if (value instanceof Map || value instanceof List) {
      problem("expected one value, was a list or a block");
      return Optional.empty();
    }
    return Optional.of(value.toString());
  }

  double number(double otherwise) {
    if (absent()) {
      return otherwise;
    }
    if (value instanceof Number number && Double.isFinite(number.doubleValue())) {
      return number.doubleValue();
    }
    problem("expected a number, was " + shown());
    return otherwise;
  }

  double positive(double otherwise) {
    double number = number(otherwise);
    if (!absent() && !(number > 0)) {
      problem("expected a number above 0, was " + number);
      return otherwise;
    }
    return number;
  }

  double notNegative(double otherwise) {
    double number = number(otherwise);
    if (!absent() && number < 0) {
      problem("expected a number of 0 or more, was " + number);
      return otherwise;
    }
    return number;
  }

  /** A whole number of 1 or more; 12.0 is whole. */
  int count(int otherwise) {
    if (absent()) {
      return otherwise;
    }
    if (value instanceof Number number
        && number.doubleValue() >= 1
        && number.doubleValue() <= Integer.MAX_VALUE
        && number.doubleValue() == Math.rint(number.doubleValue())) {
      return number.intValue();
    }
    problem("expected a whole number of 1 or more, was " + shown());
    return otherwise;
  }

  /** A whole number of at least {@code least}; 12.0 is whole. */
  long whole(long least, long otherwise) {
    if (absent()) {
      return otherwise;
    }
    if (value instanceof Number number
        && number.doubleValue() == Math.rint(number.doubleValue())
        && Math.abs(number.doubleValue()) < Long.MAX_VALUE
        && number.longValue() >= least) {
      return number.longValue();
    }
    problem(
        "expected a whole number"
            + (least == Long.MIN_VALUE ? "" : " of " + least + " or more")
            + ", was "
            + shown());
    return otherwise;
  }

  <T> T choice(T[] choices, Function<T, String> labelOf, T otherwise) {
    Optional<String> typed = text();
    if (typed.isEmpty()) {
      return otherwise;
    }
    for (T choice : choices) {
      if (labelOf.apply(choice).equals(typed.get())) {
        return choice;
      }
    }
    problem(
        "expected one of "
            + String.join(", ", Arrays.stream(choices).map(labelOf).toList())
            + ", was '"
            + typed.get()
            + "'");
    return otherwise;
  }

  private String shown() {
    return value instanceof Map ? "a block" : value instanceof List ? "a list" : "'" + value + "'";
  }
}
