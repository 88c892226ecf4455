package org.mottle.engine.variogram;

/**
 * One structure of a variogram without its nugget: a partial sill c and a shape of the lag h over
 * the range a. {@code range()} is the parameter a of each model's written formula; {@code
 * practicalRange()} is the lag at which the model reaches 95 % of its partial sill (all of it for
 * models that end at a finite lag). Immutable.
 */
public sealed interface VariogramModel
    permits Spherical, Exponential, Gaussian, Matern, Circular, Pentaspherical, Linear, Power {

  /** Name as it stands in files: spherical, exponential, ... */
  String type();

  /** Partial sill c, value². For unbounded models the coefficient of the formula. */
  double partialSill();

  /** Parameter a of the formula, m. For the power model the exponent. */
  double range();

  /** Lag of 95 % of the partial sill, m; infinite for unbounded models. */
  double practicalRange();

  /** Whether the semivariance levels off, so that a covariance exists. */
  default boolean bounded() {
    return true;
  }

  /** Semivariance at a lag in metres already corrected for anisotropy, value²; 0 at lag 0. */
  double semivariance(double lag);

  /** The same shape with another partial sill and range. */
  VariogramModel with(double partialSill, double range);

  /**
   * Adds the semivariances of many lags, the way to go in inner loops.
   *
   * @param squaredLag [count] lags squared, m²
   * @param sum [count] to which the semivariances are added, value²
   */
  default void addSemivariances(double[] squaredLag, int count, double[] sum) {
    for (int i = 0; i < count; i++) {
      sum[i] += semivariance(Math.sqrt(squaredLag[i]));
    }
  }
}
