package org.mottle.engine.patch;

/**
 * The estimator behind a map, asked for the mean over a piece of ground: for kriging the weighted
 * mean of the points with the standard error of that mean, in which the errors of neighbouring
 * cells do not average out as if they were independent.
 */
@FunctionalInterface
public interface RegionMean {

  /** For maps whose error is not known: no mean, no standard error. */
  RegionMean UNKNOWN = (x, y, weight) -> new MeanAndSd(Double.NaN, Double.NaN);

  /**
   * @param mean % by volume; NaN when there is none
   * @param sd standard error of the mean, % by volume; NaN when it is not known
   */
  record MeanAndSd(double mean, double sd) {}

  /**
   * @param x east, m
   * @param y north, m
   * @param weight area each point stands for, m², above 0
   */
  MeanAndSd of(double[] x, double[] y, double[] weight);
}
