package org.mottle.engine.likelihood;

import org.apache.commons.math3.special.Gamma;

/**
 * What insertions at the same stations say of the variance of one insertion.
 *
 * @param sumOfSquares of the insertions about the mean of their station, value²
 * @param degrees insertions less stations
 */
public record Replicates(double sumOfSquares, int degrees) {
  public static final Replicates NONE = new Replicates(0, 0);

  /** With fewer degrees of freedom than this, nothing is concluded. */
  public static final int FEWEST = 6;

  public Replicates plus(Replicates other) {
    return new Replicates(sumOfSquares + other.sumOfSquares, degrees + other.degrees);
  }

  public boolean enough() {
    return degrees >= FEWEST && sumOfSquares > 0;
  }

  /** Variance of one insertion, value². */
  public double variance() {
    return sumOfSquares / degrees;
  }

  /**
   * Logarithm of the likelihood of a nugget c0 that holds the variance of an insertion and some
   * micro-scale variance, the former anything from 0 to c0:
   *
   * <pre>log of (1/c0) ∫ from 0 to c0 of s^(-ν/2) exp(-W / 2s) ds</pre>
   *
   * with W the sum of squares and ν its degrees of freedom; an incomplete gamma function. 0 where
   * there are too few.
   */
  double logLikelihood(double nugget) {
    if (!enough()) {
      return 0;
    }
    double upper = Gamma.regularizedGammaQ(degrees / 2.0 - 1, sumOfSquares / (2 * nugget));
    return Math.log(Math.max(upper, Double.MIN_NORMAL)) - Math.log(nugget);
  }
}
