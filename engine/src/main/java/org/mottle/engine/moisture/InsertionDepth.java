package org.mottle.engine.moisture;

public final class InsertionDepth {
  private InsertionDepth() {}

  static double theta(double e) {
    return 100 * (-5.3e-2 + e * (2.92e-2 + e * (-5.5e-4 + e * 4.3e-6)));
  }

  static double eps(double pct) {
    double lo = 1, hi = 81;
    for (int i = 0; i < 50; i++) {
      double m = (lo + hi) / 2;
      if (theta(m) < pct) lo = m;
      else hi = m;
    }
    return (lo + hi) / 2;
  }

  public static double shown(double pct, double share) {
    double r = share * Math.sqrt(eps(pct)) + 1 - share;
    return theta(r * r);
  }

  public static double impliedShare(double read, double expected) {
    return (Math.sqrt(eps(read)) - 1) / (Math.sqrt(eps(expected)) - 1);
  }
}
