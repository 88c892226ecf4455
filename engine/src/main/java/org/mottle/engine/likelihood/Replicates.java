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

  /** Exponent of the density of the insertions' share, where they are many. */
  private static final double LEANING = 5;

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
   * micro-scale variance between the insertions' distance and that of a close pair. The share p of
   * the former is anything up to 1, with a density of (b + 1) p^b, b = {@value #LEANING}, 0.86 on
   * average: most of a nugget is the probe's, an assumption; b is smaller with so few insertions
   * that the integral would not exist.
   *
   * <pre>log of c0^-(b+1) ∫ from 0 to c0 of s^(b - ν/2) exp(-W / 2s) ds</pre>
   *
   * with W the sum of squares and ν its degrees of freedom; an incomplete gamma function. 0 where
   * there are too few.
   */
  double logLikelihood(double nugget) {
    if (!enough()) {
      return 0;
    }
    double leaning = Math.min(LEANING, (degrees - 3) / 2.0);
    double upper =
        Gamma.regularizedGammaQ(degrees / 2.0 - 1 - leaning, sumOfSquares / (2 * nugget));
    return Math.log(Math.max(upper, Double.MIN_NORMAL)) - (1 + leaning) * Math.log(nugget);
  }
}
