package org.mottle.demo.walk;

/**
 * What a probe shows. Rods inserted by a share f only average soil and air on the scale of
 * refracted travel time, √ε read = f √ε + (1 − f), with moisture from permittivity by the
 * polynomial of Topp, Davis and Annan (1980).
 */
public final class Probe {

  /** Standard error of one reading of the probe, % by volume. */
  public static final double ERROR_SD = 0.95;

  /** Variance of the soil's own scatter within 0.25 m, drawn anew for each insertion, %². */
  public static final double MICRO_VARIANCE = 0.6;

  private Probe() {}

  /** Moisture shown for the true one when the share f of the rods is in the ground, %. */
  public static double partlyInserted(double pct, double share) {
    double root = share * Math.sqrt(permittivity(pct)) + (1 - share);
    return moisture(root * root);
  }

  /** Moisture in % of a relative permittivity. */
  static double moisture(double e) {
    return 100 * (-5.3e-2 + e * (2.92e-2 + e * (-5.5e-4 + e * 4.3e-6)));
  }

  /** Inverse of {@link #moisture} by bisection to 1e-12 of the interval 1 to 81. */
  static double permittivity(double pct) {
    double lo = 1;
    double hi = 81;
    for (int i = 0; i < 60; i++) {
      double middle = (lo + hi) / 2;
      if (moisture(middle) < pct) {
        lo = middle;
      } else {
        hi = middle;
      }
    }
    return (lo + hi) / 2;
  }
}
