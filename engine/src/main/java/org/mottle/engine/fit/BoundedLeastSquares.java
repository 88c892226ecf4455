package org.mottle.engine.fit;

/**
 * Linear least squares with bounds, for a few unknowns: minimises |A b - t|² with lower <= b <=
 * upper. The problem is convex, so the best of the solutions on all faces of the box is its
 * solution; the faces are tried one after the other, the interior first. A face whose columns
 * depend on each other is left to its own faces. Columns are orthogonalised (modified Gram-Schmidt,
 * twice), so nothing is squared.
 */
final class BoundedLeastSquares {
  private static final double DEPENDENT = 1e-10;

  private final double[][] columns;
  private final double[] target;
  private final double[] lower;
  private final double[] upper;

  /**
   * @param columns [p][n] of A
   * @param target [n] t
   * @param lower [p] finite
   * @param upper [p] may be infinite
   */
  BoundedLeastSquares(double[][] columns, double[] target, double[] lower, double[] upper) {
    this.columns = columns;
    this.target = target;
    this.lower = lower;
    this.upper = upper;
  }

  /** The solution, [p]. */
  double[] solve() {
    int p = columns.length;
    double[] best = lower.clone();
    double least = sse(best);
    int[] face = new int[p];
    do {
      double[] b = onFace(face);
      if (b != null) {
        double sse = sse(b);
        if (sse < least) {
          best = b;
          least = sse;
        }
        if (interior(face)) {
          return b;
        }
      }
    } while (next(face));
    return best;
  }

  private static boolean interior(int[] face) {
    for (int f : face) {
      if (f != 0) {
        return false;
      }
    }
    return true;
  }

  /** Counts on in base 3: 0 free, 1 at the lower bound, 2 at a finite upper one. */
  private boolean next(int[] face) {
    for (int k = 0; k < face.length; k++) {
      face[k]++;
      if (face[k] == 1 || (face[k] == 2 && upper[k] < Double.POSITIVE_INFINITY)) {
        return true;
      }
      face[k] = 0;
    }
    return false;
  }

  private double[] onFace(int[] face) {
    int p = face.length;
    double[] b = new double[p];
    double[] rest = target.clone();
    int free = 0;
    for (int k = 0; k < p; k++) {
      if (face[k] == 0) {
        free++;
      } else {
        b[k] = face[k] == 1 ? lower[k] : upper[k];
        subtract(rest, b[k], columns[k]);
      }
    }
    int[] index = new int[free];
    for (int k = 0, f = 0; k < p; k++) {
      if (face[k] == 0) {
        index[f++] = k;
      }
    }
    return free(index, rest, b) ? b : null;
  }

  /** Solves for the free unknowns; false when dependent or outside the bounds. */
  private boolean free(int[] index, double[] rest, double[] b) {
    int m = index.length;
    double[][] q = new double[m][];
    double[][] r = new double[m][m];
    for (int k = 0; k < m; k++) {
      q[k] = columns[index[k]].clone();
      double before = Math.sqrt(dot(q[k], q[k]));
      for (int pass = 0; pass < 2; pass++) {
        for (int i = 0; i < k; i++) {
          double c = dot(q[i], q[k]);
          r[i][k] += c;
          subtract(q[k], c, q[i]);
        }
      }
      r[k][k] = Math.sqrt(dot(q[k], q[k]));
      if (!(r[k][k] > DEPENDENT * before)) {
        return false;
      }
      for (int j = 0; j < q[k].length; j++) {
        q[k][j] /= r[k][k];
      }
    }
    for (int k = m - 1; k >= 0; k--) {
      double sum = dot(q[k], rest);
      for (int i = k + 1; i < m; i++) {
        sum -= r[k][i] * b[index[i]];
      }
      b[index[k]] = sum / r[k][k];
    }
    for (int k : index) {
      if (!(b[k] >= lower[k] && b[k] <= upper[k])) {
        return false;
      }
    }
    return true;
  }

  private double sse(double[] b) {
    double[] rest = target.clone();
    for (int k = 0; k < b.length; k++) {
      subtract(rest, b[k], columns[k]);
    }
    return dot(rest, rest);
  }

  private static void subtract(double[] from, double factor, double[] column) {
    for (int j = 0; j < from.length; j++) {
      from[j] -= factor * column[j];
    }
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int j = 0; j < a.length; j++) {
      sum += a[j] * b[j];
    }
    return sum;
  }
}
