package org.mottle.engine.kriging;

import java.util.List;
import org.mottle.engine.check.Check;

/**
 * Places to be estimated, with the covariates of the drift there. Immutable; arrays are copied in.
 */
public final class Targets {
  private final double[] x;
  private final double[] y;
  private final List<double[]> covariates;

  private Targets(double[] x, double[] y, List<double[]> covariates) {
    this.x = x;
    this.y = y;
    this.covariates = covariates;
  }

  /**
   * @param x [n] east, m
   * @param y [n] north, m
   * @throws IllegalArgumentException for unequal lengths or numbers that are not finite
   */
  public static Targets of(double[] x, double[] y) {
    if (x.length != y.length) {
      throw new IllegalArgumentException(
          "targets have " + x.length + " x and " + y.length + " y: one of each a target");
    }
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        throw new IllegalArgumentException(
            "target " + (i + 1) + " must have finite coordinates, was " + x[i] + " " + y[i]);
      }
    }
    return new Targets(x.clone(), y.clone(), List.of());
  }

  /** The same places with covariates, each column [n], in the order of the observations'. */
  public Targets withCovariates(List<double[]> columns) {
    for (int c = 0; c < columns.size(); c++) {
      if (columns.get(c).length != x.length) {
        throw new IllegalArgumentException(
            String.format(
                "covariate %d has %d entries where there are %d targets",
                c + 1, columns.get(c).length, x.length));
      }
      for (int i = 0; i < x.length; i++) {
        if (!Double.isFinite(columns.get(c)[i])) {
          Check.finite("covariate " + (c + 1) + " of target " + (i + 1), columns.get(c)[i], "");
        }
      }
    }
    return new Targets(x, y, columns.stream().map(double[]::clone).toList());
  }

  public int size() {
    return x.length;
  }

  public double x(int i) {
    return x[i];
  }

  public double y(int i) {
    return y[i];
  }

  public int covariateCount() {
    return covariates.size();
  }

  public double covariate(int column, int i) {
    return covariates.get(column)[i];
  }

  /** The arrays themselves, for the inner loops of this package only. */
  double[] xArray() {
    return x;
  }

  double[] yArray() {
    return y;
  }
}
