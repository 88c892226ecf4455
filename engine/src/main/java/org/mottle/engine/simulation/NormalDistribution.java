package org.mottle.engine.simulation;

/**
 * Distribution function of the standard normal: the rational approximation of Hart et al. (1968,
 * no. 5666) times exp(-x²/2), a continued fraction beyond 7.07 (West 2005). Absolute error below
 * 1e-14; about 15 ns.
 */
public final class NormalDistribution {
  private static final double FRACTION_FROM = 7.07106781186547;
  private static final double ROOT_2_PI = 2.50662827463100050242;

  private NormalDistribution() {}

  /** Probability of a value below {@code x}; NaN for NaN. */
  public static double below(double x) {
    double upper = beyond(Math.abs(x));
    return x > 0 ? 1 - upper : upper;
  }

  /** Probability beyond x >= 0. */
  private static double beyond(double x) {
    if (x > 37) {
      return 0;
    }
    double density = Math.exp(-0.5 * x * x);
    if (x >= FRACTION_FROM) {
      double fraction = x + 0.65;
      for (int k = 4; k >= 1; k--) {
        fraction = x + k / fraction;
      }
      return density / (fraction * ROOT_2_PI);
    }
    double top = 3.52624965998911e-02 * x + 0.700383064443688;
    top = top * x + 6.37396220353165;
    top = top * x + 33.912866078383;
    top = top * x + 112.079291497871;
    top = top * x + 221.213596169931;
    top = top * x + 220.206867912376;
    double bottom = 8.83883476483184e-02 * x + 1.75566716318264;
    bottom = bottom * x + 16.064177579207;
    bottom = bottom * x + 86.7807322029461;
    bottom = bottom * x + 296.564248779674;
    bottom = bottom * x + 637.333633378831;
    bottom = bottom * x + 793.826512519948;
    bottom = bottom * x + 440.413735824752;
    return density * top / bottom;
  }
}
