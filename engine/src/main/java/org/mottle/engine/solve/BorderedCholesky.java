package org.mottle.engine.solve;

/**
 * Cholesky of one small matrix together with its right-hand sides: the sides stand as rows below
 * the matrix, and the same sweep that makes row i of L solves L v = b for them. For the systems of
 * a local neighbourhood, where no factor is kept.
 */
public final class BorderedCholesky {

  private BorderedCholesky() {}

  /**
   * Factors in place.
   *
   * @param rows [n + sides][n]: row i below n holds the entries (i, j) at j <= i; row n + s holds
   *     the right-hand side s. Afterwards L and the solutions of L v = b.
   * @param relativeLimit a pivot at or below this share of its diagonal entry is lost
   * @return smallest share of its diagonal that a pivot kept, or the negative of row + 1 at which
   *     the matrix turned out not to be positive definite
   */
  public static double factor(double[][] rows, int n, int sides, double relativeLimit) {
    double smallest = 1;
    for (int i = 0; i < n + sides; i++) {
      double[] row = rows[i];
      int last = Math.min(i, n);
      for (int j = 0; j < last; j++) {
        double[] other = rows[j];
        double sum = row[j];
        for (int k = 0; k < j; k++) {
          sum -= row[k] * other[k];
        }
        row[j] = sum * other[j];
      }
      if (i < n) {
        double pivot = row[i];
        for (int k = 0; k < i; k++) {
          pivot -= row[k] * row[k];
        }
        double share = pivot / row[i];
        if (!(share > relativeLimit)) {
          return -(i + 1);
        }
        smallest = Math.min(smallest, share);
        row[i] = 1 / Math.sqrt(pivot);
      }
    }
    return smallest;
  }
}
