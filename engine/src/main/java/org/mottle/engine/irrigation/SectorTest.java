package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.mottle.engine.likelihood.OthersView;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;

/**
 * Marginal likelihoods of the readings of one green in one survey with and without a shortfall of
 * one head:
 *
 * <pre>y = m + p·(x − x̄) + e max(0, 1 − d/1.5) + b f + S(x) + error
 * </pre>
 *
 * m flat; p the slope and e the edge (d m inside the outline) normal; f the head's share of the
 * water, b ≤ 0 half-normal. Instead of f a spot exp(−½ (r/w)²) round one of the stations, w 1.5, 3
 * or 5 m, its size normal, all alike likely. The covariance of S is that of every view the other
 * greens allow, integrated under each hypothesis by itself: a green with a fault varies more than
 * sound ones, and a sill learnt from its own readings would hide what is looked for. Immutable.
 */
final class SectorTest {
  /** Width of the drier or wetter edge, m. */
  private static final double EDGE_M = 1.5;

  private static final double[] SPOT_M = {1.5, 3, 5};

  /** Nodes of the sill less likely than this do not count. */
  private static final double LEAST_SHARE = 1e-5;

  private final SectorPrior prior;
  private final Observations observations;
  private final int[] insertions;

  /** [heads + spots][n] */
  private final List<double[]> patterns;

  private final int heads;
  private final double[][] nuisance;

  /**
   * @param observations with common errors
   * @param insertions [n] behind each value
   * @param insideM [n] how far inside the outline each stands, m
   * @param shares [heads][n] share of each head in the water
   */
  SectorTest(
      SectorPrior prior,
      Observations observations,
      int[] insertions,
      double[] insideM,
      List<double[]> shares) {
    this.prior = prior;
    this.observations = observations;
    this.insertions = insertions.clone();
    this.patterns = new ArrayList<>(shares);
    this.heads = shares.size();
    patterns.addAll(spots(observations));
    this.nuisance = nuisance(insideM);
  }

  private static List<double[]> spots(Observations o) {
    List<double[]> spots = new ArrayList<>();
    for (double width : SPOT_M) {
      for (int c = 0; c < o.size(); c++) {
        double[] spot = new double[o.size()];
        for (int i = 0; i < spot.length; i++) {
          double r = Math.hypot(o.x(i) - o.x(c), o.y(i) - o.y(c)) / width;
          spot[i] = Math.exp(-0.5 * r * r);
        }
        spots.add(spot);
      }
    }
    return spots;
  }

  /** Covariance [n][n] of slope, edge and common errors, which every hypothesis has. */
  private double[][] nuisance(double[] insideM) {
    Observations o = observations;
    int n = o.size();
    double mx = Arrays.stream(o.xs()).average().orElse(0);
    double my = Arrays.stream(o.ys()).average().orElse(0);
    double plane = prior.planeSdPctM() * prior.planeSdPctM();
    double edge = prior.edgeSdPct() * prior.edgeSdPct();
    double[][] sum = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        sum[i][j] =
            plane * ((o.x(i) - mx) * (o.x(j) - mx) + (o.y(i) - my) * (o.y(j) - my))
                + edge * rim(insideM[i]) * rim(insideM[j]);
        for (CommonError e : o.commonErrors()) {
          sum[i][j] += e.variance() * e.share(i) * e.share(j);
        }
      }
    }
    return sum;
  }

  private static double rim(double insideM) {
    return Math.max(0, 1 - Math.max(0, insideM) / EDGE_M);
  }

  /** Likelihoods of one covariance, and what they add to the sums. */
  private record Node(double weight, double logNone, ShiftEvidence[] shift, double[] shown) {}

  SectorEvidence under(List<OthersView> views) {
    List<Node> nodes = new ArrayList<>();
    for (OthersView view : views) {
      double[] sill = view.sill();
      double[] share = view.share();
      double[][] correlation = view.correlation();
      for (int k = 0; k < sill.length; k++) {
        if (share[k] > LEAST_SHARE) {
          add(view.nugget(), sill[k], correlation, share[k], nodes);
        }
      }
    }
    return evidence(nodes);
  }

  private void add(
      double nugget, double sill, double[][] correlation, double weight, List<Node> nodes) {
    int n = observations.size();
    double[][] upper = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        upper[i][j] = sill * correlation[i][j] + nuisance[i][j];
      }
      upper[i][i] += nugget / insertions[i];
    }
    if (!(CholeskyFactor.factor(upper) instanceof Factorisation.Factored f)) {
      return;
    }
    int count = patterns.size() + 2;
    double[][] panel = new double[n][count];
    for (int i = 0; i < n; i++) {
      panel[i][0] = 1;
      panel[i][1] = observations.value(i);
      for (int p = 2; p < count; p++) {
        panel[i][p] = patterns.get(p - 2)[i];
      }
    }
    f.factor().solveLower(panel, count);
    double[] one = product(panel, 0);
    double[] y = product(panel, 1);
    double residual = y[1] - one[1] * one[1] / one[0];
    double logNone = -0.5 * (f.factor().logDeterminant() + Math.log(one[0]) + residual);
    ShiftEvidence[] shift = new ShiftEvidence[patterns.size()];
    double[] shown = new double[heads];
    double[] squares = squares(panel, count);
    for (int p = 0; p < shift.length; p++) {
      double a = Math.max(0, squares[p + 2] - one[p + 2] * one[p + 2] / one[0]);
      double r = y[p + 2] - one[p + 2] * one[1] / one[0];
      if (p < heads) {
        shift[p] = ShiftEvidence.downwards(a, r, prior.headSdPct());
        shown[p] = prior.headSdPct() * Math.sqrt(a);
      } else {
        shift[p] = ShiftEvidence.eitherWay(a, r, prior.spotSdPct());
      }
    }
    nodes.add(new Node(weight, logNone, shift, shown));
  }

  /** Column {@code c} times every column. */
  private static double[] product(double[][] panel, int c) {
    double[] product = new double[panel[0].length];
    for (double[] row : panel) {
      for (int p = 0; p < product.length; p++) {
        product[p] += row[c] * row[p];
      }
    }
    return product;
  }

  private static double[] squares(double[][] panel, int count) {
    double[] squares = new double[count];
    for (double[] row : panel) {
      for (int p = 0; p < count; p++) {
        squares[p] += row[p] * row[p];
      }
    }
    return squares;
  }

  private SectorEvidence evidence(List<Node> nodes) {
    double top = nodes.stream().mapToDouble(Node::logNone).max().orElse(0);
    double none = 0;
    // of each pattern: sum of likelihoods, scaled by its own highest
    double[] highest = new double[patterns.size()];
    Arrays.fill(highest, Double.NEGATIVE_INFINITY);
    for (Node node : nodes) {
      none += node.weight * Math.exp(node.logNone - top);
      for (int p = 0; p < highest.length; p++) {
        highest[p] = Math.max(highest[p], node.logNone - top + node.shift[p].logBayes());
      }
    }
    double[] sum = new double[patterns.size()];
    double[] mean = new double[heads];
    double[] square = new double[heads];
    double[] shown = new double[heads];
    double total = 0;
    for (Node node : nodes) {
      total += node.weight;
      for (int p = 0; p < sum.length; p++) {
        ShiftEvidence s = node.shift[p];
        double likelihood =
            node.weight * Math.exp(node.logNone - top + s.logBayes() - highest[p]);
        sum[p] += likelihood;
        if (p < heads) {
          mean[p] += likelihood * s.mean();
          square[p] += likelihood * (s.mean() * s.mean() + s.variance());
          shown[p] += node.weight * node.shown[p];
        }
      }
    }
    double[] logBayes = new double[heads];
    double[] effect = new double[heads];
    double[] sd = new double[heads];
    for (int h = 0; h < heads; h++) {
      logBayes[h] = highest[h] + Math.log(sum[h] / none);
      double m = mean[h] / sum[h];
      double most = Arrays.stream(patterns.get(h)).max().orElse(0);
      effect[h] = most * m;
      sd[h] = most * Math.sqrt(Math.max(0, square[h] / sum[h] - m * m));
      shown[h] /= total;
    }
    return new SectorEvidence(logBayes, logSpot(highest, sum, none), effect, sd, shown);
  }

  /** All spots alike likely. */
  private double logSpot(double[] highest, double[] sum, double none) {
    double top = Double.NEGATIVE_INFINITY;
    for (int p = heads; p < sum.length; p++) {
      top = Math.max(top, highest[p]);
    }
    double spot = 0;
    for (int p = heads; p < sum.length; p++) {
      spot += Math.exp(highest[p] - top) * sum[p];
    }
    return top + Math.log(spot / none / (sum.length - heads));
  }
}
