package org.mottle.engine.likelihood;

/**
 * Greens of one survey differ: one with a fault varies more than a sound one. The sill of a green
 * is that of its survey times a log-normal factor of mean 1, so that a faulty green neither sets
 * the sill of the others nor is smoothed away by it. Immutable.
 */
final class SillSpread {
  /** [green's sill][survey's sill]; columns sum to 1. */
  private final double[][] share;

  /**
   * @param sill nodes, value²
   * @param logSd standard deviation of the logarithm of the factor
   */
  SillSpread(double[] sill, double logSd) {
    share = new double[sill.length][sill.length];
    for (int s = 0; s < sill.length; s++) {
      double sum = 0;
      for (int g = 0; g < sill.length; g++) {
        double z = Math.log(sill[g] / sill[s]) / logSd + logSd / 2;
        share[g][s] = Math.exp(-0.5 * z * z);
        sum += share[g][s];
      }
      for (int g = 0; g < sill.length; g++) {
        share[g][s] /= sum;
      }
    }
  }

  /**
   * Likelihoods over the sill of a green.
   *
   * @param likelihood relative to the highest
   * @param highest its logarithm
   */
  record Scaled(double[] likelihood, double highest) {

    /** From {@code count} logarithms, from {@code from} on. */
    static Scaled of(double[] logs, int from, int count) {
      double highest = Double.NEGATIVE_INFINITY;
      for (int g = 0; g < count; g++) {
        highest = Math.max(highest, logs[from + g]);
      }
      double[] likelihood = new double[count];
      for (int g = 0; g < count; g++) {
        likelihood[g] = Math.exp(logs[from + g] - highest);
      }
      return new Scaled(likelihood, highest);
    }
  }

  double share(int survey, int green) {
    return share[green][survey];
  }

  /**
   * Adds the log likelihood of each survey's sill to {@code sum} from {@code from} on: that of the
   * green's sill weighed over the factor.
   */
  void addMixed(Scaled green, int from, double[] sum) {
    int n = share.length;
    double[] mixed = new double[n];
    for (int g = 0; g < n; g++) {
      double likelihood = green.likelihood()[g];
      double[] ofSurvey = share[g];
      for (int s = 0; s < n; s++) {
        mixed[s] += ofSurvey[s] * likelihood;
      }
    }
    for (int s = 0; s < n; s++) {
      sum[from + s] += green.highest() + Math.log(Math.max(mixed[s], Double.MIN_NORMAL));
    }
  }
}
