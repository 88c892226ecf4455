package org.mottle.export.calibration;

import org.apache.commons.math3.random.RandomGenerator;
import org.mottle.engine.variogram.VariogramModel;

/**
 * Gaussian fields of mean 0 and sill 1 at given places by the Cholesky factor of their covariance:
 * exact, O(n³) once and O(n²) a draw. A millionth is added to the diagonal, since near places under
 * a smooth model leave none to spare. Immutable.
 */
final class ExactField {
  private static final double RIDGE = 1e-6;
  private final double[][] factor;

  ExactField(VariogramModel unit, double[] x, double[] y) {
    int n = x.length;
    factor = new double[n][];
    for (int i = 0; i < n; i++) {
      double[] row = new double[i + 1];
      for (int j = 0; j <= i; j++) {
        double lag = Math.hypot(x[i] - x[j], y[i] - y[j]);
        double rest =
            unit.partialSill() - unit.semivariance(lag) + (i == j ? RIDGE : 0) - dot(row, j, j);
        row[j] = i == j ? Math.sqrt(rest) : rest / factor[j][j];
      }
      factor[i] = row;
    }
  }

  /** Sum of the first k products of a row under way with row j. */
  private double dot(double[] row, int j, int k) {
    double[] other = factor[j] == null ? row : factor[j];
    double sum = 0;
    for (int m = 0; m < k; m++) {
      sum += row[m] * other[m];
    }
    return sum;
  }

  double[] draw(RandomGenerator random) {
    double[] white = new double[factor.length];
    double[] field = new double[factor.length];
    for (int i = 0; i < white.length; i++) {
      white[i] = random.nextGaussian();
      for (int j = 0; j <= i; j++) {
        field[i] += factor[i][j] * white[j];
      }
    }
    return field;
  }
}
