package org.mottle.engine.kriging;

import org.mottle.engine.solve.CholeskyFactor;

/**
 * From whitened covariances to weights: w = L⁻ᵀ (v + F R⁻ᵀ R⁻¹ t), with v = L⁻¹c₀ and t what the
 * terms at the target lack. Scratch memory of one thread; n² operations a target.
 */
final class WeightPanel {
  private final KrigingSystem system;
  private final double[] column;
  private final double[] multiplier;

  WeightPanel(KrigingSystem system) {
    this.system = system;
    this.column = new double[system.observations.size()];
    this.multiplier = new double[system.terms.count()];
  }

  /**
   * @param whitened [n][count] L⁻¹c₀ of the targets [from, from + count)
   * @param weight [n][m] to be written to
   * @param constant [m] to be written to
   */
  void store(
      double[][] whitened,
      int count,
      double[][] targetTerms,
      int from,
      double[][] weight,
      double[] constant) {
    for (int j = 0; j < count; j++) {
      for (int i = 0; i < column.length; i++) {
        column[i] = whitened[i][j];
      }
      solve(column, targetTerms[j]);
      double sum = 0;
      for (int i = 0; i < column.length; i++) {
        weight[i][from + j] = column[i];
        sum += column[i];
      }
      double mean = system.terms.knownMean();
      constant[from + j] = mean == 0 ? 0 : (1 - sum) * mean;
    }
  }

  /** Turns L⁻¹c₀ into the weights, in place, and returns R⁻ᵀ R⁻¹ t, which is overwritten later. */
  double[] solve(double[] whitened, double[] targetTerms) {
    Solution solution = system.solution();
    CholeskyFactor factor = solution.factor();
    for (int t = 0; t < multiplier.length; t++) {
      multiplier[t] = targetTerms[t] - dot(solution.whitenedTerms()[t], whitened);
    }
    solution.trend().solveLower(multiplier);
    solution.trend().solveUpper(multiplier);
    for (int t = 0; t < multiplier.length; t++) {
      for (int i = 0; i < whitened.length; i++) {
        whitened[i] += solution.whitenedTerms()[t][i] * multiplier[t];
      }
    }
    factor.solveUpper(whitened);
    return multiplier;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
