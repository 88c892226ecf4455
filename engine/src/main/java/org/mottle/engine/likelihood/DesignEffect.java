package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.VariogramModel;

/**
 * By how much repeated surveys of a green say less than as many surveys of different greens. Much
 * of a pattern persists, so the same ground is read again; the likelihood of each survey of a
 * green, which takes the surveys as independent, is divided by
 *
 * <pre>1 + (t - 1) (r / q)²</pre>
 *
 * with t the number of surveys of the green, r the correlation of the readings of two surveys, each
 * less its plane, at stations that lie together, each the other's nearest, and q what r would be if
 * the pattern were the same: the share of the variance that is no nugget, times the correlation at
 * the lag of such stations, position errors included. Squares of Gaussian variables correlate by
 * r², so that the variance of the sum of the surveys' scores is larger by this than if they were
 * independent (Kish 1965, Survey Sampling, for the form; Godambe 1960, Annals of Mathematical
 * Statistics 31, 1208-1211, for the rule). A green with a fault shows it in every survey: it is
 * discounted the most, and does not rule the pool by being read often. The square of a correlation
 * with d degrees of freedom is 1/d on average where there is none at all; r² is rid of that
 * (Ezekiel's adjusted r²) before the mean over the pairs of surveys of a green, which is drawn
 * towards that of all greens as by {@value #BORROWED_PAIRS} pairs more, and that towards {@value
 * #USUAL} q².
 */
final class DesignEffect {
  /** Stations of two surveys farther apart than this, m, are different stations. */
  private static final double TOGETHER_M = 2.5;

  private static final int FEWEST = 6;

  /** The share of the pattern is not taken for less. */
  private static final double LEAST_SHARE = 0.25;

  /** Standard deviations of position are rounded to this, m. */
  private static final double GRAIN_M = 0.1;

  /** Pairs of surveys with the mean of all greens that a green's own mean is taken with. */
  private static final double BORROWED_PAIRS = 4;

  /** Square of the correlation of two patterns of a green before any reading: an assumption. */
  private static final double USUAL = 0.25;

  /** Pairs of surveys that assumption is worth. */
  private static final double USUAL_PAIRS = 10;

  private final List<Sample> samples;

  /** By green: sum over the pairs of surveys of the square of their correlation, and how many. */
  private final Map<String, double[]> shared;

  private final List<Apart> apart;

  /**
   * Two stations of two surveys taken for the same.
   *
   * @param lag recorded, m
   * @param sdM of its error per axis, m
   */
  private record Apart(double lag, double sdM) {

    static Apart of(Observations a, int i, Observations b, int j) {
      PositionError ofA = a.positionError();
      PositionError ofB = b.positionError();
      double sd =
          Math.hypot(
              Math.hypot(ofA.jitterSdM(i), ofB.jitterSdM(j)),
              Math.hypot(ofA.shiftSdM(), ofB.shiftSdM()));
      return new Apart(
          Math.hypot(a.x(i) - b.x(j), a.y(i) - b.y(j)), Math.rint(sd / GRAIN_M) * GRAIN_M);
    }
  }

  private DesignEffect(List<Sample> samples, Map<String, double[]> shared, List<Apart> apart) {
    this.samples = samples;
    this.shared = shared;
    this.apart = apart;
  }

  static DesignEffect of(List<Sample> samples) {
    Map<String, List<Sample>> byGreen = new LinkedHashMap<>();
    samples.forEach(s -> byGreen.computeIfAbsent(s.green(), g -> new ArrayList<>()).add(s));
    List<Apart> apart = new ArrayList<>();
    Map<String, double[]> shared = new LinkedHashMap<>();
    byGreen.forEach((green, surveys) -> shared.put(green, shared(surveys, apart)));
    return new DesignEffect(List.copyOf(samples), shared, apart);
  }

  private static double[] shared(List<Sample> surveys, List<Apart> apart) {
    double[] sumAndCount = {0, 0};
    for (int i = 0; i < surveys.size(); i++) {
      for (int j = 0; j < i; j++) {
        double square = shared(surveys.get(i), surveys.get(j), apart);
        if (!Double.isNaN(square)) {
          sumAndCount[0] += square;
          sumAndCount[1]++;
        }
      }
    }
    return sumAndCount;
  }

  /**
   * [sample] at least 1.
   *
   * @param patternShare share of the variance of the contrasts that is no nugget
   * @param unit model of the pattern, of sill 1
   */
  double[] at(double patternShare, VariogramModel unit) {
    BlurredModels blurred = new BlurredModels(unit);
    double correlation =
        apart.stream()
            .mapToDouble(a -> 1 - blurred.at(a.sdM()).semivariance(a.lag()))
            .average()
            .orElse(1);
    double q = Math.max(LEAST_SHARE, Math.min(1, patternShare * correlation));
    double sum = shared.values().stream().mapToDouble(s -> s[0]).sum();
    double pairs = shared.values().stream().mapToDouble(s -> s[1]).sum();
    double ofAll = (sum + USUAL_PAIRS * USUAL * q * q) / (pairs + USUAL_PAIRS);
    return samples.stream().mapToDouble(s -> ofGreen(s.green(), ofAll, q)).toArray();
  }

  private double ofGreen(String green, double ofAll, double q) {
    double[] own = shared.get(green);
    double square = (own[0] + BORROWED_PAIRS * ofAll) / (own[1] + BORROWED_PAIRS);
    long surveys = samples.stream().filter(s -> s.green().equals(green)).count();
    return 1 + (surveys - 1) * Math.max(0, Math.min(1, square / (q * q)));
  }

  /** Adjusted square of the correlation, free of planes; NaN with too few stations together. */
  private static double shared(Sample a, Sample b, List<Apart> apart) {
    int[] toB = nearest(a.observations(), b.observations());
    int[] toA = nearest(b.observations(), a.observations());
    double[] ofA = Contrasts.of(a).residuals();
    double[] ofB = Contrasts.of(b).residuals();
    List<double[]> together = new ArrayList<>();
    for (int i = 0; i < toB.length; i++) {
      if (toB[i] >= 0 && toA[toB[i]] == i) {
        together.add(new double[] {ofA[i], ofB[toB[i]]});
        apart.add(Apart.of(a.observations(), i, b.observations(), toB[i]));
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
