package org.mottle.engine.plan;

/** By what new stations are ranked. */
public enum Criterion {
  /** Drop of the expected misclassified area, ∫ p (1 - p) over the green and the limits, m². */
  MISCLASSIFIED_AREA,
  /** Drop of the mean kriging variance, for a green without a band, value². */
  MEAN_VARIANCE
}
