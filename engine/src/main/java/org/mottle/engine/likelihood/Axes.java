package org.mottle.engine.likelihood;

import java.util.List;

/**
 * Where the likelihood is computed: a grid over the logarithms of practical range, nugget and sill.
 * On a grid nothing can end in a local optimum, and parameters are drawn from the whole surface.
 *
 * @param range [.] m
 * @param nugget [.] value²
 * @param sill [.] of the structure, value²
 */
record Axes(double[] range, double[] nugget, double[] sill) {
  private static final double RANGE_STEP = 0.125;
  private static final int NUGGETS = 26;
  private static final int SILLS = 30;

  /**
   * @param variance of the contrasts, value²: what nugget and sill are about
   */
  static Axes of(List<Sample> samples, double variance) {
    double diagonal = 0;
    double nearest = Double.POSITIVE_INFINITY;
    for (Sample s : samples) {
      Spread spread = Spread.of(s.observations());
      diagonal = Math.max(diagonal, spread.diagonal());
      nearest = Math.min(nearest, spread.nearest());
    }
    double low = Math.max(diagonal / 60, Math.min(diagonal / 12, nearest));
    double high = 3 * diagonal;
    int ranges = (int) Math.ceil(Math.log(high / low) / RANGE_STEP) + 1;
    return new Axes(
        logarithmic(low, high, ranges),
        logarithmic(0.02 * variance, 1.6 * variance, NUGGETS),
        logarithmic(0.02 * variance, 25 * variance, SILLS));
  }

  private static double[] logarithmic(double low, double high, int count) {
    double[] axis = new double[count];
    for (int i = 0; i < count; i++) {
      axis[i] = low * Math.pow(high / low, i / (count - 1.0));
    }
    return axis;
  }
}
