package org.mottle.engine.order;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Reading;

/**
 * The hidden Markov chain of a walk over n stations: a state is a station and how often it has been
 * read (1 to 4, 4 standing for more). From a state the walker reads again, or goes on to a later
 * station and passes by those between. Forward-backward with scaling (Rabiner 1989, Proceedings of
 * the IEEE 77, 257-286). Cost readings x stations² x 4.
 */
final class StationChain {
  static final int COUNTS = 4;

  private static final double PLANNED_AGAIN = 0.9;
  private static final double CONTROL_SKIPPED = 0.5;

  /** Chance that a walk ends early wherever it does. */
  private static final double CUT_SHORT = 0.01;

  /** Chances of the logged replicate number: above 1 though first, and 1 though further. */
  private static final double NUMBERED_FIRST = 0.01;

  private static final double UNNUMBERED_FURTHER = 0.3;

  private final List<PlannedStation> stations;
  private final OrderedVisit visit;
  private final OrderSettings settings;
  private final GapModel gaps;
  private final int n;
  private final int m;
  private final double[] logSkip;

  StationChain(
      List<PlannedStation> stations, OrderedVisit visit, OrderSettings settings, GapModel gaps) {
    this.stations = stations;
    this.visit = visit;
    this.settings = settings;
    this.gaps = gaps;
    this.n = stations.size();
    this.m = visit.size();
    this.logSkip = new double[n + 1];
    for (int i = 0; i < n; i++) {
      boolean control = stations.get(i).role() == Reading.Role.CONTROL;
      logSkip[i + 1] = logSkip[i] + Math.log(control ? CONTROL_SKIPPED : settings.skipShare());
    }
  }

  /**
   * [k][i]: chance that reading k was taken at station i; and the expected use of each step.
   *
   * @param logLikelihood of the gaps and replicate numbers, up to a constant
   * @param station [readings][stations]
   * @param step [readings][stations][stations] chance that reading k was at the second and the one
   *     before at the first; on the diagonal, a further insertion
   */
  record Posterior(double logLikelihood, double[][] station, double[][][] step) {}

  Posterior posterior() {
    double[][] forward = new double[m][];
    double[][] backward = new double[m][];
    forward[0] = start();
    double log = 0;
    for (int k = 1; k < m; k++) {
      forward[k] = forward(k, forward[k - 1]);
      log += Math.log(Arrays.stream(forward[k]).sum());
      scaled(forward[k]);
    }
    backward[m - 1] = end();
    double last = 0;
    for (int s = 0; s < n * COUNTS; s++) {
      last += forward[m - 1][s] * backward[m - 1][s];
    }
    log += Math.log(last);
    for (int k = m - 1; k > 0; k--) {
      backward[k - 1] = scaled(backward(k, backward[k]));
    }
    double[][] station = new double[m][n];
    for (int k = 0; k < m; k++) {
      for (int s = 0; s < n * COUNTS; s++) {
        station[k][s / COUNTS] += forward[k][s] * backward[k][s];
      }
      station[k] = scaled(station[k]);
    }
    double[][][] step = new double[m][][];
    for (int k = 1; k < m; k++) {
      step[k] = steps(k, forward[k - 1], backward[k]);
    }
    return new Posterior(log, station, step);
  }

  private double[] start() {
    double[] first = new double[n * COUNTS];
    for (int i = 0; i < n; i++) {
      first[i * COUNTS] = passedBy(0, i) * logged(0, 1);
    }
    return scaled(first);
  }

  private double[] end() {
    double[] last = new double[n * COUNTS];
    for (int i = 0; i < n; i++) {
      double on = Math.max(passedBy(i + 1, n), i + 1 < n ? CUT_SHORT / n : 0);
      for (int c = 1; c <= COUNTS; c++) {
        last[i * COUNTS + c - 1] = (1 - again(i, c)) * on;
      }
    }
    return scaled(last);
  }

  private double[] forward(int k, double[] before) {
    double[] now = new double[n * COUNTS];
    double stay = gaps.stay(visit.gap(k));
    for (int i = 0; i < n; i++) {
      double leaving = 0;
      for (int c = 1; c <= COUNTS; c++) {
        double weight = before[i * COUNTS + c - 1];
        int next = Math.min(c + 1, COUNTS);
        now[i * COUNTS + next - 1] += weight * again(i, c) * stay * logged(k, next);
        leaving += weight * (1 - again(i, c));
      }
      for (int j = i + 1; j < n && leaving > 0; j++) {
        now[j * COUNTS] += leaving * passedBy(i + 1, j) * move(k, i, j) * logged(k, 1);
      }
    }
    return now;
  }

  private double[] backward(int k, double[] after) {
    double[] before = new double[n * COUNTS];
    double stay = gaps.stay(visit.gap(k));
    for (int i = 0; i < n; i++) {
      double onward = 0;
      for (int j = i + 1; j < n; j++) {
        onward += passedBy(i + 1, j) * move(k, i, j) * logged(k, 1) * after[j * COUNTS];
      }
      for (int c = 1; c <= COUNTS; c++) {
        int next = Math.min(c + 1, COUNTS);
        double again = again(i, c);
        before[i * COUNTS + c - 1] =
            again * stay * logged(k, next) * after[i * COUNTS + next - 1] + (1 - again) * onward;
      }
    }
    return before;
  }

  private double[][] steps(int k, double[] before, double[] after) {
    double[][] step = new double[n][n];
    double stay = gaps.stay(visit.gap(k));
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double leaving = 0;
      for (int c = 1; c <= COUNTS; c++) {
        int next = Math.min(c + 1, COUNTS);
        double weight = before[i * COUNTS + c - 1];
        step[i][i] += weight * again(i, c) * stay * logged(k, next) * after[i * COUNTS + next - 1];
        leaving += weight * (1 - again(i, c));
      }
      sum += step[i][i];
      for (int j = i + 1; j < n; j++) {
        step[i][j] =
            leaving * passedBy(i + 1, j) * move(k, i, j) * logged(k, 1) * after[j * COUNTS];
        sum += step[i][j];
      }
    }
    for (double[] row : step) {
      for (int j = 0; j < n && sum > 0; j++) {
        row[j] /= sum;
      }
    }
    return step;
  }

  private double move(int k, int i, int j) {
    boolean afterFurther = visit.readings().get(k - 1).replicate() > 1;
    return gaps.move(visit.gap(k), metres(i, j), afterFurther);
  }

  double metres(int i, int j) {
    PlannedStation a = stations.get(i);
    PlannedStation b = stations.get(j);
    return Math.hypot(b.x() - a.x(), b.y() - a.y());
  }

  /** Chance that the stations from this one up to, and without, that one are passed by. */
  private double passedBy(int from, int to) {
    return Math.exp(logSkip[to] - logSkip[from]);
  }

  private double again(int i, int count) {
    return count < stations.get(i).insertions() ? PLANNED_AGAIN : settings.doubleShare();
  }

  private double logged(int k, int count) {
    boolean further = visit.readings().get(k).replicate() > 1;
    if (count == 1) {
      return further ? NUMBERED_FIRST : 1 - NUMBERED_FIRST;
    }
    return further ? 1 - UNNUMBERED_FURTHER : UNNUMBERED_FURTHER;
  }

  private static double[] scaled(double[] weights) {
    double sum = 0;
    for (double w : weights) {
      sum += w;
    }
    for (int s = 0; s < weights.length && sum > 0; s++) {
      weights[s] /= sum;
    }
    return weights;
  }
}
