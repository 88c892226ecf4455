package org.mottle.engine.irrigation;

import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.simulation.NormalStream;

/**
 * Uniformity with what few cans leave open: percentile intervals of the bootstrap, the cans drawn
 * again with replacement, corrected for bias (Efron 1981) and expanded by t of n - 1 degrees of
 * freedom and √(n / (n - 1)) (Hesterberg 2015). Over invented normal catches the 90 % intervals of
 * DU held the truth in 78, 84, 87 % with 16, 24, 40 cans, of CU in 89, 88, 90 %: few cans leave
 * those of DU too narrow still. They say nothing of wind or pressure on another day.
 *
 * @param figures of the cans themselves
 * @param duLowQuarter with its interval, which fewer than {@value #FEWEST} cans do not give
 * @param cuPct per cent, as that
 */
public record UniformityEstimate(Uniformity figures, Interval duLowQuarter, Interval cuPct) {
  private static final int FEWEST = 5;

  /**
   * @param catches as for {@link Uniformity#of}
   * @param replicates drawn, 100 or more
   */
  public static UniformityEstimate of(
      double[] catches, LowQuarter rule, int replicates, long seed) {
    if (replicates < 100) {
      throw new IllegalArgumentException("replicates must be >= 100, was " + replicates);
    }
    Uniformity figures = Uniformity.of(catches, rule);
    if (catches.length < FEWEST) {
      return new UniformityEstimate(
          figures, Interval.plain(figures.duLowQuarter()), Interval.plain(figures.cuPct()));
    }
    double[] sorted = catches.clone();
    Arrays.sort(sorted);
    double[] du = new double[replicates];
    double[] cu = new double[replicates];
    NormalStream random = new NormalStream(seed, 0);
    double[] drawn = new double[sorted.length];
    for (int r = 0; r < replicates; r++) {
      double sum = 0;
      while (!(sum > 0)) { // all cans of a draw may be empty ones
        sum = 0;
        for (int i = 0; i < drawn.length; i++) {
          drawn[i] = sorted[(int) ((random.bits() >>> 1) % drawn.length)];
          sum += drawn[i];
        }
      }
      Uniformity one = Uniformity.of(drawn, rule);
      du[r] = one.duLowQuarter();
      cu[r] = one.cuPct();
    }
    return new UniformityEstimate(
        figures,
        corrected(du, figures.duLowQuarter(), figures.n()),
        corrected(cu, figures.cuPct(), figures.n()));
  }

  private static Interval corrected(double[] replicates, double estimate, int cans) {
    Arrays.sort(replicates);
    double below = 0;
    for (double value : replicates) {
      below += value < estimate ? 1 : value == estimate ? 0.5 : 0;
    }
    int n = replicates.length;
    double share = Math.min(1 - 0.5 / n, Math.max(0.5 / n, below / n));
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double shift = 2 * normal.inverseCumulativeProbability(share);
    double t = new TDistribution(null, cans - 1).inverseCumulativeProbability(1 - Interval.TAIL);
    double z = t * Math.sqrt(cans / (cans - 1.0));
    return new Interval(
        quantile(replicates, normal.cumulativeProbability(shift - z)),
        estimate,
        quantile(replicates, normal.cumulativeProbability(shift + z)));
  }

  /** Whether the intervals are known; the figures always are. */
  public boolean hasIntervals() {
    return !Double.isNaN(duLowQuarter.low());
  }

  private static double quantile(double[] ascending, double p) {
    double place = p * (ascending.length - 1);
    int below = (int) place;
    int above = Math.min(ascending.length - 1, below + 1);
    return ascending[below] + (place - below) * (ascending[above] - ascending[below]);
  }
}
