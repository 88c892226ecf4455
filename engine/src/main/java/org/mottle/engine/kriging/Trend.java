package org.mottle.engine.kriging;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.solve.BorderedCholesky;

/**
 * The drift by generalised least squares: G = Xᵀ C⁻¹ X = R Rᵀ [p x p], coefficients G⁻¹ Xᵀ C⁻¹ z.
 * Given L⁻¹X and L⁻¹z, which are plain vectors of length n. Immutable.
 */
final class Trend {
  /** A term is lost when all but this share of it is explained by the terms before it. */
  static final double COLLINEAR = 1e-12;

  private final double[][] lower;
  private final double[] coefficients;

  private Trend(double[][] lower, double[] coefficients) {
    this.lower = lower;
    this.coefficients = coefficients;
  }

  /**
   * @param whitenedTerms [p][at least n] L⁻¹X
   * @param whitenedValues [at least n] L⁻¹z
   * @return null if a term is a combination of those before it
   */
  static Trend of(double[][] whitenedTerms, double[] whitenedValues, int n) {
    int p = whitenedTerms.length;
    double[][] rows = new double[p + 1][p];
    for (int a = 0; a < p; a++) {
      for (int b = 0; b <= a; b++) {
        rows[a][b] = dot(whitenedTerms[a], whitenedTerms[b], n);
      }
      rows[p][a] = dot(whitenedTerms[a], whitenedValues, n);
    }
    if (BorderedCholesky.factor(rows, p, 1, COLLINEAR) < 0) {
      return null;
    }
    double[] coefficients = rows[p].clone();
    Trend trend = new Trend(java.util.Arrays.copyOf(rows, p), coefficients);
    trend.solveUpper(coefficients);
    return trend;
  }

  int count() {
    return coefficients.length;
  }

  double coefficient(int term) {
    return coefficients[term];
  }

  /** Replaces t by R⁻¹ t and returns the sum of squares, tᵀ G⁻¹ t. */
  double solveLower(double[] t) {
    double sum = 0;
    for (int a = 0; a < t.length; a++) {
      double v = t[a];
      for (int b = 0; b < a; b++) {
        v -= lower[a][b] * t[b];
      }
      t[a] = v * lower[a][a];
      sum += t[a] * t[a];
    }
    return sum;
  }

  void solveUpper(double[] t) {
    for (int a = t.length - 1; a >= 0; a--) {
      double v = t[a];
      for (int b = a + 1; b < t.length; b++) {
        v -= lower[b][a] * t[b];
      }
      t[a] = v * lower[a][a];
    }
  }

  /** Coefficients and standard errors of the plain terms. */
  List<TrendCoefficient> plain(DriftTerms terms) {
    double[][] toPlain = terms.toPlain();
    List<TrendCoefficient> plain = new ArrayList<>();
    for (int a = 0; a < coefficients.length; a++) {
      double value = dot(toPlain[a], coefficients, coefficients.length);
      double variance = solveLower(toPlain[a].clone());
      plain.add(new TrendCoefficient(terms.name(a), value, Math.sqrt(variance)));
    }
    return plain;
  }

  private static double dot(double[] a, double[] b, int n) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
