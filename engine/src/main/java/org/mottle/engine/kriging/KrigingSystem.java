package org.mottle.engine.kriging;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.observation.CommonError;
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
 * <p>Errors of the places change the covariances as {@link PositionedCovariances} says; errors in
 * common add their variance to C between the observations that share them. Neither is in the
 * target: the variance is that of the soil at the true place.
 *
 * <p>O(n³/3) once, n² numbers; immutable, shared by threads.
 */
public final class KrigingSystem {
  /** The stand-in for the sill of an unbounded model, in largest semivariances. */
  static final double PSEUDO_SILL = 2;

  private static final int LARGEST = 20_000;
  private static final int PSEUDO_SILL_TRIALS = 8;

  final Covariances covariances;
  final PositionedCovariances positioned;
  final Covariances.Placed placed;
  final Coincidence coincidence;
  final DriftTerms terms;
  final Observations observations;

  private final NestedModel model;

  /** Null unless the system is sound. */
  private final Solution solution;

  private final Soundness soundness;

  KrigingSystem(NestedModel model, Drift drift, Observations observations, double pseudoSill) {
    int n = requireFeasible(observations.size());
    double[] x = observations.xs();
    double[] y = observations.ys();
    this.model = model;
    this.observations = observations;
    this.terms = DriftTerms.of(drift, observations);
    this.positioned =
        new PositionedCovariances(model, drift, observations, Middle.of(x), Middle.of(y));
    this.covariances = positioned.exact();
    this.placed = covariances.place(x, y, 0, n, 0, 0);
    this.coincidence = new Coincidence(observations);
    Attempt attempt = n == 0 || n < terms.count() ? tooFew() : solve(pseudoSill);
    this.solution = attempt.solution();
    this.soundness = attempt.soundness();
  }

  private record Attempt(Solution solution, Soundness soundness) {
    static Attempt failed(CellStatus status, double condition, String reason) {
      return new Attempt(null, new Soundness(status, condition, reason));
    }
  }

  private static int requireFeasible(int n) {
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
    return n;
  }

  private Attempt tooFew() {
    return Attempt.failed(
        CellStatus.TOO_FEW_NEIGHBOURS,
        1,
        observations.size() + " observations for a drift of " + terms.count() + " terms");
  }

  public Soundness soundness() {
    return soundness;
  }

  /** Generalised least squares coefficients of the drift, with standard errors; empty if none. */
  public List<TrendCoefficient> trendCoefficients() {
    return solution == null || terms.count() == 0 ? List.of() : solution.trend().plain(terms);
  }

  /**
   * C⁻¹(z - Xb) [n]: the weights of the covariances in the estimate, and the upper left block of
   * the inverse of the bordered system times z.
   */
  public double[] dual() {
    double[] dual = solution().whitenedResidual().clone();
    solution.factor().solveUpper(dual);
    return dual;
  }

  /** [n] diagonal of the upper left block of the inverse of the bordered system. */
  public double[] inverseDiagonal() {
    CholeskyFactor factor = solution().factor();
    int n = factor.size();
    int p = terms.count();
    double[] diagonal = factor.inverseDiagonal();
    double[][] columns = new double[p][];
    for (int t = 0; t < p; t++) {
      columns[t] = solution.whitenedTerms()[t].clone();
      factor.solveUpper(columns[t]);
    }
    double[] row = new double[p];
    for (int i = 0; i < n; i++) {
      for (int t = 0; t < p; t++) {
        row[t] = columns[t][i];
      }
      diagonal[i] -= solution.trend().solveLower(row);
    }
    return diagonal;
  }

  /** The factors of the system; only a sound one has them. */
  Solution solution() {
    if (solution == null) {
      throw new IllegalStateException("the kriging system has no solution: " + soundness.reason());
    }
    return solution;
  }

  private Attempt solve(double pseudoSill) {
    double[][] semivariances = positioned.upper(placed);
    double sill =
        model.bounded() ? model.sill() - model.nugget() : pseudoSill * largest(semivariances);
    Factorisation outcome = CholeskyFactor.factor(covariances(semivariances, sill));
    for (int trial = 1; trial < PSEUDO_SILL_TRIALS && !model.bounded(); trial++) {
      if (outcome instanceof Factorisation.Factored) {
        break;
      }
      sill *= 4;
      outcome = CholeskyFactor.factor(covariances(positioned.upper(placed), sill));
    }
    if (outcome instanceof Factorisation.NotPositiveDefinite lost) {
      return unsound(
          Double.POSITIVE_INFINITY,
          "the covariance matrix is not positive definite at observation " + (lost.row() + 1));
    }
    CholeskyFactor factor = ((Factorisation.Factored) outcome).factor();
    double condition = factor.conditionEstimate();
    if (!(condition <= Soundness.LARGEST_CONDITION)) {
      return unsound(
          condition,
          String.format(
              Locale.ROOT,
              "the covariance matrix is nearly singular, condition about %.1e",
              condition));
    }
    Solution solved = Solution.of(sill, factor, terms, observations);
    return solved == null
        ? Attempt.failed(
            CellStatus.ILL_CONDITIONED,
            Double.POSITIVE_INFINITY,
            "the terms of the drift cannot be told apart at the observations: they lie on a line,"
                + " or a covariate is constant or a combination of the others")
        : new Attempt(solved, new Soundness(CellStatus.ESTIMATED, condition, ""));
  }

  private Attempt unsound(double condition, String what) {
    return Attempt.failed(
        CellStatus.ILL_CONDITIONED,
        condition,
        what
            + "; the closest observations are "
            + ClosestPair.of(observations)
            + ": merge observations that share a place, give a measurement variance or a nugget, or"
            + " use a model that rises linearly at the origin");
  }

  private static double largest(double[][] upper) {
    double largest = 0;
    for (double[] row : upper) {
      for (double v : row) {
        largest = Math.max(largest, v);
      }
    }
    return largest;
  }

  /** Turns the upper triangle of the semivariances into that of C, in place. */
  private double[][] covariances(double[][] upper, double sill) {
    int n = observations.size();
    for (int i = 0; i < n; i++) {
      double[] row = upper[i];
      for (int j = i; j < n; j++) {
        row[j] = sill - row[j];
      }
      row[i] += model.nugget() + observations.measurementVariance(i);
      if (coincidence.duplicates()) {
        for (int j : coincidence.at(observations.x(i), observations.y(i))) {
          row[j] += j > i && positioned.exactAmong(i, j) ? model.nugget() : 0;
        }
      }
    }
    for (CommonError common : observations.commonErrors()) {
      addCommon(common, upper);
    }
    return upper;
  }

  private static void addCommon(CommonError common, double[][] upper) {
    for (int i = 0; i < upper.length; i++) {
      for (int j = i; j < upper.length; j++) {
        upper[i][j] += common.share(i) * common.share(j) * common.variance();
      }
    }
  }
}
