package org.mottle.export.calibration;

/**
 * What a method believes of every cell, as a mixture of normals with equal weights; one component
 * is the plain normal.
 *
 * @param mean [components][cells] % by volume
 * @param sd [components][cells] % by volume, above 0
 */
record CellDistribution(double[][] mean, double[][] sd) {
  private static final int MOST_STEPS = 80;
  private static final double SETTLED_PCT = 1e-7;

  CellDistribution {
    if (mean.length == 0 || mean.length != sd.length) {
      throw new IllegalArgumentException(
          "a mixture needs a mean and a standard deviation for each component, had "
              + mean.length
              + " and "
              + sd.length);
    }
  }

  static CellDistribution normal(double[] mean, double[] sd) {
    return new CellDistribution(new double[][] {mean}, new double[][] {sd});
  }

  int cells() {
    return mean[0].length;
  }

  double mean(int cell) {
    double sum = 0;
    for (double[] m : mean) {
      sum += m[cell];
    }
    return sum / mean.length;
  }

  double sd(int cell) {
    double middle = mean(cell);
    double sum = 0;
    for (int d = 0; d < mean.length; d++) {
      double off = mean[d][cell] - middle;
      sum += off * off + sd[d][cell] * sd[d][cell];
    }
    return Math.sqrt(sum / mean.length);
  }

  /** Probability of a value below the limit. */
  double below(int cell, double limit) {
    double sum = 0;
    for (int d = 0; d < mean.length; d++) {
      sum += Normal.cdf((limit - mean[d][cell]) / sd[d][cell]);
    }
    return sum / mean.length;
  }

  double density(int cell, double value) {
    double sum = 0;
    for (int d = 0; d < mean.length; d++) {
      sum += Normal.density((value - mean[d][cell]) / sd[d][cell]) / sd[d][cell];
    }
    return sum / mean.length;
  }

  /**
   * The quantile.
   *
   * @param z its standard normal equivalent
   */
  double quantile(int cell, double z) {
    if (mean.length == 1) {
      return mean[0][cell] + z * sd[0][cell];
    }
    double p = Normal.cdf(z);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int d = 0; d < mean.length; d++) {
      double q = mean[d][cell] + z * sd[d][cell];
      low = Math.min(low, q);
      high = Math.max(high, q);
    }
    double at = mean(cell) + z * sd(cell);
    for (int step = 0; step < MOST_STEPS && high - low > SETTLED_PCT; step++) {
      if (!(at > low && at < high)) {
        at = (low + high) / 2;
      }
      double over = below(cell, at) - p;
      if (over > 0) {
        high = at;
      } else {
        low = at;
      }
      double next = at - over / density(cell, at);
      if (Math.abs(next - at) < SETTLED_PCT) {
        return next;
      }
      at = next;
    }
    return (low + high) / 2;
  }

  /**
   * Continuous ranked probability score, E|X − value| − ½ E|X − X'|, in % by volume (Grimit,
   * Gneiting et al. 2006 for mixtures); the smaller the better.
   */
  double crps(int cell, double value) {
    int n = mean.length;
    double near = 0;
    double spread = 0;
    for (int d = 0; d < n; d++) {
      near += Normal.meanAbsolute(value - mean[d][cell], sd[d][cell]);
      spread += Normal.meanAbsolute(0, Math.sqrt(2) * sd[d][cell]);
      for (int e = 0; e < d; e++) {
        spread +=
            2
                * Normal.meanAbsolute(
                    mean[d][cell] - mean[e][cell], Math.hypot(sd[d][cell], sd[e][cell]));
      }
    }
    return near / n - 0.5 * spread / n / n;
  }

  /** Minus the logarithm of the density at the value; the smaller the better. */
  double logScore(int cell, double value) {
    return -Math.log(Math.max(density(cell, value), Double.MIN_NORMAL));
  }
}
