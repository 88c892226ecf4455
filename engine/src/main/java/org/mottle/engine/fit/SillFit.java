package org.mottle.engine.fit;

/**
 * Best nugget and partial sills for given shapes of the structures.
 *
 * <p>With weights that stand, that is one bounded linear least-squares problem. With Cressie's, sum
 * N (g / m - 1)², it is a sequence of them: the residuals are linearised at the present model
 * (Gauss-Newton) and the step is shortened until the sum falls.
 */
final class SillFit {
  private static final int MOST_STEPS = 200;
  private static final int MOST_HALVINGS = 30;

  private final double[] semivariance;
  private final double[] rootWeight;
  private final boolean relative;
  private final double[] lower;
  private final double[] upper;

  /**
   * @param semivariance [n] g
   * @param rootWeight [n] square roots of the weights; of N when {@code relative}
   * @param relative whether residuals are g / m - 1 instead of g - m
   * @param lower [p] bounds of nugget and partial sills
   * @param upper [p]
   */
  SillFit(
      double[] semivariance,
      double[] rootWeight,
      boolean relative,
      double[] lower,
      double[] upper) {
    this.semivariance = semivariance;
    this.rootWeight = rootWeight;
    this.relative = relative;
    this.lower = lower;
    this.upper = upper;
  }

  /** Nugget and partial sills, [p], for basis functions [p][n]. */
  double[] coefficients(double[][] basis) {
    if (!relative) {
      return weighted(basis, rootWeight, semivariance);
    }
    double[] b = start(basis);
    double sum = sum(basis, b);
    for (int step = 0; step < MOST_STEPS; step++) {
      double[] to = linearised(basis, b);
      double factor = 1;
      double[] tried = to;
      double triedSum = sum(basis, tried);
      for (int i = 0; i < MOST_HALVINGS && !(triedSum < sum); i++) {
        factor /= 2;
        tried = between(b, to, factor);
        triedSum = sum(basis, tried);
      }
      if (!(triedSum < sum)) {
        return b;
      }
      boolean done = sum - triedSum <= 1e-15 * sum;
      b = tried;
      sum = triedSum;
      if (done) {
        return b;
      }
    }
    return b;
  }

  /** Weighted residuals, [n]; their squares add up to the sum of squares. */
  double[] residuals(double[][] basis, double[] b) {
    double[] residual = new double[semivariance.length];
    for (int j = 0; j < residual.length; j++) {
      double m = modelled(basis, b, j);
      residual[j] = rootWeight[j] * (relative ? semivariance[j] / m - 1 : semivariance[j] - m);
    }
    return residual;
  }

  private double sum(double[][] basis, double[] b) {
    double sum = 0;
    for (double r : residuals(basis, b)) {
      sum += r * r;
    }
    return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
  }

  private double[] start(double[][] basis) {
    int n = semivariance.length;
    double mean = 0;
    for (double g : semivariance) {
      mean += g / n;
    }
    double[] root = new double[n];
    for (int j = 0; j < n; j++) {
      root[j] = rootWeight[j] / Math.max(semivariance[j], 1e-3 * mean);
    }
    return weighted(basis, root, semivariance);
  }

  /** With r = g/m - 1 and dr = -(g/m²) dm: the b that makes the linear residuals least. */
  private double[] linearised(double[][] basis, double[] b) {
    int n = semivariance.length;
    double[] root = new double[n];
    double[] target = new double[n];
    for (int j = 0; j < n; j++) {
      double m = modelled(basis, b, j);
      double slope = Math.max(semivariance[j], 1e-9 * m) / (m * m);
      root[j] = rootWeight[j] * slope;
      target[j] = m + (semivariance[j] / m - 1) / slope;
    }
    return weighted(basis, root, target);
  }

  private double[] weighted(double[][] basis, double[] root, double[] target) {
    int n = target.length;
    double[][] columns = new double[basis.length][n];
    double[] t = new double[n];
    for (int j = 0; j < n; j++) {
      t[j] = root[j] * target[j];
      for (int k = 0; k < basis.length; k++) {
        columns[k][j] = root[j] * basis[k][j];
      }
    }
    return new BoundedLeastSquares(columns, t, lower, upper).solve();
  }

  private static double modelled(double[][] basis, double[] b, int j) {
    double sum = 0;
    for (int k = 0; k < b.length; k++) {
      sum += b[k] * basis[k][j];
    }
    return sum;
  }

  private static double[] between(double[] from, double[] to, double share) {
    double[] b = new double[from.length];
    for (int k = 0; k < b.length; k++) {
      b[k] = from[k] + share * (to[k] - from[k]);
    }
    return b;
  }
}
