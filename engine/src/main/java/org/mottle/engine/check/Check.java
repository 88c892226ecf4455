package org.mottle.engine.check;

import java.util.Locale;

/** Argument checks whose message names the thing, the rule, the unit and the value refused. */
public final class Check {

  private Check() {}

  /** Refuses NaN, infinities and anything below {@code minimum}. */
  public static double atLeast(String name, double value, double minimum, String unit) {
    if (!(value >= minimum) || Double.isInfinite(value)) {
      throw refusal(name, ">= " + minimum, unit, value);
    }
    return value;
  }

  /** Refuses NaN, infinities and anything not above {@code limit}. */
  public static double above(String name, double value, double limit, String unit) {
    if (!(value > limit) || Double.isInfinite(value)) {
      throw refusal(name, "> " + limit, unit, value);
    }
    return value;
  }

  /** Refuses NaN and anything outside [minimum, maximum]. */
  public static double within(
      String name, double value, double minimum, double maximum, String unit) {
    if (!(value >= minimum && value <= maximum)) {
      throw refusal(name, "between " + minimum + " and " + maximum, unit, value);
    }
    return value;
  }

  /** Refuses NaN and infinities. */
  public static double finite(String name, double value, String unit) {
    if (!Double.isFinite(value)) {
      throw refusal(name, "finite", unit, value);
    }
    return value;
  }

  private static IllegalArgumentException refusal(
      String name, String rule, String unit, double value) {
    return new IllegalArgumentException(
        String.format(
            Locale.ROOT,
            "%s must be %s%s, was %s",
            name,
            rule,
            unit.isEmpty() ? "" : " " + unit,
            value));
  }
}
