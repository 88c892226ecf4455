package org.mottle.engine.solve;

/**
 * Lower triangular L with A = L Lᵀ, A symmetric positive definite [n x n]; immutable and shared by
 * threads.
 *
 * <p>Factoring is blocked and works on rows of Lᵀ, n³/3 operations; a solve takes n² operations a
 * right-hand side, fastest in panels of some hundred sides (Golub & Van Loan 2013, ch. 4.2). The
 * factor keeps n²/2 numbers.
 */
public final class CholeskyFactor {
  private static final int BLOCK = 24;

  /** Row i of L, length i + 1. */
  private final double[][] lower;

  private final double conditionEstimate;

  private CholeskyFactor(double[][] lower, double oneNorm) {
    this.lower = lower;
    this.conditionEstimate = oneNorm * OneNormEstimate.ofInverse(this);
  }

  /**
   * Factors a matrix given by the rows of its upper triangle.
   *
   * @param upper [n][n]: row i holds the entries (i, j) at j >= i, the rest is not read;
   *     overwritten
   */
  public static Factorisation factor(double[][] upper) {
    int n = upper.length;
    double norm = oneNorm(upper);
    double limit = n * 0x1p-52 * largestDiagonal(upper);
    double[][] coefficient = new double[3][n];
    for (int first = 0; first < n; first += BLOCK) {
      int last = Math.min(first + BLOCK, n);
      for (int i = first; i < last; i++) {
        gather(upper, first, i, i, coefficient[0]);
        RowUpdate.one(upper[i], coefficient[0], upper, first, i, i, n);
        double pivot = upper[i][i];
        if (!(pivot > limit)) {
          return new Factorisation.NotPositiveDefinite(i, pivot, limit);
        }
        scale(upper[i], 1 / Math.sqrt(pivot), i, n);
      }
      updateTrailing(upper, first, last, coefficient);
    }
    return new Factorisation.Factored(new CholeskyFactor(transposed(upper), norm));
  }

  /** Rows below the block, three at a time; what falls left of a diagonal is never read. */
  private static void updateTrailing(
      double[][] upper, int first, int last, double[][] coefficient) {
    int n = upper.length;
    int i = last;
    for (; i + 3 <= n; i += 3) {
      for (int r = 0; r < 3; r++) {
        gather(upper, first, last, i + r, coefficient[r]);
      }
      RowUpdate.three(upper, i, coefficient, 0, upper, first, last, i, n);
    }
    for (; i < n; i++) {
      gather(upper, first, last, i, coefficient[0]);
      RowUpdate.one(upper[i], coefficient[0], upper, first, last, i, n);
    }
  }

  public int size() {
    return lower.length;
  }

  /**
   * Estimate of the condition number ‖A‖₁ ‖A⁻¹‖₁, from below and nearly always within a factor of
   * three (Higham 1988).
   */
  public double conditionEstimate() {
    return conditionEstimate;
  }

  /**
   * Solves L V = B in place for a panel of right-hand sides. Every column is computed alone: its
   * bytes do not depend on the panel it stands in.
   *
   * @param panel [n][at least count], row i the i-th entries of all sides
   * @param count number of right-hand sides
   */
  public void solveLower(double[][] panel, int count) {
    solveLower(panel, count, 0);
  }

  /** As above for sides that are zero above row {@code top}, which is the first of a block. */
  private void solveLower(double[][] panel, int count, int top) {
    int n = lower.length;
    for (int first = top; first < n; first += BLOCK) {
      int last = Math.min(first + BLOCK, n);
      for (int i = first; i < last; i++) {
        RowUpdate.one(panel[i], lower[i], panel, first, i, 0, count);
        scale(panel[i], 1 / lower[i][i], 0, count);
      }
      int i = last;
      for (; i + 3 <= n; i += 3) {
        RowUpdate.three(panel, i, lower, i, panel, first, last, 0, count);
      }
      for (; i < n; i++) {
        RowUpdate.one(panel[i], lower[i], panel, first, last, 0, count);
      }
    }
  }

  /** Solves L v = b in place. */
  public void solveLower(double[] b) {
    for (int i = 0; i < lower.length; i++) {
      double[] row = lower[i];
      double sum = b[i];
      for (int k = 0; k < i; k++) {
        sum -= row[k] * b[k];
      }
      b[i] = sum / row[i];
    }
  }

  /** Solves Lᵀ w = b in place. */
  public void solveUpper(double[] b) {
    for (int i = lower.length - 1; i >= 0; i--) {
      double[] row = lower[i];
      double w = b[i] / row[i];
      b[i] = w;
      for (int k = 0; k < i; k++) {
        b[k] -= w * row[k];
      }
    }
  }

  /** Solves A w = b in place. */
  public void solve(double[] b) {
    solveLower(b);
    solveUpper(b);
  }

  /** ln |A| = 2 Σ ln L_ii. */
  public double logDeterminant() {
    double sum = 0;
    for (int i = 0; i < lower.length; i++) {
      sum += Math.log(lower[i][i]);
    }
    return 2 * sum;
  }

  /** L z [n] for z [n], which is left as it is. */
  public double[] multiplyLower(double[] z) {
    double[] product = new double[lower.length];
    for (int i = 0; i < lower.length; i++) {
      double[] row = lower[i];
      double sum = 0;
      for (int k = 0; k <= i; k++) {
        sum += row[k] * z[k];
      }
      product[i] = sum;
    }
    return product;
  }

  /** The diagonal of A⁻¹, the column sums of squares of L⁻¹; n³/3 operations. */
  public double[] inverseDiagonal() {
    int n = lower.length;
    double[] diagonal = new double[n];
    double[][] panel = new double[n][BLOCK];
    for (int first = 0; first < n; first += BLOCK) {
      int count = Math.min(BLOCK, n - first);
      unitColumns(panel, first, count);
      solveLower(panel, count, first);
      for (int i = first; i < n; i++) {
        for (int j = 0; j < count; j++) {
          diagonal[first + j] += panel[i][j] * panel[i][j];
        }
      }
    }
    return diagonal;
  }

  private static void unitColumns(double[][] panel, int first, int count) {
    for (double[] row : panel) {
      java.util.Arrays.fill(row, 0);
    }
    for (int j = 0; j < count; j++) {
      panel[first + j][j] = 1;
    }
  }

  private static void gather(double[][] upper, int first, int last, int column, double[] into) {
    for (int k = first; k < last; k++) {
      into[k] = upper[k][column];
    }
  }

  private static void scale(double[] row, double factor, int from, int to) {
    for (int j = from; j < to; j++) {
      row[j] *= factor;
    }
  }

  private static double[][] transposed(double[][] upper) {
    int n = upper.length;
    double[][] lower = new double[n][];
    for (int i = 0; i < n; i++) {
      lower[i] = new double[i + 1];
    }
    for (int k = 0; k < n; k++) {
      double[] row = upper[k];
      for (int i = k; i < n; i++) {
        lower[i][k] = row[i];
      }
    }
    return lower;
  }

  private static double largestDiagonal(double[][] upper) {
    double largest = 0;
    for (int i = 0; i < upper.length; i++) {
      largest = Math.max(largest, upper[i][i]);
    }
    return largest;
  }

  private static double oneNorm(double[][] upper) {
    int n = upper.length;
    double[] sum = new double[n];
    for (int i = 0; i < n; i++) {
      double[] row = upper[i];
      sum[i] += Math.abs(row[i]);
      for (int j = i + 1; j < n; j++) {
        double size = Math.abs(row[j]);
        sum[i] += size;
        sum[j] += size;
      }
    }
    double largest = 0;
    for (double s : sum) {
      largest = Math.max(largest, s);
    }
    return largest;
  }
}
