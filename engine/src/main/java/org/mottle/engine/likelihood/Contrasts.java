package org.mottle.engine.likelihood;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.VariogramModel;

/**
 * The readings of a sample as contrasts that are free of its mean and of any plane through it, so
 * that neither the level of a green nor its slope passes for variance. Station i, the mean of k
 * insertions, is first weighted by sqrt(k), which makes every nugget alike. With U the eigenvectors
 * of the contrasts' correlation matrix, the entries of Uᵀ K z are independent with variance c λ +
 * c0 for any sill c and nugget c0: one decomposition serves all of them (Patterson & Thompson 1971,
 * Biometrika 58, 545-554, for the likelihood). Immutable.
 */
final class Contrasts {
  /** More deviations of position than this in a sample are replaced by their mean square. */
  private static final int MOST_DEVIATIONS = 4;

  private final int n;
  private final double[] weight;
  private final RealMatrix projection;
  private final double[] projected;
  private final Pairs[] pairs;

  /** Pairs of stations whose separations are equally uncertain. */
  private record Pairs(double sdM, int[] row, int[] column, double[] squaredLag) {}

  /** λ [n - p] in order, and the squares of Uᵀ K z, value². */
  record Spectrum(double[] eigenvalue, double[] square) {}

  private Contrasts(Sample sample) {
    Observations o = sample.observations();
    this.n = o.size();
    this.weight = Arrays.stream(sample.insertions()).mapToDouble(Math::sqrt).toArray();
    RealMatrix q = new QRDecomposition(trend(o)).getQ();
    int p = terms(o);
    this.projection = q.getSubMatrix(0, n - 1, p, n - 1).transpose();
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      z[i] = weight[i] * o.value(i);
    }
    this.projected = projection.operate(z);
    this.pairs = pairs(o);
  }

  static Contrasts of(Sample sample) {
    return new Contrasts(sample);
  }

  /** Contrasts a sample of n stations leaves. */
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

  /** A constant, and a plane where the stations can carry one. */
  private static int terms(Observations o) {
    return o.size() >= 8 && Spread.of(o).across() > 0.05 * Spread.of(o).along() ? 3 : 1;
  }

  private RealMatrix trend(Observations o) {
    int p = terms(o);
    double mx = Arrays.stream(o.xs()).average().orElseThrow();
    double my = Arrays.stream(o.ys()).average().orElseThrow();
    double[][] f = new double[n][p];
    for (int i = 0; i < n; i++) {
      f[i][0] = weight[i];
      if (p == 3) {
        f[i][1] = weight[i] * (o.x(i) - mx);
        f[i][2] = weight[i] * (o.y(i) - my);
      }
    }
    return new Array2DRowRealMatrix(f, false);
  }

  private Pairs[] pairs(Observations o) {
    double[] jitter = jitter(o.positionError());
    SortedMap<Double, int[]> counts = new TreeMap<>();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        counts.computeIfAbsent(Math.hypot(jitter[i], jitter[j]), s -> new int[1])[0]++;
      }
    }
    SortedMap<Double, Pairs> bySd = new TreeMap<>();
    counts.forEach(
        (sd, c) -> bySd.put(sd, new Pairs(sd, new int[c[0]], new int[c[0]], new double[c[0]])));
    counts.values().forEach(c -> c[0] = 0);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        double sd = Math.hypot(jitter[i], jitter[j]);
        Pairs into = bySd.get(sd);
        int at = counts.get(sd)[0]++;
        into.row[at] = i;
        into.column[at] = j;
        double dx = o.x(i) - o.x(j);
        double dy = o.y(i) - o.y(j);
        into.squaredLag[at] = dx * dx + dy * dy;
      }
    }
    return bySd.values().toArray(Pairs[]::new);
  }

  private static double[] jitter(PositionError error) {
    double[] sd = error.jitterSdM();
    if (Arrays.stream(sd).distinct().count() > MOST_DEVIATIONS) {
      Arrays.fill(sd, Math.sqrt(Arrays.stream(sd).map(s -> s * s).average().orElseThrow()));
    }
    return sd;
  }

  /**
   * @param unit a model of sill 1
   */
  Spectrum spectrum(VariogramModel unit) {
    double[][] correlation = new double[n][n];
    for (int i = 0; i < n; i++) {
      correlation[i][i] = weight[i] * weight[i];
    }
    for (Pairs group : pairs) {
      double[] semivariance = new double[group.row.length];
      BlurredModel.of(unit, group.sdM)
          .addSemivariances(group.squaredLag, semivariance.length, semivariance);
      for (int k = 0; k < semivariance.length; k++) {
        int i = group.row[k];
        int j = group.column[k];
        correlation[i][j] = weight[i] * weight[j] * (1 - semivariance[k]);
        correlation[j][i] = correlation[i][j];
      }
    }
    RealMatrix contrasts =
        projection
            .multiply(new Array2DRowRealMatrix(correlation, false))
            .multiply(projection.transpose());
    EigenDecomposition eigen = new EigenDecomposition(symmetric(contrasts));
    double[] value = eigen.getRealEigenvalues();
    double[] square = eigen.getVT().operate(projected);
    for (int i = 0; i < value.length; i++) {
      value[i] = Math.max(0, value[i]);
      square[i] *= square[i];
    }
    return new Spectrum(value, square);
  }

  /** The spectrum of readings that do not depend on their distance. */
  Spectrum whiteSpectrum() {
    double[] one = new double[projected.length];
    Arrays.fill(one, 1);
    return new Spectrum(one, Arrays.stream(projected).map(v -> v * v).toArray());
  }

  /** Rounding makes the product a little askew, which would pass for an asymmetric matrix. */
  private static RealMatrix symmetric(RealMatrix m) {
    for (int i = 0; i < m.getRowDimension(); i++) {
      for (int j = 0; j < i; j++) {
        m.setEntry(j, i, m.getEntry(i, j));
      }
    }
    return m;
  }
}
