package org.mottle.engine.contour;

import org.mottle.engine.check.Check;

/**
 * A value at which the surface is cut. Values within 1e-9 of it (relative above 1) are the level
 * itself: rounding of a flat surface draws no islands.
 *
 * @param value where to cut
 * @param above whether ground exactly at the level belongs to the part above it
 */
record Level(double value, boolean above) {
  private static final double ROUNDING = 1e-9;

  Level {
    Check.finite("level", value, "");
  }

  boolean isAbove(double v) {
    return above ? v >= value - slack() : v > value + slack();
  }

  /** Whether a value is so near that interpolation may have moved it across. */
  boolean isAt(double v) {
    return Math.abs(v - value) <= 2 * slack();
  }

  /** The least value that is the level. */
  double lowest() {
    return value - slack();
  }

  /** The greatest value that is the level. */
  double highest() {
    return value + slack();
  }

  private double slack() {
    return ROUNDING * Math.max(1, Math.abs(value));
  }

  /** The limits of bands: ground at a limit belongs above it, at the last of several below it. */
  static Level[] ofLimits(double[] limits) {
    Level[] levels = ascending(limits, true);
    int last = levels.length - 1;
    if (last > 0) {
      levels[last] = new Level(limits[last], false);
    }
    return levels;
  }

  static Level[] ascending(double[] limits, boolean above) {
    Level[] levels = new Level[limits.length];
    for (int i = 0; i < limits.length; i++) {
      if (i > 0 && !(limits[i] > limits[i - 1])) {
        throw new IllegalArgumentException(
            "limits must ascend, were " + limits[i - 1] + " then " + limits[i]);
      }
      levels[i] = new Level(limits[i], above);
    }
    return levels;
  }

  /** How many of ascending levels a value lies above. */
  static int passed(Level[] levels, double v) {
    int index = 0;
    while (index < levels.length && levels[index].isAbove(v)) {
      index++;
    }
    return index;
  }
}
