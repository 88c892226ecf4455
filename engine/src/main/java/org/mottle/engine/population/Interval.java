package org.mottle.engine.population;

/**
 * A 90 % interval.
 *
 * @param estimate the best value
 * @param low 5 % end
 * @param high 95 % end
 */
public record Interval(double estimate, double low, double high) {

  /** Probability outside the interval on each side together. */
  static final double OUTSIDE = 0.10;
}
