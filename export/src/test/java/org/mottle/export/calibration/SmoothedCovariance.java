package org.mottle.export.calibration;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.mottle.engine.variogram.NestedModel;

/**
 * E C(|h + e|), e normal with standard deviation s per axis: the covariance that is left between
 * places known with that error. By Gauss-Hermite quadrature (12 by 12 points) at every quarter of s
 * (0.05 to 0.25 m) and linear between. Isotropic models only. Immutable.
 */
final class SmoothedCovariance {
  private static final double LEAST_STEP_M = 0.05;
  private static final double MOST_STEP_M = 0.25;
  private static final double FARTHEST_M = 80;
  private static final int POINTS = 12;
  private final NestedModel structure;
  private final double step;
  private final double[] table;

  SmoothedCovariance(NestedModel structure, double sd) {
    this.structure = structure;
    this.step = Math.min(MOST_STEP_M, Math.max(LEAST_STEP_M, sd / 4));
    this.table = sd > 0 ? table(structure, sd, step) : new double[0];
  }

  double at(double lag) {
    if (table.length == 0) {
      return structure.sill() - structure.semivariance(lag, 0);
    }
    double steps = lag / step;
    int node = (int) steps;
    if (node >= table.length - 1) {
      throw new IllegalArgumentException(
          "the covariance is tabled to " + FARTHEST_M + " m, was asked for " + lag + " m");
    }
    return table[node] + (steps - node) * (table[node + 1] - table[node]);
  }

  private static double[] table(NestedModel structure, double sd, double step) {
    double sill = structure.sill();
    GaussIntegrator hermite = new GaussIntegratorFactory().hermite(POINTS);
    double[] table = new double[(int) (FARTHEST_M / step) + 2];
    for (int i = 0; i < table.length; i++) {
      double lag = i * step;
      table[i] =
          hermite.integrate(
                  u ->
                      hermite.integrate(
                          v ->
                              sill
                                  - structure.semivariance(
                                      lag + Math.sqrt(2) * sd * u, Math.sqrt(2) * sd * v)))
              / Math.PI;
    }
    return table;
  }
}
