package org.mottle.export.calibration;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.mottle.engine.variogram.NestedModel;

/**
 * E C(|h + e|), e normal with standard deviation s per axis: the covariance that is left between
 * places known with that error. By Gauss-Hermite quadrature (16 by 16 points) at every {@value
 * #STEP_M} m and linear between. Isotropic models only. Immutable.
 */
final class SmoothedCovariance {
  private static final double STEP_M = 0.05;
  private static final double FARTHEST_M = 100;
  private static final int POINTS = 16;
  private final NestedModel structure;
  private final double[] table;

  SmoothedCovariance(NestedModel structure, double sd) {
    this.structure = structure;
    this.table = sd > 0 ? table(structure, sd) : new double[0];
  }

  double at(double lag) {
    if (table.length == 0) {
      return structure.sill() - structure.semivariance(lag, 0);
    }
    double steps = lag / STEP_M;
    int node = (int) steps;
    if (node >= table.length - 1) {
      throw new IllegalArgumentException(
          "the covariance is tabled to " + FARTHEST_M + " m, was asked for " + lag + " m");
    }
    return table[node] + (steps - node) * (table[node + 1] - table[node]);
  }

  private static double[] table(NestedModel structure, double sd) {
    GaussIntegrator hermite = new GaussIntegratorFactory().hermite(POINTS);
    double[] table = new double[(int) (FARTHEST_M / STEP_M) + 2];
    for (int i = 0; i < table.length; i++) {
      double lag = i * STEP_M;
      table[i] =
          hermite.integrate(
                  u ->
                      hermite.integrate(
                          v ->
                              structure.sill()
                                  - structure.semivariance(
                                      lag + Math.sqrt(2) * sd * u, Math.sqrt(2) * sd * v)))
              / Math.PI;
    }
    return table;
  }
}
