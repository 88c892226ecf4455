package org.mottle.engine.kriging;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.observation.Observations;

/**
 * The columns X of a drift, centred and scaled by the observations so that coordinates near
 * 5,000,000 cost no digits: scaled term = (term - centre) / scale. Immutable.
 */
final class DriftTerms {
  private final Drift drift;
  private final int covariates;
  private final double[] centre;
  private final double[] scale;

  private DriftTerms(Drift drift, int covariates, double[] centre, double[] scale) {
    this.drift = drift;
    this.covariates = covariates;
    this.centre = centre;
    this.scale = scale;
  }

  static DriftTerms of(Drift drift, Observations observations) {
    int covariates = drift.usesCovariates() ? observations.covariateCount() : 0;
    if (drift.usesCovariates() && covariates == 0) {
      throw new IllegalArgumentException(
          "a drift on covariates needs observations with at least 1 covariate, had 0");
    }
    List<double[]> columns = new ArrayList<>();
    if (drift.usesCoordinates()) {
      columns.add(observations.xs());
      columns.add(observations.ys());
    }
    for (int c = 0; c < covariates; c++) {
      columns.add(column(observations, c));
    }
    double[] centre = new double[columns.size()];
    double[] scale = new double[columns.size()];
    for (int t = 0; t < centre.length; t++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (double v : columns.get(t)) {
        low = Math.min(low, v);
        high = Math.max(high, v);
      }
      boolean spread = high > low;
      centre[t] = spread ? low + (high - low) / 2 : columns.get(t).length == 0 ? 0 : low;
      scale[t] = spread ? (high - low) / 2 : 1;
    }
    return new DriftTerms(drift, covariates, centre, scale);
  }

  private static double[] column(Observations observations, int c) {
    double[] column = new double[observations.size()];
    for (int i = 0; i < column.length; i++) {
      column[i] = observations.covariate(c, i);
    }
    return column;
  }

  /** Number of terms p: 0 for a known mean. */
  int count() {
    return drift.unbiased() ? 1 + centre.length : 0;
  }

  /** What the values are reduced by before they are kriged. */
  double knownMean() {
    return drift instanceof Drift.KnownMean known ? known.mean() : 0;
  }

  /** "1", "x", "y", "covariate 1", ... */
  String name(int term) {
    if (term == 0) {
      return "1";
    }
    int t = term - 1;
    if (drift.usesCoordinates()) {
      return t == 0 ? "x" : t == 1 ? "y" : "covariate " + (t - 1);
    }
    return "covariate " + (t + 1);
  }

  void check(Targets targets) {
    if (targets.covariateCount() != covariates && drift.usesCovariates()) {
      throw new IllegalArgumentException(
          String.format(
              "the drift has %d covariates and the targets have %d",
              covariates, targets.covariateCount()));
    }
  }

  /** Term {@code term} of observation {@code i}. */
  double of(Observations observations, int term, int i) {
    if (term == 0) {
      return 1;
    }
    int t = term - 1;
    double raw;
    if (drift.usesCoordinates() && t < 2) {
      raw = t == 0 ? observations.x(i) : observations.y(i);
    } else {
      raw = observations.covariate(drift.usesCoordinates() ? t - 2 : t, i);
    }
    return (raw - centre[t]) / scale[t];
  }

  /** Term {@code term} of target {@code j}. */
  double of(Targets targets, int term, int j) {
    if (term == 0) {
      return 1;
    }
    int t = term - 1;
    double raw;
    if (drift.usesCoordinates() && t < 2) {
      raw = t == 0 ? targets.x(j) : targets.y(j);
    } else {
      raw = targets.covariate(drift.usesCoordinates() ? t - 2 : t, j);
    }
    return (raw - centre[t]) / scale[t];
  }

  /** [p][p] T with coefficients of the plain terms = T times coefficients of the scaled terms. */
  double[][] toPlain() {
    int p = count();
    double[][] t = new double[p][p];
    t[0][0] = 1;
    for (int k = 1; k < p; k++) {
      t[k][k] = 1 / scale[k - 1];
      t[0][k] = -centre[k - 1] / scale[k - 1];
    }
    return t;
  }
}
