package org.mottle.engine.precision;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.mottle.engine.simulation.NormalStream;

/**
 * What a plan could find and what it would miss: in each of {@value #SIMULATIONS} simulations a
 * green with the pattern of the variogram is read at the planned stations, once with a round spot
 * of so much less moisture put down anywhere on it, and mapped by kriging. The spot is found where
 * the map makes some ground in it more likely below than above the limit half way to the spot, that
 * is, where the estimate falls below it. A sound green is wrongly called when that happens anywhere
 * without a spot. Seeded; milliseconds.
 *
 * @param diameterM of the spot, m
 * @param contrastPct how much drier (or wetter: the same) it is, % by volume
 * @param found share of spots found
 * @param wrongly share of sound greens on which such a spot would be called
 */
public record SpotDetection(double diameterM, double contrastPct, double found, double wrongly) {
  static final int SIMULATIONS = 500;

  /** Spots found less often than this are mostly missed. */
  private static final double MISSED = 0.25;

  /**
   * @param prediction of the plan
   * @param diametersM of the spots, m
   * @param contrastPct how much drier they are, % by volume
   */
  public static List<SpotDetection> of(
      Prediction prediction, double[] diametersM, double contrastPct, long seed) {
    double[][] weights = prediction.weights();
    double[][] readings = readings(prediction, seed);
    int n = readings[0].length;
    int pieces = weights.length;
    int[] centre = centres(prediction, seed);
    double limit = -contrastPct / 2;
    int wrong = 0;
    for (double[] z : readings) {
      boolean called = false;
      for (int p = 0; p < pieces && !called; p++) {
        called = dot(weights[p], z) < limit;
      }
      wrong += called ? 1 : 0;
    }
    List<SpotDetection> all = new ArrayList<>();
    for (double diameter : diametersM) {
      int found = 0;
      for (int s = 0; s < SIMULATIONS; s++) {
        double cx = prediction.pieces().positions().x(centre[s]);
        double cy = prediction.pieces().positions().y(centre[s]);
        double[] z = readings[s].clone();
        for (int i = 0; i < n; i++) {
          z[i] -=
              inside(prediction.stations().x(i) - cx, prediction.stations().y(i) - cy, diameter)
                  ? contrastPct
                  : 0;
        }
        boolean seen = false;
        for (int p = 0; p < pieces && !seen; p++) {
          seen =
              inside(
                      prediction.pieces().positions().x(p) - cx,
                      prediction.pieces().positions().y(p) - cy,
                      diameter)
                  && dot(weights[p], z) < limit;
        }
        found += seen ? 1 : 0;
      }
      all.add(
          new SpotDetection(
              diameter, contrastPct, found / (double) SIMULATIONS, wrong / (double) SIMULATIONS));
    }
    return all;
  }

  private static boolean inside(double dx, double dy, double diameter) {
    return dx * dx + dy * dy <= diameter * diameter / 4;
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  /** [simulation][station] readings about a mean of 0, noise included. */
  private static double[][] readings(Prediction prediction, long seed) {
    var stations = prediction.stations();
    int n = stations.size();
    double sill = prediction.model().sill();
    double nugget = prediction.model().nugget();
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double gamma =
            prediction
                .model()
                .withNugget(0)
                .semivariance(stations.x(i) - stations.x(j), stations.y(i) - stations.y(j));
        covariance[i][j] = sill - nugget - gamma;
      }
      covariance[i][i] += Math.max(1e-9 * sill, stations.measurementVariance(i));
    }
    double[][] root =
        new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false)).getL().getData();
    NormalStream normal = new NormalStream(seed, 1);
    double[][] readings = new double[SIMULATIONS][n];
    double[] e = new double[n];
    for (double[] z : readings) {
      for (int i = 0; i < n; i++) {
        e[i] = normal.next();
      }
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          z[i] += root[i][j] * e[j];
        }
      }
    }
    return readings;
  }

  /** [simulation] the piece of ground in whose middle the spot lies, by area. */
  private static int[] centres(Prediction prediction, long seed) {
    NormalStream stream = new NormalStream(seed, 2);
    int pieces = prediction.pieces().size();
    double area = 0;
    for (int p = 0; p < pieces; p++) {
      area += prediction.pieces().areaM2(p);
    }
    int[] centre = new int[SIMULATIONS];
    for (int s = 0; s < SIMULATIONS; s++) {
      double at = (stream.bits() >>> 11) * 0x1.0p-53 * area;
      int p = 0;
      while (p < pieces - 1 && at > prediction.pieces().areaM2(p)) {
        at -= prediction.pieces().areaM2(p++);
      }
      centre[s] = p;
    }
    return centre;
  }

  /** "a round spot of 5 m, 4 % drier: 8 in 10". */
  public String words() {
    String spot =
        String.format(
            Locale.ROOT, "a round spot of %.0f m, %.1f %% drier: ", diameterM, contrastPct);
    return spot + Math.round(10 * found) + " in 10" + (found < MISSED ? ", mostly missed" : "");
  }
}
