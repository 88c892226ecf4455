package org.mottle.engine.likelihood;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.mottle.engine.observation.Observations;

/**
 * The readings of a sample as contrasts that are free of its mean and of any plane through it, so
 * that neither the level of a green nor its slope passes for variance. Station i, the mean of k
 * insertions, is first weighted by sqrt(k), which makes every nugget alike. With K orthonormal
 * contrasts and U the eigenvectors of K R Kᵀ, R the correlations so weighted, the entries of Uᵀ K z
 * are independent with variance c λ + c0 for any sill c and nugget c0: one decomposition serves all
 * of them (Patterson & Thompson 1971, Biometrika 58, 545-554, for the likelihood). Immutable.
 */
final class Contrasts {
  /** With fewer stations than this a plane would take too many of the contrasts. */
  private static final int FEWEST_FOR_PLANE = 8;

  /** Stations in a line carry no plane: least ratio of their spread across to that along. */
  private static final double WIDTH_FOR_PLANE = 0.05;

  private final double[] weight;
  private final RealMatrix projection;
  private final double[][] row;
  private final double[] projected;
  private final StationPairs pairs;

  /** λ [n - p] in any order, and the squares of Uᵀ K z, value². */
  record Spectrum(double[] eigenvalue, double[] square) {}

  private Contrasts(Sample sample) {
    Observations o = sample.observations();
    this.weight = Arrays.stream(sample.insertions()).mapToDouble(Math::sqrt).toArray();
    this.projection = projection(o, weight);
    this.row = projection.getData();
    double mean = Arrays.stream(o.values()).average().orElseThrow();
    double[] z = new double[weight.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = weight[i] * (o.value(i) - mean);
    }
    this.projected = projection.operate(z);
    this.pairs = StationPairs.of(o);
  }

  static Contrasts of(Sample sample) {
    return new Contrasts(sample);
  }

  /** Contrasts a sample leaves: its stations less the terms of its trend. */
  static int count(Sample sample) {
    return Math.max(0, sample.size() - terms(sample.observations()));
  }

  int count() {
    return projected.length;
  }

  /** Sum of squares of the contrasts, value². */
  double sumOfSquares() {
    return Arrays.stream(projected).map(v -> v * v).sum();
  }

  /** Readings [n] less their trend by weighted least squares, value. */
  double[] residuals() {
    double[] residual = projection.preMultiply(projected);
    for (int i = 0; i < residual.length; i++) {
      residual[i] /= weight[i];
    }
    return residual;
  }

  /** A constant, and a plane where the stations can carry one. */
  private static int terms(Observations o) {
    if (o.size() < FEWEST_FOR_PLANE) {
      return 1;
    }
    Spread spread = Spread.of(o);
    return spread.across() > WIDTH_FOR_PLANE * spread.along() ? 3 : 1;
  }

  /** K, orthonormal rows that vanish on the weighted trend. */
  private static RealMatrix projection(Observations o, double[] weight) {
    int n = weight.length;
    int p = terms(o);
    double mx = Arrays.stream(o.xs()).average().orElseThrow();
    double my = Arrays.stream(o.ys()).average().orElseThrow();
    double[][] trend = new double[n][p];
    for (int i = 0; i < n; i++) {
      trend[i][0] = weight[i];
      if (p == 3) {
        trend[i][1] = weight[i] * (o.x(i) - mx);
        trend[i][2] = weight[i] * (o.y(i) - my);
      }
    }
    RealMatrix q = new QRDecomposition(new Array2DRowRealMatrix(trend, false)).getQ();
    return q.getSubMatrix(0, n - 1, p, n - 1).transpose();
  }

  /** The spectrum under the correlations of a model. */
  Spectrum spectrum(BlurredModels unit) {
    return spectrum(pairs.correlations(unit));
  }

  /** The spectrum of readings that do not depend on their distance: R the identity. */
  Spectrum whiteSpectrum() {
    double[][] identity = new double[weight.length][weight.length];
    for (int i = 0; i < identity.length; i++) {
      identity[i][i] = 1;
    }
    return spectrum(identity);
  }

  private Spectrum spectrum(double[][] correlation) {
    for (int i = 0; i < weight.length; i++) {
      for (int j = 0; j < weight.length; j++) {
        correlation[i][j] *= weight[i] * weight[j];
      }
    }
    EigenDecomposition eigen =
        new EigenDecomposition(new Array2DRowRealMatrix(ofContrasts(correlation), false));
    double[] value = eigen.getRealEigenvalues();
    double[] square = eigen.getVT().operate(projected);
    for (int i = 0; i < value.length; i++) {
      value[i] = Math.max(0, value[i]);
      square[i] *= square[i];
    }
    return new Spectrum(value, square);
  }

  /** K R Kᵀ, symmetric to the last bit. */
  private double[][] ofContrasts(double[][] correlation) {
    int m = row.length;
    int n = weight.length;
    double[][] product = new double[m][m];
    double[] half = new double[n];
    for (int a = 0; a < m; a++) {
      Arrays.fill(half, 0);
      for (int i = 0; i < n; i++) {
        double k = row[a][i];
        double[] ofStation = correlation[i];
        for (int j = 0; j < n; j++) {
          half[j] += k * ofStation[j];
        }
      }
      for (int b = 0; b <= a; b++) {
        double sum = 0;
        for (int j = 0; j < n; j++) {
          sum += half[j] * row[b][j];
        }
        product[a][b] = sum;
        product[b][a] = sum;
      }
    }
    return product;
  }
}
