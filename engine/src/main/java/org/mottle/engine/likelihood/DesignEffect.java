package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.observation.Observations;

/**
 * By how much repeated surveys of the same greens say less than as many surveys of different
 * greens. Much of a pattern persists, so the same ground is read again; the likelihood, which takes
 * the surveys as independent, is divided by
 *
 * <pre>1 + (Σ t² / Σ t - 1) (r / q)²</pre>
 *
 * with t the number of surveys of a green, r the correlation of the readings of two surveys, each
 * less its plane, at stations that lie together, each the other's nearest, and q the share of their
 * variance that is no nugget, so that r / q is the correlation of the patterns: squares of Gaussian
 * variables correlate by r², so that the variance of the sum of the surveys' scores is larger by
 * this than if they were independent (Kish 1965, Survey Sampling, for the form; Godambe 1960,
 * Annals of Mathematical Statistics 31, 1208-1211, for the rule). The square of a correlation with
 * d degrees of freedom is 1/d on average where there is none at all; r² is rid of that (Ezekiel's
 * adjusted r²) before the mean over all pairs of surveys.
 */
final class DesignEffect {
  /** Stations of two surveys farther apart than this, m, are different stations. */
  private static final double TOGETHER_M = 2.5;

  private static final int FEWEST = 6;

  /** The share of the pattern is not taken for less. */
  private static final double LEAST_SHARE = 0.25;

  private final double others;
  private final double shared;

  /**
   * @param others surveys of the same green besides a reading's own, on average over the readings
   * @param shared square of the correlation of two of them
   */
  private DesignEffect(double others, double shared) {
    this.others = others;
    this.shared = shared;
  }

  /**
   * At least 1.
   *
   * @param patternShare share of the variance of the contrasts that is no nugget
   */
  double at(double patternShare) {
    double q = Math.max(LEAST_SHARE, Math.min(1, patternShare));
    return 1 + others * Math.min(1, shared / (q * q));
  }

  static DesignEffect of(List<Sample> samples) {
    Map<String, List<Sample>> byGreen = new LinkedHashMap<>();
    samples.forEach(s -> byGreen.computeIfAbsent(s.green(), g -> new ArrayList<>()).add(s));
    double sum = 0;
    int pairs = 0;
    for (List<Sample> surveys : byGreen.values()) {
      for (int i = 0; i < surveys.size(); i++) {
        for (int j = 0; j < i; j++) {
          double shared = shared(surveys.get(i), surveys.get(j));
          if (!Double.isNaN(shared)) {
            sum += shared;
            pairs++;
          }
        }
      }
    }
    double ofMeanReading =
        byGreen.values().stream().mapToDouble(s -> s.size() * s.size()).sum() / samples.size();
    return new DesignEffect(ofMeanReading - 1, pairs == 0 ? 0 : Math.max(0, sum / pairs));
  }

  /** Adjusted square of the correlation, free of planes; NaN with too few stations together. */
  private static double shared(Sample a, Sample b) {
    int[] toB = nearest(a.observations(), b.observations());
    int[] toA = nearest(b.observations(), a.observations());
    double[] ofA = Contrasts.of(a).residuals();
    double[] ofB = Contrasts.of(b).residuals();
    List<double[]> together = new ArrayList<>();
    for (int i = 0; i < toB.length; i++) {
      if (toB[i] >= 0 && toA[toB[i]] == i) {
        together.add(new double[] {ofA[i], ofB[toB[i]]});
      }
    }
    if (together.size() < FEWEST) {
      return Double.NaN;
    }
    double terms = Math.max(a.size() - Contrasts.count(a), b.size() - Contrasts.count(b));
    double degrees = together.size() - terms;
    return 1 - (1 - squaredCorrelation(together)) * degrees / (degrees - 1);
  }

  /** Rows of the nearest stations, -1 where none is together with this one. */
  private static int[] nearest(Observations from, Observations to) {
    int[] rows = new int[from.size()];
    for (int i = 0; i < rows.length; i++) {
      double nearest = TOGETHER_M;
      rows[i] = -1;
      for (int j = 0; j < to.size(); j++) {
        double lag = Math.hypot(from.x(i) - to.x(j), from.y(i) - to.y(j));
        if (lag < nearest) {
          nearest = lag;
          rows[i] = j;
        }
      }
    }
    return rows;
  }

  private static double squaredCorrelation(List<double[]> together) {
    double ma = together.stream().mapToDouble(v -> v[0]).average().orElseThrow();
    double mb = together.stream().mapToDouble(v -> v[1]).average().orElseThrow();
    double aa = 0;
    double bb = 0;
    double ab = 0;
    for (double[] v : together) {
      aa += (v[0] - ma) * (v[0] - ma);
      bb += (v[1] - mb) * (v[1] - mb);
      ab += (v[0] - ma) * (v[1] - mb);
    }
    return aa > 0 && bb > 0 ? ab * ab / (aa * bb) : Double.NaN;
  }
}
