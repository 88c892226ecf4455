package org.mottle.engine.likelihood;

import java.util.Arrays;

/**
 * Greens of one survey differ: one with a fault varies more than a sound one. The sill of a green
 * is that of its survey times a log-normal factor, so that a faulty green neither sets the sill of
 * the others nor is smoothed away by it. Immutable.
 */
final class SillSpread {
  /** Standard deviation of the logarithm of the factor: the SD of the structure by 1.28 or so. */
  static final double LOG_SD = 0.5;

  /** Mean of the factor; its median is 1. */
  private static final double MEAN = Math.exp(0.5 * LOG_SD * LOG_SD);

  /** [green's sill][survey's sill]; columns sum to 1. */
  private final double[][] share;

  SillSpread(double[] sill) {
    share = new double[sill.length][sill.length];
    for (int s = 0; s < sill.length; s++) {
      double sum = 0;
      for (int g = 0; g < sill.length; g++) {
        double z = Math.log(sill[g] / sill[s]) / LOG_SD;
        share[g][s] = Math.exp(-0.5 * z * z);
        sum += share[g][s];
      }
      for (int g = 0; g < sill.length; g++) {
        share[g][s] /= sum;
      }
    }
  }

  /** Mean sill of the greens of surveys with these sills, value². */
  static double[] mean(double[] sill) {
    return Arrays.stream(sill).map(c -> MEAN * c).toArray();
  }

  double share(int survey, int green) {
    return share[green][survey];
  }

  /**
   * Adds the log likelihood of each survey's sill to {@code sum}: that of the green's sill, given
   * by the logarithms in {@code green}, weighed over the factor.
   */
  void addMixed(double[] green, int from, double[] sum) {
    int n = share.length;
    double highest = Double.NEGATIVE_INFINITY;
    for (int g = 0; g < n; g++) {
      highest = Math.max(highest, green[from + g]);
    }
    double[] mixed = new double[n];
    for (int g = 0; g < n; g++) {
      double likelihood = Math.exp(green[from + g] - highest);
      double[] ofSurvey = share[g];
      for (int s = 0; s < n; s++) {
        mixed[s] += ofSurvey[s] * likelihood;
      }
    }
    for (int s = 0; s < n; s++) {
      sum[from + s] += highest + Math.log(Math.max(mixed[s], Double.MIN_NORMAL));
    }
  }
}
