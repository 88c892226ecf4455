package org.mottle.engine.population;

import java.util.Arrays;

/**
 * Expectation-maximisation for {@link Mixture} (Dempster, Laird & Rubin 1977, J. R. Stat. Soc. B
 * 39:1-38; Everitt & Hand 1981, ch. 2). The variance is common to both populations, so the
 * likelihood is bounded unless every value equals one of the means; a floor under sigma keeps it
 * bounded there too. O(n) a step; one instance belongs to one thread.
 */
final class Expectation {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  /** Below this share a population is held to have died out. */
  private static final double LEAST_SHARE = 1e-9;

  private final double[][] value;
  private final int n;
  private final Mixture.Depth kind;
  private final double floor;

  /** Survey whose depth is held fixed, or -1. */
  private final int held;

  private final double heldDepth;

  private final double[][] low;
  private final double[] upper;
  private final double[] depth;
  private double sigma;
  private double share;
  private double logLikelihood;

  Expectation(double[][] value, Mixture.Depth kind, double floor) {
    this(value, kind, floor, -1, 0);
  }

  private Expectation(
      double[][] value, Mixture.Depth kind, double floor, int held, double heldDepth) {
    this.value = value;
    this.n = Arrays.stream(value).mapToInt(v -> v.length).sum();
    this.kind = kind;
    this.floor = floor;
    this.held = held;
    this.heldDepth = heldDepth;
    this.low = new double[value.length][];
    for (int s = 0; s < value.length; s++) {
      low[s] = new double[value[s].length];
    }
    this.upper = new double[value.length];
    this.depth = new double[value.length];
  }

  /** The same fit with the depth of one survey (of all, where it is common) held at a value. */
  Expectation holding(int survey, double atDepth) {
    return new Expectation(value, kind, floor, survey, atDepth);
  }

  /** Starts from memberships, which are copied. */
  void start(double[][] membership) {
    for (int s = 0; s < low.length; s++) {
      System.arraycopy(membership[s], 0, low[s], 0, low[s].length);
    }
    maximise();
    expect();
  }

  /** Starts from a mixture. */
  void start(Mixture from) {
    for (int s = 0; s < low.length; s++) {
      upper[s] = from.upperMean(s);
      depth[s] = from.depth(s);
    }
    sigma = from.sigma();
    share = from.share();
    expect();
    maximise();
    expect();
  }

  /** Steps until the log-likelihood gains less than {@code gain}, at most {@code limit} times. */
  void climb(int limit, double gain) {
    for (int step = 0; step < limit; step++) {
      double before = logLikelihood;
      maximise();
      expect();
      if (!(logLikelihood - before > gain)) {
        return;
      }
    }
  }

  double logLikelihood() {
    return logLikelihood;
  }

  Mixture mixture() {
    return new Mixture(kind, upper.clone(), depth.clone(), sigma, share, logLikelihood);
  }

  /** Memberships and the log-likelihood of the parameters as they stand. */
  private void expect() {
    double scale = 1 / (2 * sigma * sigma);
    double oddsOfLow = share / (1 - share);
    double sum = n * (Math.log1p(-share) - Math.log(sigma) - LOG_TWO_PI / 2);
    for (int s = 0; s < value.length; s++) {
      for (int i = 0; i < value[s].length; i++) {
        double high = value[s][i] - upper[s];
        double deep = high + depth[s];
        double lowHere = oddsOfLow * Math.exp((high * high - deep * deep) * scale);
        low[s][i] = Double.isInfinite(lowHere) ? 1 : lowHere / (1 + lowHere);
        sum +=
            Double.isInfinite(lowHere)
                ? Math.log(oddsOfLow) - deep * deep * scale
                : Math.log1p(lowHere) - high * high * scale;
      }
    }
    logLikelihood = sum;
  }

  /** Parameters from the memberships as they stand. */
  private void maximise() {
    double total = 0;
    for (double[] survey : low) {
      total += Arrays.stream(survey).sum();
    }
    share = Math.min(Math.max(total / n, LEAST_SHARE), 1 - LEAST_SHARE);
    if (kind == Mixture.Depth.COMMON) {
      Arrays.fill(depth, held >= 0 ? heldDepth : commonDepth());
    } else {
      for (int s = 0; s < value.length; s++) {
        depth[s] = s == held ? heldDepth : depthOf(s, depth[s]);
      }
    }
    double squares = 0;
    for (int s = 0; s < value.length; s++) {
      upper[s] = mean(value[s]) + depth[s] * mean(low[s]);
      squares += squares(s);
    }
    sigma = Math.max(Math.sqrt(squares / n), floor);
  }

  /**
   * Least squares of value = mu_s - depth · low, weighted by the memberships; not below nought, so
   * that "lower" means the same in every survey.
   */
  private double commonDepth() {
    double above = 0;
    double weight = 0;
    for (int s = 0; s < value.length; s++) {
      above += shortfall(s);
      weight += weight(s);
    }
    return weight > 0 ? Math.max(0, above / weight) : 0;
  }

  /** A survey without low readings says nothing of its depth: it keeps what it had. */
  private double depthOf(int s, double before) {
    double weight = weight(s);
    return weight > 1e-12 ? Math.max(0, shortfall(s) / weight) : before;
  }

  private double shortfall(int s) {
    double mean = mean(value[s]);
    double sum = 0;
    for (int i = 0; i < value[s].length; i++) {
      sum += low[s][i] * (mean - value[s][i]);
    }
    return sum;
  }

  private double weight(int s) {
    double mean = mean(low[s]);
    return low[s].length * mean * (1 - mean);
  }

  private double squares(int s) {
    double sum = 0;
    for (int i = 0; i < value[s].length; i++) {
      double high = value[s][i] - upper[s];
      double deep = high + depth[s];
      sum += (1 - low[s][i]) * high * high + low[s][i] * deep * deep;
    }
    return sum;
  }

  static double mean(double[] column) {
    double sum = 0;
    for (double v : column) {
      sum += v;
    }
    return sum / column.length;
  }
}
