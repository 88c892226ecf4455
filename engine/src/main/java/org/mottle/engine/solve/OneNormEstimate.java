package org.mottle.engine.solve;

import java.util.Arrays;

/**
 * Estimate of ‖A⁻¹‖₁ for a factored symmetric matrix without forming the inverse: Hager's gradient
 * walk with Higham's last guess (Higham 1988, ACM Trans. Math. Softw. 14, 381-396). At most eleven
 * solves; a lower bound, deterministic.
 */
final class OneNormEstimate {
  private static final int WALKS = 5;

  private OneNormEstimate() {}

  static double ofInverse(CholeskyFactor factor) {
    int n = factor.size();
    if (n == 0) {
      return 0;
    }
    double[] x = new double[n];
    Arrays.fill(x, 1.0 / n);
    double best = 0;
    int visited = -1;
    for (int walk = 0; walk < WALKS; walk++) {
      factor.solve(x);
      double norm = sumOfSizes(x);
      if (walk > 0 && norm <= best) {
        break;
      }
      best = norm;
      for (int i = 0; i < n; i++) {
        x[i] = x[i] >= 0 ? 1 : -1;
      }
      factor.solve(x);
      int steepest = indexOfLargest(x);
      if (steepest == visited) {
        break;
      }
      visited = steepest;
      Arrays.fill(x, 0);
      x[steepest] = 1;
    }
    return Math.max(best, alternating(factor));
  }

  /** Guards against matrices on which the walk stops too early. */
  private static double alternating(CholeskyFactor factor) {
    int n = factor.size();
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = (i % 2 == 0 ? 1 : -1) * (n == 1 ? 1 : 1 + (double) i / (n - 1));
    }
    factor.solve(x);
    return 2 * sumOfSizes(x) / (3 * n);
  }

  private static double sumOfSizes(double[] x) {
    double sum = 0;
    for (double v : x) {
      sum += Math.abs(v);
    }
    return sum;
  }

  private static int indexOfLargest(double[] x) {
    int at = 0;
    for (int i = 1; i < x.length; i++) {
      if (Math.abs(x[i]) > Math.abs(x[at])) {
        at = i;
      }
    }
    return at;
  }
}
