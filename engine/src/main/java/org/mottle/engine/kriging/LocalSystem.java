package org.mottle.engine.kriging;

import java.util.Arrays;
import org.mottle.engine.neighbour.BucketGrid;
import org.mottle.engine.solve.BorderedCholesky;

/**
 * The kriging system of one target and its neighbours, solved again and again in the scratch memory
 * of one thread. The covariances with the target, the terms of the drift and the values stand as
 * rows below the matrix and are solved in the same sweep as it is factored.
 */
final class LocalSystem {
  private static final int PSEUDO_SILL_TRIALS = 8;

  private final LocalSetting setting;
  private final BucketGrid.Search search;
  private final BlockSupport support;
  private final int points;
  private final int terms;
  private final boolean bounded;
  private final double[][] whitened;
  private final double[] rest;
  private int capacity;
  private Covariances.Placed near;
  private double[][] rows;
  private double[] squaredLag;
  private double[] gamma;

  LocalSystem(LocalSetting setting) {
    this.setting = setting;
    this.search = setting.grid.search(setting.specification.neighbourhood());
    this.support = setting.specification.support();
    this.points = support.points();
    this.terms = setting.terms.count();
    this.bounded = setting.specification.model().bounded();
    this.whitened = new double[terms][];
    this.rest = new double[terms];
    grow(Math.min(setting.specification.neighbourhood().nearest(), 32));
  }

  private void grow(int wanted) {
    capacity = wanted;
    int frames = setting.covariances.frames();
    near =
        new Covariances.Placed(
            new double[frames][capacity + points], new double[frames][capacity + points]);
    rows = new double[capacity + terms + 2][capacity];
    int pairs = capacity * (capacity - 1) / 2 + points * capacity;
    squaredLag = new double[pairs];
    gamma = new double[pairs];
  }

  /**
   * Estimates target j into place {@code at}, leaving out one observation (-1 for none).
   *
   * @return a lower bound of the condition of the system, 1 where there was none to solve
   */
  double estimate(Targets targets, int j, int excluded, EstimateArrays into, int at) {
    int n = search.find(targets.x(j), targets.y(j), excluded);
    if (n == 0 || n < terms) {
      into.none(at, CellStatus.TOO_FEW_NEIGHBOURS);
      return 1;
    }
    if (n > capacity) {
      grow(Math.max(n, 2 * capacity));
    }
    gatherPlaces(targets, j, n);
    setting.covariances.packedSemivariances(near, n, points, squaredLag, gamma);
    double sill = structuralSill(n);
    for (int trial = 0; ; trial++) {
      fill(n, sill);
      double smallest =
          BorderedCholesky.factor(rows, n, terms + 2, 1 / Soundness.LARGEST_CONDITION);
      if (smallest > 0) {
        store(targets, j, n, sill, into, at);
        return 1 / smallest;
      }
      if (bounded || trial == PSEUDO_SILL_TRIALS) {
        into.none(at, CellStatus.ILL_CONDITIONED);
        return Double.POSITIVE_INFINITY;
      }
      sill *= 4;
    }
  }

  private void gatherPlaces(Targets targets, int j, int n) {
    for (int f = 0; f < near.u().length; f++) {
      gather(setting.placed.u()[f], n, near.u()[f]);
      gather(setting.placed.v()[f], n, near.v()[f]);
    }
    for (int p = 0; p < points; p++) {
      setting.covariances.placeOne(
          targets.x(j), targets.y(j), support.dx(p), support.dy(p), near, n + p);
    }
  }

  private double structuralSill(int n) {
    if (bounded) {
      return setting.specification.model().sill() - setting.covariances.nugget();
    }
    double largest = 0;
    for (int k = 0; k < n * (n - 1) / 2 + points * n; k++) {
      largest = Math.max(largest, gamma[k]);
    }
    return KrigingSystem.PSEUDO_SILL * largest;
  }

  private void fill(int n, double sill) {
    int pair = 0;
    for (int i = 0; i < n; i++) {
      double[] row = rows[i];
      for (int k = 0; k < i; k++) {
        row[k] = sill - gamma[pair + k];
      }
      row[i] = sill + setting.ownVariance[search.row(i)];
      pair += i;
    }
    fillTarget(n, sill, pair);
    addNuggetAtCoincidences(n);
    for (int t = 0; t < terms; t++) {
      gather(setting.columns[t], n, rows[n + 1 + t]);
    }
    gather(setting.values, n, rows[n + 1 + terms]);
  }

  private void gather(double[] from, int n, double[] into) {
    for (int i = 0; i < n; i++) {
      into[i] = from[search.row(i)];
    }
  }

  private void fillTarget(int n, double sill, int pair) {
    double[] target = rows[n];
    Arrays.fill(target, 0, n, sill);
    for (int p = 0; p < points; p++) {
      double weight = support.weight(p);
      for (int i = 0; i < n; i++) {
        target[i] -= weight * gamma[pair + p * n + i];
      }
    }
  }

  private void addNuggetAtCoincidences(int n) {
    double nugget = setting.covariances.nugget();
    for (int i = 0; i < n; i++) {
      if (search.squaredDistance(i) == 0) {
        rows[n][i] += setting.support.nuggetAtCoincidence();
      }
    }
    if (nugget == 0 || !setting.coincidence.duplicates()) {
      return;
    }
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < i; k++) {
        if (setting.observations.x(search.row(i)) == setting.observations.x(search.row(k))
            && setting.observations.y(search.row(i)) == setting.observations.y(search.row(k))) {
          rows[i][k] += nugget;
        }
      }
    }
  }

  private void store(Targets targets, int j, int n, double sill, EstimateArrays into, int at) {
    System.arraycopy(rows, n + 1, whitened, 0, terms);
    double[] v = rows[n];
    double[] residual = rows[n + 1 + terms];
    Trend trend = Trend.of(whitened, residual, n);
    if (trend == null) {
      into.none(at, CellStatus.ILL_CONDITIONED);
      return;
    }
    double value = setting.terms.knownMean();
    for (int t = 0; t < terms; t++) {
      double term = setting.terms.of(targets, t, j);
      value += trend.coefficient(t) * term;
      rest[t] = term;
      for (int i = 0; i < n; i++) {
        residual[i] -= trend.coefficient(t) * whitened[t][i];
        rest[t] -= whitened[t][i] * v[i];
      }
    }
    double own = setting.support.ownCovariance(sill);
    double variance = own + trend.solveLower(rest);
    for (int i = 0; i < n; i++) {
      value += v[i] * residual[i];
      variance -= v[i] * v[i];
    }
    into.put(at, value, variance, own);
  }
}
