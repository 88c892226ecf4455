package org.mottle.engine.kriging;

import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;

/**
 * A kriging system solved: L, F = L⁻¹X [p][n], the whitened residual L⁻¹z - Fb [n] and the trend.
 * Arrays are shared inside the package and not written to.
 */
record Solution(
    double structuralSill,
    CholeskyFactor factor,
    double[][] whitenedTerms,
    double[] whitenedResidual,
    Trend trend) {

  /** Null if the terms of the drift cannot be told apart at the observations. */
  static Solution of(
      double structuralSill, CholeskyFactor factor, DriftTerms terms, Observations observations) {
    int n = observations.size();
    double[][] whitened = new double[terms.count()][n];
    for (int t = 0; t < whitened.length; t++) {
      for (int i = 0; i < n; i++) {
        whitened[t][i] = terms.of(observations, t, i);
      }
      factor.solveLower(whitened[t]);
    }
    double[] residual = new double[n];
    for (int i = 0; i < n; i++) {
      residual[i] = observations.value(i) - terms.knownMean();
    }
    factor.solveLower(residual);
    Trend trend = Trend.of(whitened, residual, n);
    if (trend == null) {
      return null;
    }
    for (int t = 0; t < whitened.length; t++) {
      for (int i = 0; i < n; i++) {
        residual[i] -= trend.coefficient(t) * whitened[t][i];
      }
    }
    return new Solution(structuralSill, factor, whitened, residual, trend);
  }
}
