package org.mottle.engine.patch;

import java.util.Arrays;

/**
 * The interval that leaves 5 % of a sample below and 5 % above, between order statistics by linear
 * interpolation (Hyndman and Fan 1996, type 7).
 *
 * @param low NaN for an empty sample
 * @param high NaN for an empty sample
 */
record Interval(double low, double high) {
  private static final double TAIL = 0.05;

  static Interval of(double[] sample) {
    if (sample.length == 0) {
      return new Interval(Double.NaN, Double.NaN);
    }
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return new Interval(quantile(sorted, TAIL), quantile(sorted, 1 - TAIL));
  }

  private static double quantile(double[] sorted, double p) {
    double place = p * (sorted.length - 1);
    int below = (int) place;
    int above = Math.min(sorted.length - 1, below + 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }
}
