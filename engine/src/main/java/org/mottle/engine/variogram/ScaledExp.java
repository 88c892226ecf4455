package org.mottle.engine.variogram;

/**
 * exp(x) - 1 for x <= 0 from adds and multiplies alone, so that loops over it become vector
 * instructions: e(x/1024) by its Taylor series, then ten times e(2t) = e(t) (e(t) + 2). Within
 * 1e-15 of {@link Math#expm1} relative, and within 4e-16 absolute.
 */
final class ScaledExp {
  /** 2^-10. */
  static final double SCALE = 1.0 / 1024;

  /** Below this exp(x) is lost beside 1; the series need not go further. */
  static final double LOWEST = -40 * SCALE;

  private ScaledExp() {}

  /**
   * @param t x/1024, between {@link #LOWEST} and 0
   */
  static double minusOne(double t) {
    double series =
        Math.fma(
            t,
            Math.fma(
                t,
                Math.fma(t, Math.fma(t, Math.fma(t, 1 / 720.0, 1 / 120.0), 1 / 24.0), 1 / 6.0),
                0.5),
            1.0);
    double q = t * series;
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    q = Math.fma(q, q, q + q);
    return Math.fma(q, q, q + q);
  }
}
