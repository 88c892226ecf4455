package org.mottle.engine.season;

import org.mottle.engine.interval.Interval;
import org.mottle.engine.simulation.NormalDistribution;

/**
 * Figures that are Gaussian under each of equally likely draws, and so mixtures of Gaussians
 * together: the mean of the means; the root of the mean variance plus the variance of the means;
 * means of probabilities. Immutable.
 */
final class Drawn {
  private static final int HALVINGS = 60;
  private static final double FAR = 9;

  /** [draws][n] */
  private final double[][] mean;

  private final double[][] sd;

  /** Takes the arrays over. */
  Drawn(double[][] mean, double[][] sd) {
    this.mean = mean;
    this.sd = sd;
  }

  int size() {
    return mean[0].length;
  }

  double[] mean() {
    double[] all = new double[size()];
    for (double[] m : mean) {
      for (int j = 0; j < all.length; j++) {
        all[j] += m[j] / mean.length;
      }
    }
    return all;
  }

  double[] sd() {
    double[] middle = mean();
    double[] all = new double[size()];
    for (int d = 0; d < mean.length; d++) {
      for (int j = 0; j < all.length; j++) {
        double off = mean[d][j] - middle[j];
        all[j] += (sd[d][j] * sd[d][j] + off * off) / mean.length;
      }
    }
    for (int j = 0; j < all.length; j++) {
      all[j] = Math.sqrt(all[j]);
    }
    return all;
  }

  /** [n] probability of being below a limit. */
  double[] below(double limit) {
    double[] all = new double[size()];
    for (int d = 0; d < mean.length; d++) {
      for (int j = 0; j < all.length; j++) {
        all[j] += below(limit - mean[d][j], sd[d][j]) / mean.length;
      }
    }
    return all;
  }

  /** [n] probability of being above a limit. */
  double[] above(double limit) {
    double[] all = new double[size()];
    for (int d = 0; d < mean.length; d++) {
      for (int j = 0; j < all.length; j++) {
        all[j] += below(mean[d][j] - limit, sd[d][j]) / mean.length;
      }
    }
    return all;
  }

  private static double below(double room, double sd) {
    return sd > 0 ? NormalDistribution.below(room / sd) : room > 0 ? 1 : 0;
  }

  /** The 90 % interval of figure {@code j}, by halving. */
  Interval interval(int j) {
    double middle = mean()[j];
    return new Interval(quantile(j, Interval.TAIL), middle, quantile(j, 1 - Interval.TAIL));
  }

  private double quantile(int j, double share) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int d = 0; d < mean.length; d++) {
      low = Math.min(low, mean[d][j] - FAR * sd[d][j]);
      high = Math.max(high, mean[d][j] + FAR * sd[d][j]);
    }
    for (int k = 0; k < HALVINGS; k++) {
      double middle = low + (high - low) / 2;
      double below = 0;
      for (int d = 0; d < mean.length; d++) {
        below += below(middle - mean[d][j], sd[d][j]) / mean.length;
      }
      low = below < share ? middle : low;
      high = below < share ? high : middle;
    }
    return low + (high - low) / 2;
  }

  /** Figure {@code j} alone. */
  ChangeFigure figure(int j) {
    double[][] m = new double[mean.length][];
    double[][] s = new double[mean.length][];
    for (int d = 0; d < m.length; d++) {
      m[d] = new double[] {mean[d][j]};
      s[d] = new double[] {sd[d][j]};
    }
    return new ChangeFigure(new Drawn(m, s));
  }
}
