package org.mottle.engine.simulation;

import java.util.List;

/**
 * The distribution of every cell over the draws of the parameters, each draw Gaussian and of equal
 * weight: figures without the noise of a finite number of realisations. One pass over cells and
 * draws a figure.
 */
final class Mixture {
  private final List<PreparedDraw> draws;
  private final int cells;

  Mixture(List<PreparedDraw> draws, int cells) {
    this.draws = draws;
    this.cells = cells;
  }

  double[] mean() {
    double[] mean = new double[cells];
    for (PreparedDraw draw : draws) {
      for (int c = 0; c < cells; c++) {
        mean[c] += draw.mean()[c] / draws.size();
      }
    }
    return mean;
  }

  /** Root of the mean variance plus the variance of the means. */
  double[] standardDeviation() {
    double[] mean = mean();
    double[] sd = new double[cells];
    for (PreparedDraw draw : draws) {
      for (int c = 0; c < cells; c++) {
        double off = draw.mean()[c] - mean[c];
        sd[c] += (draw.sd()[c] * draw.sd()[c] + off * off) / draws.size();
      }
    }
    for (int c = 0; c < cells; c++) {
      sd[c] = Math.sqrt(sd[c]);
    }
    return sd;
  }

  double[] below(double limit) {
    double[] probability = new double[cells];
    for (PreparedDraw draw : draws) {
      for (int c = 0; c < cells; c++) {
        probability[c] += below(limit - draw.mean()[c], draw.sd()[c]);
      }
    }
    for (int c = 0; c < cells; c++) {
      probability[c] /= draws.size();
    }
    return probability;
  }

  double[] above(double limit) {
    double[] probability = new double[cells];
    for (PreparedDraw draw : draws) {
      for (int c = 0; c < cells; c++) {
        probability[c] += below(draw.mean()[c] - limit, draw.sd()[c]);
      }
    }
    for (int c = 0; c < cells; c++) {
      probability[c] /= draws.size();
    }
    return probability;
  }

  /** A cell known exactly is below or it is not. */
  private static double below(double room, double sd) {
    return sd > 0 ? NormalDistribution.below(room / sd) : room > 0 ? 1 : 0;
  }
}
