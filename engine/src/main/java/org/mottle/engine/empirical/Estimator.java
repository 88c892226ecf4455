package org.mottle.engine.empirical;

/**
 * How the differences of the pairs in a lag become one semivariance. dz is the difference of a pair
 * and N the number of pairs.
 */
public enum Estimator {

  /** Method of moments: sum of dz² / (2 N) (Matheron 1965; Webster & Oliver 2007, ch. 4). */
  MATHERON,

  /**
   * Robust to a few odd values: (mean of sqrt|dz|)⁴ / (2 (0.457 + 0.494 / N)) (Cressie & Hawkins
   * 1980). The further term 0.045 / N² of some texts is left out, as gstat leaves it out.
   */
  CRESSIE_HAWKINS,

  /**
   * Robust to many odd values: 2.198 (median of |dz|)² / 2 (Dowd 1984); the median of an even
   * number of pairs is the mean of the middle two. Costs six to ten passes over the pairs.
   */
  DOWD
}
