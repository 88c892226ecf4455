package org.mottle.engine.kriging;

import java.util.Arrays;
import org.mottle.engine.solve.RowSums;

/**
 * Point estimates at several places together: values, and the covariances of their errors with one
 * another. What is estimated is the structured part of the soil, the mean of the immediate
 * surroundings: the nugget of the model and the variances of the measurements are filtered out.
 *
 * <p>With V = L⁻¹c₀ [n x m] and U = R⁻¹(X₀ - FᵀV) [p x m] in the notation of {@link KrigingSystem}
 * (G = R Rᵀ), the covariance of the errors at a and b is C(a, b) - VₐᵀV_b + UₐᵀU_b; the last term
 * is the cost of not knowing the drift. It equals C(a, b) - wₐᵀc_b - w_bᵀcₐ + wₐᵀC w_b with the
 * kriging weights w, and is what a Gaussian field with a flat prior on the drift has as its
 * posterior covariance, so that one more reading is an update of rank one.
 *
 * <p>n² operations a place to make, n + p a covariance; n + p numbers a place are kept. Immutable,
 * shared by threads.
 */
public final class JointEstimates {
  private final Covariances covariances;
  private final Covariances.Placed placed;
  private final double sill;
  private final double[] values;
  private final double[] variances;

  /** [n][m] V. */
  private final double[][] whitened;

  /** [p][m] U. */
  private final double[][] drift;

  private JointEstimates(KrigingSystem system, Targets targets) {
    Solution solution = system.solution();
    int m = targets.size();
    this.covariances = system.covariances;
    this.placed = covariances.place(targets.xArray(), targets.yArray(), 0, m, 0, 0);
    this.sill = solution.structuralSill();
    this.whitened = whitened(system, targets);
    this.drift = new double[system.terms.count()][m];
    this.values = new double[m];
    this.variances = new double[m];
    Arrays.fill(values, system.terms.knownMean());
    RowSums.addProducts(solution.whitenedResidual(), whitened, whitened.length, m, values);
    for (int t = 0; t < drift.length; t++) {
      RowSums.addProducts(solution.whitenedTerms()[t], whitened, whitened.length, m, drift[t]);
    }
    RowSums.addSquares(whitened, whitened.length, m, variances);
    double[] terms = new double[drift.length];
    for (int j = 0; j < m; j++) {
      for (int t = 0; t < terms.length; t++) {
        double own = system.terms.of(targets, t, j);
        values[j] += solution.trend().coefficient(t) * own;
        terms[t] = own - drift[t][j];
      }
      double unknownDrift = solution.trend().solveLower(terms);
      for (int t = 0; t < terms.length; t++) {
        drift[t][j] = terms[t];
      }
      variances[j] = Math.max(0, sill - variances[j] + unknownDrift);
    }
  }

  private double[][] whitened(KrigingSystem system, Targets targets) {
    int m = targets.size();
    int n = system.observations.size();
    double[][] panel = new double[n][m];
    SupportCovariance points = SupportCovariance.of(covariances, BlockSupport.POINT);
    SupportCovariance.Scratch scratch = points.newScratch(m);
    points.place(targets, 0, m, scratch);
    for (int i = 0; i < n; i++) {
      points.semivariances(system.positioned.toTarget(i), system.placed, i, m, scratch, panel[i]);
      for (int j = 0; j < m; j++) {
        panel[i][j] = sill - panel[i][j];
      }
    }
    system.solution().factor().solveLower(panel, m);
    return panel;
  }

  /**
   * Estimates at all targets.
   *
   * @throws IllegalArgumentException if the drift wants covariates that the targets have not
   * @throws IllegalStateException if the system is not sound
   */
  public static JointEstimates of(KrigingSystem system, Targets targets) {
    system.terms.check(targets);
    return new JointEstimates(system, targets);
  }

  public int size() {
    return values.length;
  }

  public double value(int j) {
    return values[j];
  }

  /** Variance of the error, value²; never below 0. */
  public double variance(int j) {
    return variances[j];
  }

  /**
   * Covariances of the error of estimate {@code j} with those of the first {@code count} estimates.
   *
   * @param out [at least count] overwritten, value²
   */
  public void covariances(int j, int count, double[] out) {
    double[] coefficient = new double[whitened.length];
    for (int i = 0; i < coefficient.length; i++) {
      coefficient[i] = whitened[i][j];
    }
    covariances.semivariances(placed, j, placed, 0, count, new double[count], out);
    RowSums.addProducts(coefficient, whitened, coefficient.length, count, out);
    for (int b = 0; b < count; b++) {
      out[b] = sill - out[b];
    }
    for (double[] term : drift) {
      double own = term[j];
      for (int b = 0; b < count; b++) {
        out[b] += own * term[b];
      }
    }
  }
}
