package org.mottle.engine.kriging;

import org.mottle.engine.check.Check;

/**
 * What is assumed of the mean: known, or an unknown combination of terms that the estimate is
 * unbiased for whatever their coefficients.
 */
public sealed interface Drift {

  /** Simple kriging: the mean is known. */
  record KnownMean(double mean) implements Drift {
    public KnownMean {
      Check.finite("known mean", mean, "");
    }
  }

  /** Ordinary kriging: one unknown mean. */
  record Constant() implements Drift {}

  /** Universal kriging on a plane: 1, x, y. */
  record Coordinates() implements Drift {}

  /** Kriging with external drift: 1 and every covariate of the observations. */
  record Covariates() implements Drift {}

  /** 1, x, y and every covariate of the observations. */
  record CoordinatesAndCovariates() implements Drift {}

  static Drift knownMean(double mean) {
    return new KnownMean(mean);
  }

  static Drift constant() {
    return new Constant();
  }

  static Drift coordinates() {
    return new Coordinates();
  }

  static Drift covariates() {
    return new Covariates();
  }

  static Drift coordinatesAndCovariates() {
    return new CoordinatesAndCovariates();
  }

  /** Whether the mean is estimated from the observations. */
  default boolean unbiased() {
    return !(this instanceof KnownMean);
  }

  default boolean usesCoordinates() {
    return this instanceof Coordinates || this instanceof CoordinatesAndCovariates;
  }

  default boolean usesCovariates() {
    return this instanceof Covariates || this instanceof CoordinatesAndCovariates;
  }
}
