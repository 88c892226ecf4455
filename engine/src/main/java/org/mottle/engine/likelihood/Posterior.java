package org.mottle.engine.likelihood;

import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.mottle.engine.interval.Interval;

/**
 * What likelihood and prior together say of the parameters: for every form, range and nugget the
 * greatest value over the sills of the surveys, for intervals, and the value integrated over the
 * logarithms of the sills, for draws.
 */
final class Posterior {
  private final PoolSurface surface;
  private final LikelihoodSettings settings;
  private final Replicates replicates;
  private final boolean borrowed;

  /** [form][range][nugget] */
  private final double[][][] greatest;

  private final double[][][] integrated;

  Posterior(
      PoolSurface surface, LikelihoodSettings settings, Replicates replicates, boolean borrowed) {
    this.surface = surface;
    this.settings = settings;
    this.replicates = replicates;
    this.borrowed = borrowed;
    int forms = surface.forms().size();
    int ranges = surface.axes().range().length;
    int nuggets = surface.axes().nugget().length;
    this.greatest = new double[forms][ranges][nuggets];
    this.integrated = new double[forms][ranges][nuggets];
    for (int f = 0; f < forms; f++) {
      for (int r = 0; r < ranges; r++) {
        for (int n = 0; n < nuggets; n++) {
          fill(f, r, n);
        }
      }
    }
  }

  private void fill(int form, int range, int nugget) {
    double most = common(form, range, nugget);
    double whole = most;
    for (int s = 0; s < surface.surveys().size(); s++) {
      double[] sill = sills(form, range, nugget, s);
      double top = max(sill);
      double sum = 0;
      for (double v : sill) {
        sum += Math.exp(v - top);
      }
      most += Profile.height(sill);
      whole += top + Math.log(sum);
    }
    greatest[form][range][nugget] = most;
    integrated[form][range][nugget] = whole;
  }

  /** What does not depend on the sills. */
  private double common(int form, int range, int nugget) {
    return surface.forms().get(form).logPrior()
        + settings.prior().logOfRange(surface.axes().range()[range], borrowed)
        + replicates.logLikelihood(surface.axes().nugget()[nugget]);
  }

  /** Log density over the sill of a survey at a node, but for {@link #common}. */
  double[] sills(int form, int range, int nugget, int survey) {
    Axes axes = surface.axes();
    double[] out = new double[axes.sill().length];
    for (int k = 0; k < out.length; k++) {
      out[k] = surface.log(form, range, survey, nugget, k);
      double share = axes.nugget()[nugget] / (axes.nugget()[nugget] + axes.sill()[k]);
      out[k] += settings.prior().logOfShare(share, borrowed);
    }
    return out;
  }

  double greatest(int form, int range, int nugget) {
    return greatest[form][range][nugget];
  }

  double integrated(int form, int range, int nugget) {
    return integrated[form][range][nugget];
  }

  int forms() {
    return greatest.length;
  }

  /** Forms of one candidate, which stand together. */
  int formsOfCandidate() {
    return forms() / settings.candidates().size();
  }

  /** Greatest value of a form. */
  double greatest(int form) {
    double most = Double.NEGATIVE_INFINITY;
    for (double[] row : greatest[form]) {
      most = Math.max(most, max(row));
    }
    return most;
  }

  /** Greatest likelihood of a form and the replicates, without the prior. */
  double logLikelihood(int form) {
    return Profile.height(
        over(
            surface.axes().range(),
            r -> Profile.height(over(surface.axes().nugget(), n -> logLikelihood(form, r, n)))));
  }

  private double logLikelihood(int form, int range, int nugget) {
    double sum = replicates.logLikelihood(surface.axes().nugget()[nugget]);
    for (int s = 0; s < surface.surveys().size(); s++) {
      int survey = s;
      sum +=
          Profile.height(
              over(surface.axes().sill(), k -> surface.log(form, range, survey, nugget, k)));
    }
    return sum;
  }

  /** Profile over the range: the greatest value at each. */
  double[] ofRange(int form) {
    return over(surface.axes().range(), r -> Profile.height(greatest[form][r]));
  }

  /** Profile over the nugget. */
  double[] ofNugget(int form) {
    return over(
        surface.axes().nugget(),
        n -> Profile.height(over(surface.axes().range(), r -> greatest[form][r][n])));
  }

  /** Profile over the sill of a survey. */
  double[] ofSill(int form, int survey) {
    int ranges = surface.axes().range().length;
    int nuggets = surface.axes().nugget().length;
    double[][][] value = new double[surface.axes().sill().length][ranges][nuggets];
    for (int r = 0; r < ranges; r++) {
      for (int n = 0; n < nuggets; n++) {
        double[] sill = sills(form, r, n, survey);
        double rest = greatest[form][r][n] - Profile.height(sill);
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
    double top = Double.NEGATIVE_INFINITY;
    double topOfCandidate = Double.NEGATIVE_INFINITY;
    for (int f = 0; f < forms(); f++) {
      top = Math.max(top, greatest(f));
      if (f / formsOfCandidate() == candidate) {
        topOfCandidate = Math.max(topOfCandidate, greatest(f));
      }
    }
    double low = 1;
    double high = 0;
    double best = Double.NaN;
    for (int f = 0; f < forms(); f++) {
      for (int r = 0; r < axes.range().length; r++) {
        for (int n = 0; n < axes.nugget().length; n++) {
          double value = greatest[f][r][n];
          boolean own = f / formsOfCandidate() == candidate && value == topOfCandidate;
          if (value >= top - drop || own) {
            double nugget = axes.nugget()[n];
            Interval sill = meanSill(f, r, n, Math.max(0, value - (top - drop)));
            low = Math.min(low, nugget / (nugget + sill.high()));
            high = Math.max(high, nugget / (nugget + sill.low()));
            best = own ? nugget / (nugget + sill.best()) : best;
          }
        }
      }
    }
    return new Interval(low, best, high);
  }

  private Interval meanSill(int form, int range, int nugget, double allowed) {
    int surveys = surface.surveys().size();
    double[][] density = new double[surveys][];
    int[] top = new int[surveys];
    for (int s = 0; s < surveys; s++) {
      density[s] = sills(form, range, nugget, s);
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
    double[] sill = surface.axes().sill();
    double sum = 0;
    for (int at : top) {
      sum += sill[Math.max(0, Math.min(sill.length - 1, at + steps))];
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
