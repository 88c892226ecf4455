package org.mottle.export.calibration;

/**
 * The standard normal distribution. The distribution function comes from a table of its values at
 * multiples of 1/256, summed here from Marsaglia's series (2004, "Evaluating the normal
 * distribution"), and three terms of Taylor between them: within 1e-10, some nanoseconds a call.
 */
final class Normal {
  /** Quantiles of 75 % and 95 %. */
  static final double Z50 = 0.6744897501960817;

  static final double Z90 = 1.6448536269514722;
  private static final double ROOT_2PI = Math.sqrt(2 * Math.PI);
  private static final int STEPS = 256;
  private static final double FAR = 8;
  private static final double[] TABLE = table();

  private Normal() {}

  static double density(double z) {
    return Math.exp(-0.5 * z * z) / ROOT_2PI;
  }

  static double cdf(double z) {
    if (!(z < FAR)) {
      return z >= FAR ? 1 : Double.NaN;
    }
    if (z <= -FAR) {
      return 0;
    }
    int node = (int) Math.rint((z + FAR) * STEPS);
    double at = node / (double) STEPS - FAR;
    double h = z - at;
    double slope = density(at);
    return TABLE[node] + slope * h * (1 - 0.5 * at * h + (at * at - 1) * h * h / 6);
  }

  /** E|N(mean, sd²)|: the building stone of the continuous ranked probability score. */
  static double meanAbsolute(double mean, double sd) {
    double z = mean / sd;
    return mean * (2 * cdf(z) - 1) + 2 * sd * density(z);
  }

  private static double[] table() {
    double[] table = new double[(int) (2 * FAR * STEPS) + 1];
    for (int i = 0; i < table.length; i++) {
      table[i] = bySeries(i / (double) STEPS - FAR);
    }
    return table;
  }

  private static double bySeries(double x) {
    double term = x;
    double sum = x;
    for (int i = 3; sum + term != sum; i += 2) {
      term *= x * x / i;
      sum += term;
    }
    return 0.5 + sum * density(x);
  }
}
