package org.mottle.engine.population;

/**
 * Spherical correlation of the low population's indicator between places that are not known
 * exactly: its mean over a normal error of their separation, as kriging with position error asks
 * for (Cressie & Kornak 2003, Stat. Sci. 18:436-456).
 *
 * <p>The mean is over {@value #RADII} radii that share the error equally and {@value #ANGLES}
 * directions of the half circle; without error it is the correlation itself.
 */
final class SpotCorrelation {
  private static final int RADII = 8;
  private static final int ANGLES = 4;

  private final double range;
  private final double[] along;
  private final double[] across;

  /**
   * @param range m
   * @param sd standard error of the separation on each axis, m
   */
  SpotCorrelation(double range, double sd) {
    this.range = range;
    int nodes = sd > 0 ? RADII * ANGLES : 1;
    along = new double[nodes];
    across = new double[nodes];
    for (int i = 0; sd > 0 && i < nodes; i++) {
      double radius = sd * Math.sqrt(-2 * Math.log1p(-(i / ANGLES + 0.5) / RADII));
      double angle = Math.PI * (i % ANGLES + 0.5) / ANGLES;
      along[i] = radius * Math.cos(angle);
      across[i] = radius * Math.sin(angle);
    }
  }

  double at(double metres) {
    double sum = 0;
    for (int i = 0; i < along.length; i++) {
      double dx = metres + along[i];
      sum += exact(Math.sqrt(dx * dx + across[i] * across[i]));
    }
    return sum / along.length;
  }

  private double exact(double metres) {
    double t = metres / range;
    return t >= 1 ? 0 : 1 - t * (1.5 - 0.5 * t * t);
  }
}
