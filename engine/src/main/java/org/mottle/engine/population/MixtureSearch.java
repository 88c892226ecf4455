package org.mottle.engine.population;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The best mixture over a fixed set of starts, so that expectation-maximisation does not stop at a
 * poor optimum and two runs agree: the values, each relative to its survey's median, are cut in two
 * at up to {@value #CUTS} places, and each survey is cut at the same share of its own values; after
 * a few steps from every cut the best {@value #FINALISTS} are followed to the end (the short runs
 * of Biernacki, Celeux & Govaert 2003, Comput. Stat. Data Anal. 41:561-575). O(n) a step, some
 * thousand steps.
 */
final class MixtureSearch {
  static final int CUTS = 20;
  static final int FINALISTS = 4;
  private static final int SHORT_RUN = 12;
  private static final int LONG_RUN = 4000;
  private static final double GAIN = 1e-11;

  private final double[][] value;
  private final double floor;

  /**
   * @param value one row a survey
   * @param floor least sigma, above 0
   */
  MixtureSearch(double[][] value, double floor) {
    this.value = value;
    this.floor = floor;
  }

  Mixture best(Mixture.Depth kind) {
    List<Expectation> runs = new ArrayList<>();
    for (double[][] start : starts()) {
      Expectation run = new Expectation(value, kind, floor);
      run.start(start);
      run.climb(SHORT_RUN, GAIN);
      runs.add(run);
    }
    runs.sort(Comparator.comparingDouble(Expectation::logLikelihood).reversed());
    List<Expectation> finalists = runs.subList(0, Math.min(FINALISTS, runs.size()));
    finalists.forEach(run -> run.climb(LONG_RUN, GAIN));
    return finalists.stream()
        .max(Comparator.comparingDouble(Expectation::logLikelihood))
        .orElseThrow()
        .mixture();
  }

  private List<double[][]> starts() {
    List<double[][]> starts = new ArrayList<>();
    double[][] centred = new double[value.length][];
    for (int s = 0; s < value.length; s++) {
      double median = median(value[s]);
      centred[s] = Arrays.stream(value[s]).map(v -> v - median).toArray();
    }
    double[] all = Arrays.stream(centred).flatMapToDouble(Arrays::stream).sorted().toArray();
    int cuts = Math.min(CUTS, all.length - 1);
    for (int k = 1; k <= cuts; k++) {
      int at = (int) ((long) k * all.length / (cuts + 1));
      starts.add(below(centred, all[Math.max(0, at - 1)]));
      if (value.length > 1) {
        starts.add(lowest(k / (cuts + 1.0)));
      }
    }
    return starts;
  }

  private static double[][] below(double[][] centred, double cut) {
    double[][] low = new double[centred.length][];
    for (int s = 0; s < low.length; s++) {
      low[s] = Arrays.stream(centred[s]).map(v -> v <= cut ? 1 : 0).toArray();
    }
    return low;
  }

  private double[][] lowest(double fraction) {
    double[][] low = new double[value.length][];
    for (int s = 0; s < low.length; s++) {
      double[] sorted = value[s].clone();
      Arrays.sort(sorted);
      int count = (int) Math.round(fraction * sorted.length);
      double cut = count == 0 ? Double.NEGATIVE_INFINITY : sorted[count - 1];
      low[s] = Arrays.stream(value[s]).map(v -> v <= cut ? 1 : 0).toArray();
    }
    return low;
  }

  static double median(double[] column) {
    double[] sorted = column.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
