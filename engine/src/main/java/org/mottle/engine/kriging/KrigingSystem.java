package org.mottle.engine.kriging;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.variogram.NestedModel;

/**
 * The kriging system of all observations, assembled and factored once.
 *
 * <p>C [n x n] value² is the covariance of the observations, their measurement variances on the
 * diagonal; X [n x p] the terms of the drift; z [n]. With C = L Lᵀ, F = L⁻¹X and G = FᵀF, the
 * coefficients are b = G⁻¹ Fᵀ L⁻¹z, the estimate for a target with covariances c₀ and terms x₀ is
 * x₀ᵀb + (L⁻¹c₀)ᵀ(L⁻¹z - Fb) and its variance c₀₀ - |L⁻¹c₀|² + tᵀG⁻¹t with t = x₀ - FᵀL⁻¹c₀
 * (Cressie 1993, sec. 3.4.5; the Schur complement of the bordered system). Unbounded models have no
 * covariance; a constant less the semivariance stands in for it, and any constant large enough
 * gives the same answer as long as the weights sum to one.
 *
 * <p>O(n³/3) once, n² numbers; immutable, shared by threads.
 */
public final class KrigingSystem {
  /** The stand-in for the sill of an unbounded model, in largest semivariances. */
  static final double PSEUDO_SILL = 2;

  private static final int LARGEST = 20_000;
  private static final int PSEUDO_SILL_TRIALS = 8;

  final Covariances covariances;
  final Covariances.Placed placed;
  final Coincidence coincidence;
  final DriftTerms terms;
  final Observations observations;

  /** Sum of the partial sills, or the constant that stands in for it. */
  double structuralSill;

  CholeskyFactor factor;
  double[][] whitenedTerms;
  double[] whitenedResidual;
  Trend trend;
  private Soundness soundness;

  KrigingSystem(NestedModel model, Drift drift, Observations observations, double pseudoSill) {
    this.observations = observations;
    this.terms = DriftTerms.of(drift, observations);
    int n = observations.size();
    double[] x = observations.xs();
    double[] y = observations.ys();
    this.covariances = new Covariances(model, Middle.of(x), Middle.of(y));
    this.placed = covariances.place(x, y, 0, n, 0, 0);
    this.coincidence = new Coincidence(observations);
    if (n > LARGEST) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "kriging with all of %d observations at once needs %.1f GB; the limit is %d"
                  + " observations: set a neighbourhood of the nearest, 32 say",
              n,
              8e-9 * n * n,
              LARGEST));
    }
    if (n == 0 || n < terms.count()) {
      this.soundness =
          new Soundness(
              CellStatus.TOO_FEW_NEIGHBOURS,
              1,
              n + " observations for a drift of " + terms.count() + " terms");
      return;
    }
    this.soundness = solve(model, pseudoSill);
  }

  public Soundness soundness() {
    return soundness;
  }

  /** Generalised least squares coefficients of the drift, with standard errors; empty if none. */
  public List<TrendCoefficient> trendCoefficients() {
    return trend == null || trend.count() == 0 ? List.of() : trend.plain(terms);
  }

  /**
   * C⁻¹(z - Xb) [n]: the weights of the covariances in the estimate, and the upper left block of
   * the inverse of the bordered system times z.
   */
  public double[] dual() {
    double[] dual = whitenedResidual.clone();
    factor.solveUpper(dual);
    return dual;
  }

  /** [n] diagonal of the upper left block of the inverse of the bordered system. */
  public double[] inverseDiagonal() {
    int n = factor.size();
    int p = terms.count();
    double[] diagonal = factor.inverseDiagonal();
    double[][] columns = new double[p][];
    for (int t = 0; t < p; t++) {
      columns[t] = whitenedTerms[t].clone();
      factor.solveUpper(columns[t]);
    }
    double[] row = new double[p];
    for (int i = 0; i < n; i++) {
      for (int t = 0; t < p; t++) {
        row[t] = columns[t][i];
      }
      diagonal[i] -= trend.solveLower(row);
    }
    return diagonal;
  }

  private Soundness solve(NestedModel model, double pseudoSill) {
    Factorisation outcome = null;
    double factorOfSill = pseudoSill;
    for (int trial = 0; trial < PSEUDO_SILL_TRIALS; trial++) {
      outcome = CholeskyFactor.factor(covariances(model, factorOfSill));
      if (model.bounded() || outcome instanceof Factorisation.Factored) {
        break;
      }
      factorOfSill *= 4;
    }
    if (outcome instanceof Factorisation.NotPositiveDefinite lost) {
      return unsound(
          Double.POSITIVE_INFINITY,
          "the covariance matrix is not positive definite at observation " + (lost.row() + 1));
    }
    factor = ((Factorisation.Factored) outcome).factor();
    if (!(factor.conditionEstimate() <= Soundness.LARGEST_CONDITION)) {
      return unsound(
          factor.conditionEstimate(),
          String.format(
              Locale.ROOT,
              "the covariance matrix is nearly singular, condition about %.1e",
              factor.conditionEstimate()));
    }
    return solveTrend();
  }

  private Soundness solveTrend() {
    int n = observations.size();
    int p = terms.count();
    whitenedTerms = new double[p][n];
    for (int t = 0; t < p; t++) {
      for (int i = 0; i < n; i++) {
        whitenedTerms[t][i] = terms.of(observations, t, i);
      }
      factor.solveLower(whitenedTerms[t]);
    }
    whitenedResidual = new double[n];
    for (int i = 0; i < n; i++) {
      whitenedResidual[i] = observations.value(i) - terms.knownMean();
    }
    factor.solveLower(whitenedResidual);
    trend = Trend.of(whitenedTerms, whitenedResidual, n);
    if (trend == null) {
      return new Soundness(
          CellStatus.ILL_CONDITIONED,
          Double.POSITIVE_INFINITY,
          "the terms of the drift cannot be told apart at the observations: they lie on a line, or"
              + " a covariate is constant or a combination of the others");
    }
    for (int t = 0; t < p; t++) {
      for (int i = 0; i < n; i++) {
        whitenedResidual[i] -= trend.coefficient(t) * whitenedTerms[t][i];
      }
    }
    return new Soundness(CellStatus.ESTIMATED, factor.conditionEstimate(), "");
  }

  private Soundness unsound(double condition, String what) {
    return new Soundness(
        CellStatus.ILL_CONDITIONED,
        condition,
        String.format(
            Locale.ROOT,
            "%s; the closest observations are %s: merge observations that share a place, give a"
                + " measurement variance or a nugget, or use a model that rises linearly at the"
                + " origin",
            what,
            ClosestPair.of(observations)));
  }

  /** The upper triangle of C; sets the structural sill. */
  private double[][] covariances(NestedModel model, double pseudoSill) {
    int n = observations.size();
    double[][] upper = new double[n][n];
    double[] squaredLag = new double[n];
    double[] gamma = new double[n];
    double largest = 0;
    for (int i = 0; i < n; i++) {
      covariances.semivariances(placed, i, placed, i, n - i, squaredLag, gamma);
      System.arraycopy(gamma, 0, upper[i], i, n - i);
      for (int j = 0; j < n - i; j++) {
        largest = Math.max(largest, gamma[j]);
      }
    }
    structuralSill = model.bounded() ? model.sill() - model.nugget() : pseudoSill * largest;
    for (int i = 0; i < n; i++) {
      double[] row = upper[i];
      for (int j = i; j < n; j++) {
        row[j] = structuralSill - row[j];
      }
      row[i] += model.nugget() + observations.measurementVariance(i);
      if (coincidence.duplicates()) {
        for (int j : coincidence.at(observations.x(i), observations.y(i))) {
          row[j] += j > i ? model.nugget() : 0;
        }
      }
    }
    return upper;
  }
}
