package org.mottle.engine.precision;

import org.apache.commons.math3.distribution.TDistribution;
import org.mottle.engine.check.Check;

/**
 * How many random readings tell a mean to within a margin: the smallest n with n >= (t s / e)², t
 * the two-sided quantile of Student's distribution with n - 1 degrees of freedom. The usual
 * iteration n := ceil((t(n-1) s / e)²) may go to and fro for ever; the smallest n is the answer.
 */
public final class SampleSize {
  private static final int MOST = 1_000_000;

  private SampleSize() {}

  /**
   * @param sd standard deviation of one reading, % by volume
   * @param margin half width of the interval wanted, % by volume
   * @param confidence of the interval, above 0 and below 1
   */
  public static int of(double sd, double margin, double confidence) {
    Check.above("standard deviation", sd, 0, "% by volume");
    Check.above("margin", margin, 0, "% by volume");
    Check.within("confidence", confidence, 0.5, 0.9999, "");
    double ratio = sd / margin;
    int n = 2;
    while (n < MOST) {
      double t = quantile(n, confidence);
      if (n >= t * t * ratio * ratio) {
        return n;
      }
      n++;
    }
    throw new IllegalArgumentException(
        "more than " + MOST + " readings for a margin of " + margin + " % with SD " + sd);
  }

  /** Half width of the interval of a mean of n readings, % by volume. */
  public static double halfWidth(double sd, int n, double confidence) {
    Check.atLeast("readings", n, 2, "");
    return quantile(n, confidence) * sd / Math.sqrt(n);
  }

  private static double quantile(int n, double confidence) {
    return new TDistribution(null, n - 1).inverseCumulativeProbability(0.5 + confidence / 2);
  }
}
