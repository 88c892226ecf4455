package org.mottle.engine.interval;

import java.util.Arrays;

/**
 * A figure with its 90 % interval: 5 % lies below it and 5 % above.
 *
 * @param low lower end; NaN when not known
 * @param best the figure itself
 * @param high upper end; NaN when not known
 */
public record Interval(double low, double best, double high) {
  /** Probability below the interval, and above it. */
  public static final double TAIL = 0.05;

  /** Not known. */
  public static final Interval UNKNOWN = new Interval(Double.NaN, Double.NaN, Double.NaN);

  /** A figure of which nothing more is known. */
  public static Interval plain(double best) {
    return new Interval(Double.NaN, best, Double.NaN);
  }

  /**
   * The mean of a sample between its 5 % and 95 % quantiles, which lie between order statistics by
   * linear interpolation (Hyndman and Fan 1996, type 7). Not known for an empty sample.
   */
  public static Interval of(double[] sample) {
    if (sample.length == 0) {
      return UNKNOWN;
    }
    double sum = 0;
    for (double v : sample) {
      sum += v;
    }
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return new Interval(quantile(sorted, TAIL), sum / sample.length, quantile(sorted, 1 - TAIL));
  }

  private static double quantile(double[] sorted, double p) {
    double place = p * (sorted.length - 1);
    int below = (int) place;
    int above = Math.min(sorted.length - 1, below + 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  /** The same about another figure. */
  public Interval about(double newBest) {
    return new Interval(low, newBest, high);
  }

  public boolean holds(double value) {
    return low <= value && value <= high;
  }

  public boolean known() {
    return !Double.isNaN(best);
  }
}
