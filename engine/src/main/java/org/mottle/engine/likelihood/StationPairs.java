package org.mottle.engine.likelihood;

import java.util.Arrays;
import java.util.SortedMap;
import java.util.TreeMap;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.BlurredModel;

/**
 * The separations of the stations of a sample, in groups of equally uncertain ones: between two
 * stations of jitter s and t per axis the deviation is sqrt(s² + t²). Immutable.
 */
final class StationPairs {
  /** More deviations of position than this in a sample are replaced by their mean square. */
  private static final int MOST_DEVIATIONS = 4;

  private final int n;
  private final Group[] groups;

  private record Group(double sdM, int[] row, int[] column, double[] squaredLag) {}

  private StationPairs(int n, Group[] groups) {
    this.n = n;
    this.groups = groups;
  }

  static StationPairs of(Observations o) {
    double[] jitter = jitter(o.positionError());
    SortedMap<Double, Integer> counts = new TreeMap<>();
    forEach(o.size(), (i, j) -> counts.merge(Math.hypot(jitter[i], jitter[j]), 1, Integer::sum));
    SortedMap<Double, Group> bySd = new TreeMap<>();
    counts.forEach((sd, c) -> bySd.put(sd, new Group(sd, new int[c], new int[c], new double[c])));
    forEach(
        o.size(),
        (i, j) -> {
          double sd = Math.hypot(jitter[i], jitter[j]);
          int left = counts.merge(sd, -1, Integer::sum);
          Group into = bySd.get(sd);
          int at = into.row.length - 1 - left;
          double dx = o.x(i) - o.x(j);
          double dy = o.y(i) - o.y(j);
          into.row[at] = i;
          into.column[at] = j;
          into.squaredLag[at] = dx * dx + dy * dy;
        });
    return new StationPairs(o.size(), bySd.values().toArray(Group[]::new));
  }

  private interface Pair {
    void take(int i, int j);
  }

  private static void forEach(int n, Pair pair) {
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        pair.take(i, j);
      }
    }
  }

  /** Rounded to centimetres where averaged, so that samples may share a blurred model. */
  private static double[] jitter(PositionError error) {
    double[] sd = error.jitterSdM();
    if (Arrays.stream(sd).distinct().count() > MOST_DEVIATIONS) {
      double mean = Math.sqrt(Arrays.stream(sd).map(s -> s * s).average().orElseThrow());
      Arrays.fill(sd, Math.round(mean * 100) / 100.0);
    }
    return sd;
  }

  /** Correlations [n][n] between the readings, by the places recorded. */
  double[][] correlations(BlurredModels unit) {
    double[][] correlation = new double[n][n];
    for (int i = 0; i < n; i++) {
      correlation[i][i] = 1;
    }
    for (Group group : groups) {
      BlurredModel model = unit.at(group.sdM);
      double[] semivariance = new double[group.row.length];
      model.addSemivariances(group.squaredLag, semivariance.length, semivariance);
      for (int k = 0; k < semivariance.length; k++) {
        correlation[group.row[k]][group.column[k]] = 1 - semivariance[k];
        correlation[group.column[k]][group.row[k]] = 1 - semivariance[k];
      }
    }
    return correlation;
  }
}
