package org.mottle.engine.precision;

import org.apache.commons.math3.distribution.TDistribution;
import org.mottle.engine.check.Check;

/**
 * How many random readings tell a mean to within a margin: the smallest n with n >= (t s / e)², t
 * the two-sided quantile of Student's distribution with n - 1 degrees of freedom. The usual
 * iteration n := ceil((t(n-1) s / e)²) may go to and fro for ever (s = 3, e = 1 at 95 %: 37, 38,
 * 37, ...); the smallest n is always there, for t falls with n while n rises, and is found by
 * halving. It holds for readings placed at random; ground is not used up by readings, so nothing is
 * taken off for a finite population. Microseconds.
 */
public final class SampleSize {
  private static final int MOST = 1_000_000;
  private static final double LEAST_CONFIDENCE = 0.5;
  private static final double LARGEST_CONFIDENCE = 0.9999;

  private SampleSize() {}

  /**
   * At least 2, for one reading says nothing of the spread.
   *
   * @param sd standard deviation of one reading, % by volume
   * @param margin half width of the interval wanted, % by volume
   * @param confidence of the interval, 0.5 to 0.9999
   * @throws IllegalArgumentException for other figures, or where a million readings are too few
   */
  public static int of(double sd, double margin, double confidence) {
    Check.above("standard deviation", sd, 0, "% by volume");
    Check.above("margin", margin, 0, "% by volume");
    double ratio = sd / margin;
    if (!enough(MOST, ratio, quantile(MOST, confidence))) {
      throw new IllegalArgumentException(
          "a margin of %s %% with a standard deviation of %s %% takes more than %d readings; ask for a wider margin"
              .formatted(margin, sd, MOST));
    }
    int few = 1;
    int many = 2;
    while (!enough(many, ratio, quantile(many, confidence))) {
      few = many;
      many = Math.min(2 * many, MOST);
    }
    while (many - few > 1) {
      int middle = (few + many) / 2;
      if (enough(middle, ratio, quantile(middle, confidence))) {
        many = middle;
      } else {
        few = middle;
      }
    }
    return many;
  }

  private static boolean enough(int n, double ratio, double t) {
    return n >= t * t * ratio * ratio;
  }

  /**
   * Half width of the interval of a mean of n random readings, t s / sqrt(n), % by volume.
   *
   * @param sd standard deviation of one reading, % by volume; 0 gives 0
   * @param n readings, at least 2
   * @param confidence of the interval, 0.5 to 0.9999
   */
  public static double halfWidth(double sd, int n, double confidence) {
    Check.atLeast("standard deviation", sd, 0, "% by volume");
    Check.atLeast("readings", n, 2, "");
    return quantile(n, confidence) * sd / Math.sqrt(n);
  }

  /** Two-sided quantile of Student's distribution for the mean of n readings. */
  static double quantile(int n, double confidence) {
    Check.within("confidence", confidence, LEAST_CONFIDENCE, LARGEST_CONFIDENCE, "");
    return new TDistribution(null, n - 1).inverseCumulativeProbability(0.5 + confidence / 2);
  }
}
