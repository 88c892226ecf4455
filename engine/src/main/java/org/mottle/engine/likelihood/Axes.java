package org.mottle.engine.likelihood;

import java.util.List;

/**
 * Where the likelihood is computed: a grid over the logarithms of practical range, nugget and sill.
 * On a grid nothing can end in a local optimum, and parameters are drawn from the whole surface.
 * Nugget and sill start at one value and rise by one step, so that few ratios serve all nodes.
 *
 * @param range [.] m
 * @param nugget [.] value²
 * @param sill [.] of the structure, value²
 */
record Axes(double[] range, double[] nugget, double[] sill) {
  private static final double RANGE_STEP = 0.125;
  private static final double VARIANCE_STEP = 0.2;

  /** Of the variance of the contrasts, where nugget and sill start: 0 in all but name. */
  private static final double LEAST = 0.02;

  /** Up to 1.6 times the variance. */
  private static final int NUGGETS = 23;

  /** Up to 27 times the variance: a long range has a sill that small greens do not show. */
  private static final int SILLS = 37;

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
        steps(LEAST * variance, NUGGETS),
        steps(LEAST * variance, SILLS));
  }

  /** Ratios of sill to nugget: entry j - i + (nuggets - 1) is that of sill j to nugget i. */
  double[] ratios() {
    return steps(Math.exp(-VARIANCE_STEP * (nugget.length - 1)), nugget.length + sill.length - 1);
  }

  private static double[] steps(double low, int count) {
    double[] axis = new double[count];
    for (int i = 0; i < count; i++) {
      axis[i] = low * Math.exp(VARIANCE_STEP * i);
    }
    return axis;
  }

  private static double[] logarithmic(double low, double high, int count) {
    double[] axis = new double[count];
    for (int i = 0; i < count; i++) {
      axis[i] = low * Math.pow(high / low, i / (count - 1.0));
    }
    return axis;
  }
}
