package org.mottle.engine.fit;

import java.util.List;

/** Goes downhill from a place to the bottom of its valley, within the bounds. */
final class Descent {
  private static final int MOST_STEPS = 60;
  private static final double DIFFERENCE = 1e-5;
  private static final double FIRST_STRIDE = 1.0 / 64;
  private static final double LAST_STRIDE = 1e-10;

  private final FitProblem problem;
  private final List<Axis> axes;

  Descent(FitProblem problem) {
    this.problem = problem;
    axes = problem.axes();
  }

  double[] from(double[] start) {
    return pattern(marquardt(start.clone()));
  }

  /** Levenberg-Marquardt on the residuals, with differences for their derivatives. */
  private double[] marquardt(double[] start) {
    double[] place = start;
    double[] residual = problem.residuals(place);
    double sum = square(residual);
    double damping = 1e-3;
    for (int step = 0; step < MOST_STEPS; step++) {
      double[][] slope = slopes(place);
      boolean fell = false;
      while (!fell && damping < 1e10) {
        double[] next = step(place, residual, slope, damping);
        double[] nextResidual = problem.residuals(next);
        double nextSum = square(nextResidual);
        if (nextSum < sum) {
          fell = true;
          boolean done = sum - nextSum <= 1e-14 * sum;
          place = next;
          residual = nextResidual;
          sum = nextSum;
          damping = Math.max(1e-12, damping / 10);
          if (done) {
            return place;
          }
        } else {
          damping *= 10;
        }
      }
      if (!fell) {
        return place;
      }
    }
    return place;
  }

  /** Derivatives of the residuals, [axes][lags]. */
  private double[][] slopes(double[] place) {
    double[][] slope = new double[axes.size()][];
    for (int a = 0; a < slope.length; a++) {
      double[] up = place.clone();
      double[] down = place.clone();
      up[a] = axes.get(a).clamp(place[a] + DIFFERENCE);
      down[a] = axes.get(a).clamp(place[a] - DIFFERENCE);
      double[] high = problem.residuals(up);
      double[] low = problem.residuals(down);
      double width = up[a] - down[a];
      slope[a] = new double[high.length];
      for (int j = 0; j < high.length; j++) {
        slope[a][j] = width == 0 ? 0 : (high[j] - low[j]) / width;
      }
    }
    return slope;
  }

  /** Solves (S'S + damping diag) step = -S'r, keeping axes that press on a bound where they are. */
  private double[] step(double[] place, double[] residual, double[][] slope, double damping) {
    int d = place.length;
    double[][] normal = new double[d][d];
    double[] right = new double[d];
    for (int a = 0; a < d; a++) {
      right[a] = -dot(slope[a], residual);
      for (int b = 0; b < d; b++) {
        normal[a][b] = dot(slope[a], slope[b]);
      }
      boolean held = right[a] == 0 || axes.get(a).clamp(place[a] + right[a]) == place[a];
      if (held) {
        right[a] = 0;
        java.util.Arrays.fill(normal[a], 0);
        for (int b = 0; b < a; b++) {
          normal[b][a] = 0;
        }
      }
    }
    for (int a = 0; a < d; a++) {
      if (right[a] == 0) {
        for (int b = 0; b < d; b++) {
          normal[b][a] = 0;
        }
      }
      normal[a][a] = normal[a][a] * (1 + damping) + Double.MIN_NORMAL;
    }
    double[] move = eliminate(normal, right);
    double[] next = new double[d];
    for (int a = 0; a < d; a++) {
      double bounded = Math.max(-1, Math.min(1, move[a]));
      next[a] = axes.get(a).clamp(place[a] + (Double.isNaN(bounded) ? 0 : bounded));
    }
    return next;
  }

  /** Gaussian elimination of a positive definite system, in place. */
  private static double[] eliminate(double[][] m, double[] right) {
    int d = right.length;
    for (int k = 0; k < d; k++) {
      for (int i = k + 1; i < d; i++) {
        double f = m[i][k] / m[k][k];
        for (int j = k; j < d; j++) {
          m[i][j] -= f * m[k][j];
        }
        right[i] -= f * right[k];
      }
    }
    for (int k = d - 1; k >= 0; k--) {
      for (int j = k + 1; j < d; j++) {
        right[k] -= m[k][j] * right[j];
      }
      right[k] /= m[k][k];
    }
    return right;
  }

  /** Tries a stride each way on each axis, and halves the strides when none goes down. */
  private double[] pattern(double[] start) {
    double[] place = start;
    double sum = problem.sum(place);
    double stride = FIRST_STRIDE;
    while (stride > LAST_STRIDE) {
      boolean fell = false;
      for (int a = 0; a < place.length; a++) {
        for (int way = -1; way <= 1; way += 2) {
          double[] next = place.clone();
          next[a] = axes.get(a).clamp(place[a] + way * stride);
          double nextSum = next[a] == place[a] ? sum : problem.sum(next);
          if (nextSum < sum) {
            place = next;
            sum = nextSum;
            fell = true;
          }
        }
      }
      stride *= fell ? 1.5 : 0.4;
    }
    return place;
  }

  private static double square(double[] v) {
    double sum = dot(v, v);
    return sum < Double.POSITIVE_INFINITY ? sum : Double.MAX_VALUE;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int j = 0; j < a.length; j++) {
      sum += a[j] * b[j];
    }
    return sum;
  }
}
