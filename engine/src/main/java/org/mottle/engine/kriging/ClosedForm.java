package org.mottle.engine.kriging;

import org.mottle.engine.observation.Observations;

/**
 * Leave-one-out by the inverse of the bordered system, B its upper left block: residual (Bz)ᵢ /
 * Bᵢᵢ, variance 1 / Bᵢᵢ (Dubrule 1983, Math. Geol. 15, 687-699). An observation without which the
 * drift cannot be estimated has Bᵢᵢ = 0 but for rounding.
 */
final class ClosedForm {
  /** Of the largest; below it Bᵢᵢ is rounding. */
  private static final double LOST = 1e-12;

  private ClosedForm() {}

  static Estimates leaveOneOut(KrigingSystem system, Observations observations) {
    int n = observations.size();
    EstimateArrays into = new EstimateArrays(n);
    Soundness soundness = system.soundness();
    if (!soundness.sound() || n <= system.terms.count() || n == 1) {
      CellStatus why = soundness.sound() ? CellStatus.TOO_FEW_NEIGHBOURS : soundness.status();
      for (int i = 0; i < n; i++) {
        into.none(i, why);
      }
      return into.toEstimates(soundness.conditionEstimate());
    }
    double[] weighted = system.dual();
    double[] diagonal = system.inverseDiagonal();
    double largest = java.util.Arrays.stream(diagonal).max().orElse(0);
    for (int i = 0; i < n; i++) {
      if (!(diagonal[i] > LOST * largest)) {
        into.none(i, CellStatus.ILL_CONDITIONED);
        continue;
      }
      double variance = 1 / diagonal[i];
      into.put(i, observations.value(i) - weighted[i] * variance, variance, variance);
    }
    return into.toEstimates(soundness.conditionEstimate());
  }
}
