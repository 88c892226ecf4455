package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.likelihood.OthersView;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;

/**
 * Marginal likelihoods of the readings of one green in one survey, and in others beside it, with
 * and without a shortfall of one head. In survey s
 *
 * <pre>y = m_s + p_s·(x − x̄) + e_s max(0, 1 − d/1.5) + S_s(x) + error + pattern
 * </pre>
 *
 * m_s flat; slope p and edge e (d m inside the outline) normal, three quarters of their variance
 * common to all surveys; of S the share ρ common, ρ 0.2, 0.5 or 0.8 alike likely. The pattern is b
 * f in this survey for a head, b f in all of them for its ground, f the head's share of the water
 * and b ≤ 0 half-normal; or a spot in this survey, exp(−½ (r/w)²) round one of the stations, w 1.5,
 * 3 or 5 m, its size normal, all alike likely. Surveys beside it so take off what is always there.
 *
 * <p>The covariance is that of every view the other greens allow, integrated under each hypothesis
 * by itself: a green with a fault varies more than sound ones, and a sill learnt from its own
 * readings would hide what is looked for. Immutable.
 */
final class SectorTest {
  /** Width of the drier or wetter edge, m. */
  private static final double EDGE_M = 1.5;

  /** Share of slope and edge that surveys have in common. */
  private static final double LASTING = 0.75;

  private static final double[] SPOT_M = {1.5, 3, 5};

  private static final double[] COMMON_SHARE = {0.2, 0.5, 0.8};

  private final SectorPrior prior;
  private final int n;
  private final int surveys;

  /** [n] which survey, the value, and 1 / insertions. */
  private final int[] survey;

  private final double[] value;
  private final double[] perInsertion;

  private final int heads;

  /** [2 heads + spots][n] */
  private final List<double[]> patterns = new ArrayList<>();

  private final double[][] nuisance;

  /**
   * @param seen the survey that is asked, then those beside it
   */
  SectorTest(SectorPrior prior, List<SectorSurvey> seen) {
    this.prior = prior;
    this.surveys = seen.size();
    this.n = seen.stream().mapToInt(SectorSurvey::size).sum();
    this.survey = new int[n];
    this.value = new double[n];
    this.perInsertion = new double[n];
    this.heads = seen.get(0).shares().size();
    int at = 0;
    for (int s = 0; s < surveys; s++) {
      SectorSurvey own = seen.get(s);
      for (int i = 0; i < own.size(); i++, at++) {
        survey[at] = s;
        value[at] = own.observations().value(i);
        perInsertion[at] = 1.0 / own.insertions()[i];
      }
    }
    for (int h = 0; h < heads; h++) {
      patterns.add(Arrays.copyOf(seen.get(0).shares().get(h), n));
    }
    for (int h = 0; h < heads; h++) {
      int head = h;
      patterns.add(
          seen.stream().flatMapToDouble(s -> Arrays.stream(s.shares().get(head))).toArray());
    }
    patterns.addAll(spots(seen.get(0).observations()));
    this.nuisance = nuisance(seen);
  }

  private List<double[]> spots(Observations o) {
    List<double[]> spots = new ArrayList<>();
    for (double width : SPOT_M) {
      for (int c = 0; c < o.size(); c++) {
        double[] spot = new double[n];
        for (int i = 0; i < o.size(); i++) {
          double r = Math.hypot(o.x(i) - o.x(c), o.y(i) - o.y(c)) / width;
          spot[i] = Math.exp(-0.5 * r * r);
        }
        spots.add(spot);
      }
    }
    return spots;
  }

  /** Covariance [n][n] of slope, edge and common errors, which every hypothesis has. */
  private double[][] nuisance(List<SectorSurvey> seen) {
    double mx = seen.get(0).meanX();
    double my = seen.get(0).meanY();
    double plane = prior.planeSdPctM() * prior.planeSdPctM();
    double edge = prior.edgeSdPct() * prior.edgeSdPct();
    double[][] term = new double[3][n];
    int at = 0;
    for (SectorSurvey s : seen) {
      for (int i = 0; i < s.size(); i++, at++) {
        term[0][at] = s.observations().x(i) - mx;
        term[1][at] = s.observations().y(i) - my;
        term[2][at] = Math.max(0, 1 - s.insideM()[i] / EDGE_M);
      }
    }
    double[][] sum = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double drift =
            plane * (term[0][i] * term[0][j] + term[1][i] * term[1][j])
                + edge * term[2][i] * term[2][j];
        sum[i][j] = survey[i] == survey[j] ? drift : LASTING * drift;
      }
    }
    int first = 0;
    for (SectorSurvey s : seen) {
      for (CommonError e : s.observations().commonErrors()) {
        for (int i = 0; i < s.size(); i++) {
          for (int j = 0; j < s.size(); j++) {
            sum[first + i][first + j] += e.variance() * e.share(i) * e.share(j);
          }
        }
      }
      first += s.size();
    }
    return sum;
  }

  /** Likelihoods of one covariance, and what they add to the sums. */
  private record Node(double weight, double logNone, ShiftEvidence[] shift, double[] shown) {}

  /** Empty where no covariance could be factored. */
  Optional<SectorEvidence> under(List<OthersView> views) {
    List<Node> nodes = new ArrayList<>();
    double[] common = surveys == 1 ? new double[] {0} : COMMON_SHARE;
    for (OthersView view : views) {
      double[][] correlation = view.correlation();
      for (OthersView.Sills sills : view.sills()) {
        for (double share : common) {
          add(view.nugget(), sills, share, correlation, nodes);
        }
      }
    }
    return nodes.isEmpty() ? Optional.empty() : Optional.of(evidence(nodes));
  }

  private void add(
      double nugget,
      OthersView.Sills sills,
      double common,
      double[][] correlation,
      List<Node> nodes) {
    double[] root = Arrays.stream(sills.sill()).map(Math::sqrt).toArray();
    double[][] upper = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = i; j < n; j++) {
        double share = survey[i] == survey[j] ? 1 : common;
        upper[i][j] =
            share * root[survey[i]] * root[survey[j]] * correlation[i][j] + nuisance[i][j];
      }
      upper[i][i] += nugget * perInsertion[i];
    }
    if (CholeskyFactor.factor(upper) instanceof Factorisation.Factored f) {
      nodes.add(node(f.factor(), sills.share()));
    }
  }

  /** Generalised least squares with a mean for each survey, taken off one after the other. */
  private Node node(CholeskyFactor factor, double weight) {
    int p = patterns.size();
    int count = surveys + 1 + p;
    double[][] panel = new double[n][count];
    for (int i = 0; i < n; i++) {
      panel[i][survey[i]] = 1;
      panel[i][surveys] = value[i];
      for (int k = 0; k < p; k++) {
        panel[i][surveys + 1 + k] = patterns.get(k)[i];
      }
    }
    factor.solveLower(panel, count);
    double logMeans = 0;
    for (int s = 0; s < surveys; s++) {
      double[] along = product(panel, s);
      logMeans += Math.log(along[s]);
      for (double[] row : panel) {
        double own = row[s] / along[s];
        for (int k = s + 1; k < count; k++) {
          row[k] -= own * along[k];
        }
      }
    }
    double[] withValue = product(panel, surveys);
    double[] square = squares(panel);
    ShiftEvidence[] shift = new ShiftEvidence[p];
    double[] shown = new double[heads];
    for (int k = 0; k < p; k++) {
      double a = square[surveys + 1 + k];
      double r = withValue[surveys + 1 + k];
      shift[k] =
          k < 2 * heads
              ? ShiftEvidence.downwards(a, r, prior.headSdPct())
              : ShiftEvidence.eitherWay(a, r, prior.spotSdPct());
      if (k < heads) {
        shown[k] = prior.headSdPct() * Math.sqrt(a);
      }
    }
    double logNone = -0.5 * (factor.logDeterminant() + logMeans + withValue[surveys]);
    return new Node(weight, logNone, shift, shown);
  }

  /** Column {@code c} times every column. */
  private static double[] product(double[][] panel, int c) {
    double[] product = new double[panel[0].length];
    for (double[] row : panel) {
      for (int k = 0; k < product.length; k++) {
        product[k] += row[c] * row[k];
      }
    }
    return product;
  }

  private static double[] squares(double[][] panel) {
    double[] squares = new double[panel[0].length];
    for (double[] row : panel) {
      for (int k = 0; k < squares.length; k++) {
        squares[k] += row[k] * row[k];
      }
    }
    return squares;
  }

  private SectorEvidence evidence(List<Node> nodes) {
    double top = nodes.stream().mapToDouble(Node::logNone).max().orElse(0);
    double none = 0;
    int p = patterns.size();
    // of each pattern: sum of likelihoods, scaled by its own highest
    double[] highest = new double[p];
    Arrays.fill(highest, Double.NEGATIVE_INFINITY);
    for (Node node : nodes) {
      none += node.weight * Math.exp(node.logNone - top);
      for (int k = 0; k < p; k++) {
        highest[k] = Math.max(highest[k], node.logNone - top + node.shift[k].logBayes());
      }
    }
    double[] sum = new double[p];
    double[] mean = new double[heads];
    double[] square = new double[heads];
    double[] shown = new double[heads];
    double total = 0;
    for (Node node : nodes) {
      total += node.weight;
      for (int k = 0; k < p; k++) {
        ShiftEvidence s = node.shift[k];
        double likelihood = node.weight * Math.exp(node.logNone - top + s.logBayes() - highest[k]);
        sum[k] += likelihood;
        if (k < heads) {
          mean[k] += likelihood * s.mean();
          square[k] += likelihood * (s.mean() * s.mean() + s.variance());
          shown[k] += node.weight * node.shown[k];
        }
      }
    }
    double[] logs = new double[p];
    for (int k = 0; k < p; k++) {
      logs[k] = highest[k] + Math.log(sum[k] / none);
    }
    double[] effect = new double[heads];
    double[] sd = new double[heads];
    for (int h = 0; h < heads; h++) {
      double m = mean[h] / sum[h];
      double most = Arrays.stream(patterns.get(h)).max().orElse(0);
      effect[h] = most * m;
      sd[h] = most * Math.sqrt(Math.max(0, square[h] / sum[h] - m * m));
      shown[h] /= total;
    }
    return new SectorEvidence(
        Arrays.copyOf(logs, heads),
        Arrays.copyOfRange(logs, heads, 2 * heads),
        logMean(Arrays.copyOfRange(logs, 2 * heads, p)),
        effect,
        sd,
        shown,
        surveys - 1);
  }

  /** Logarithm of the mean of what these are logarithms of. */
  private static double logMean(double[] logs) {
    double top = Arrays.stream(logs).max().orElse(0);
    double sum = 0;
    for (double v : logs) {
      sum += Math.exp(v - top);
    }
    return top + Math.log(sum / logs.length);
  }
}
