package org.mottle.export.calibration;

import java.util.Locale;

/**
 * How much of what lies between a green's own variogram and the true covariance a method closes: 0
 * where it is no better than the first, 1 where it is as good as the second.
 *
 * @param metric the figure
 * @param own of the green's own variogram
 * @param best of the true covariance
 */
record Closed(Metric metric, double own, double best) {
  /** Less than this share of the figure is nothing to close. */
  private static final double NOTHING = 0.02;

  double share(double figure) {
    return (own - figure) / (own - best);
  }

  /** Whether the mark lies on the better side at all. */
  boolean isOpen() {
    double better = metric.isGain() ? best - own : own - best;
    return better > NOTHING * Math.abs(own);
  }

  String cell(double figure) {
    return isOpen() ? String.format(Locale.ROOT, "%.0f %%", 100 * share(figure)) : "mark no better";
  }
}
