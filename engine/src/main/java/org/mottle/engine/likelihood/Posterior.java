package org.mottle.engine.likelihood;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What likelihood and prior together say of the parameters: for every shape, range and nugget the
 * greatest value over the sills of the surveys, for intervals, and the value integrated over the
 * logarithms of the sills, for draws.
 */
final class Posterior {
  private final PoolSurface surface;
  private final LikelihoodSettings settings;
  private final Replicates replicates;
  private final boolean borrowed;

  /** Of the greens, at the nodes of a survey's sill. */
  private final double[] meanSill;

  /** [candidate][range][nugget] */
  private final double[][][] greatest;

  private final double[][][] integrated;

  Posterior(
      PoolSurface surface, LikelihoodSettings settings, Replicates replicates, boolean borrowed) {
    this.surface = surface;
    this.settings = settings;
    this.replicates = replicates;
    this.borrowed = borrowed;
    this.meanSill = SillSpread.mean(surface.axes().sill());
    int candidates = surface.candidates().size();
    int ranges = surface.axes().range().length;
    int nuggets = surface.axes().nugget().length;
    this.greatest = new double[candidates][ranges][nuggets];
    this.integrated = new double[candidates][ranges][nuggets];
    for (int c = 0; c < candidates; c++) {
      for (int r = 0; r < ranges; r++) {
        for (int n = 0; n < nuggets; n++) {
          fill(c, r, n);
        }
      }
    }
  }

  private void fill(int candidate, int range, int nugget) {
    double most = common(range, nugget);
    double whole = most;
    for (int s = 0; s < surface.surveys().size(); s++) {
      double[] sill = sills(candidate, range, nugget, s);
      double top = max(sill);
      double sum = 0;
      for (double v : sill) {
        sum += Math.exp(v - top);
      }
      most += Profile.height(sill);
      whole += top + Math.log(sum);
    }
    greatest[candidate][range][nugget] = most;
    integrated[candidate][range][nugget] = whole;
  }

  /** What does not depend on the sills. */
  private double common(int range, int nugget) {
    return settings.prior().logOfRange(surface.axes().range()[range], borrowed)
        + replicates.logLikelihood(surface.axes().nugget()[nugget]);
  }

  /** Log density over the sill of a survey at a node, but for {@link #common}. */
  double[] sills(int candidate, int range, int nugget, int survey) {
    Axes axes = surface.axes();
    double[] out = new double[axes.sill().length];
    for (int k = 0; k < out.length; k++) {
      out[k] = surface.log(candidate, range, survey, nugget, k);
      if (borrowed) {
        double share = axes.nugget()[nugget] / (axes.nugget()[nugget] + meanSill[k]);
        out[k] += settings.prior().logOfShare(share) / surface.surveys().size();
      }
    }
    return out;
  }

  double greatest(int candidate, int range, int nugget) {
    return greatest[candidate][range][nugget];
  }

  double integrated(int candidate, int range, int nugget) {
    return integrated[candidate][range][nugget];
  }

  /** Greatest value of a shape. */
  double greatest(int candidate) {
    double most = Double.NEGATIVE_INFINITY;
    for (double[] row : greatest[candidate]) {
      most = Math.max(most, max(row));
    }
    return most;
  }

  /** Greatest likelihood of a shape and the replicates, without the prior. */
  double logLikelihood(int candidate) {
    return Profile.height(
        over(
            surface.axes().range(),
            r ->
                Profile.height(
                    over(surface.axes().nugget(), n -> logLikelihood(candidate, r, n)))));
  }

  private double logLikelihood(int candidate, int range, int nugget) {
    double sum = replicates.logLikelihood(surface.axes().nugget()[nugget]);
    for (int s = 0; s < surface.surveys().size(); s++) {
      int survey = s;
      sum +=
          Profile.height(
              over(surface.axes().sill(), k -> surface.log(candidate, range, survey, nugget, k)));
    }
    return sum;
  }

  /** Profile over the range: the greatest value at each. */
  double[] ofRange(int candidate) {
    return over(surface.axes().range(), r -> Profile.height(greatest[candidate][r]));
  }

  /** Profile over the nugget. */
  double[] ofNugget(int candidate) {
    return over(
        surface.axes().nugget(),
        n -> Profile.height(over(surface.axes().range(), r -> greatest[candidate][r][n])));
  }

  /** Profile over the sill of a survey. */
  double[] ofSill(int candidate, int survey) {
    int ranges = surface.axes().range().length;
    int nuggets = surface.axes().nugget().length;
    double[][][] value = new double[surface.axes().sill().length][ranges][nuggets];
    for (int r = 0; r < ranges; r++) {
      for (int n = 0; n < nuggets; n++) {
        double[] sill = sills(candidate, r, n, survey);
        double rest = greatest[candidate][r][n] - Profile.height(sill);
        for (int k = 0; k < sill.length; k++) {
          value[k][r][n] = rest + sill[k];
        }
      }
    }
    return over(
        surface.axes().sill(),
        k -> Profile.height(over(surface.axes().range(), r -> Profile.height(value[k][r]))));
  }

  private static double[] over(double[] axis, IntToDoubleFunction value) {
    return IntStream.range(0, axis.length).mapToDouble(value).toArray();
  }

  /**
   * Share of the nugget in the mean sill of the surveys, over all nodes whose value is not below
   * the greatest by more than a drop. At each the sills of all surveys move together as far as the
   * drop allows, which shifts their mean the most for what it costs.
   */
  Interval nuggetShare(int candidate, double drop) {
    Axes axes = surface.axes();
    double top = greatest(candidate);
    double low = 1;
    double high = 0;
    double best = Double.NaN;
    for (int r = 0; r < axes.range().length; r++) {
      for (int n = 0; n < axes.nugget().length; n++) {
        double value = greatest[candidate][r][n];
        if (value >= top - drop) {
          double nugget = axes.nugget()[n];
          double allowed = value - (top - drop);
          Interval sill = meanSill(candidate, r, n, allowed);
          low = Math.min(low, nugget / (nugget + sill.high()));
          high = Math.max(high, nugget / (nugget + sill.low()));
          best = value == top ? nugget / (nugget + sill.best()) : best;
        }
      }
    }
    return new Interval(low, best, high);
  }

  private Interval meanSill(int candidate, int range, int nugget, double allowed) {
    int surveys = surface.surveys().size();
    double[][] density = new double[surveys][];
    int[] top = new int[surveys];
    for (int s = 0; s < surveys; s++) {
      density[s] = sills(candidate, range, nugget, s);
      top[s] = indexOfMax(density[s]);
    }
    return new Interval(
        farthestMean(density, top, -1, allowed),
        movedMean(top, 0),
        farthestMean(density, top, 1, allowed));
  }

  /** Mean sill when all move by equal steps, one way, until more is lost than is allowed. */
  private double farthestMean(double[][] density, int[] top, int way, double allowed) {
    int last = surface.axes().sill().length - 1;
    int steps = 0;
    while (Math.abs(steps) < last && loss(density, top, steps + way) <= allowed) {
      steps += way;
    }
    return movedMean(top, steps);
  }

  private static double loss(double[][] density, int[] top, int steps) {
    double loss = 0;
    for (int s = 0; s < top.length; s++) {
      int at = Math.max(0, Math.min(density[s].length - 1, top[s] + steps));
      loss += density[s][top[s]] - density[s][at];
    }
    return loss;
  }

  private double movedMean(int[] top, int steps) {
    double sum = 0;
    for (int at : top) {
      sum += meanSill[Math.max(0, Math.min(meanSill.length - 1, at + steps))];
    }
    return sum / top.length;
  }

  private static int indexOfMax(double[] values) {
    int at = 0;
    for (int i = 1; i < values.length; i++) {
      at = values[i] > values[at] ? i : at;
    }
    return at;
  }

  private static double max(double[] values) {
    double most = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      most = Math.max(most, v);
    }
    return most;
  }
}
