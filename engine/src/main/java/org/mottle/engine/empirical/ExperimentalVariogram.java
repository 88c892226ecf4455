package org.mottle.engine.empirical;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/**
 * Semivariances by lag, computed from pairs of observations (Webster & Oliver 2007, ch. 4). Only
 * lags that hold pairs are listed, by direction and then by distance.
 *
 * <p>Pairs are taken within a group and never across groups: several greens, each with a mean of
 * its own, make one pooled variogram. Pairs at one and the same place (separation 0) do not enter;
 * they are counted. The pairs are found by a list of cells, so memory grows with the number of
 * observations and time with the number of pairs within the cutoff. Sums are taken in an order that
 * depends on the places alone: any number of threads and any order of the rows give the same bytes.
 *
 * @param lags lags with at least one pair
 * @param coincidentPairs pairs at one place, left out
 */
public record ExperimentalVariogram(List<Lag> lags, long coincidentPairs) {

  public ExperimentalVariogram {
    lags = List.copyOf(lags);
    if (coincidentPairs < 0) {
      throw new IllegalArgumentException("coincidentPairs must be >= 0, was " + coincidentPairs);
    }
  }

  public ExperimentalVariogram(List<Lag> lags) {
    this(lags, 0);
  }

  /** Matheron's estimator in all directions, on the default lags, of one group, on one thread. */
  public static ExperimentalVariogram of(Observations observations) {
    return of(
        List.of(observations),
        LagBins.defaultsFor(observations),
        Estimator.MATHERON,
        Direction.ALL,
        1);
  }

  /**
   * The variogram of one direction.
   *
   * @param groups observations; pairs never cross groups
   * @param threads number of threads to use, at least 1
   */
  public static ExperimentalVariogram of(
      List<Observations> groups,
      LagBins bins,
      Estimator estimator,
      Direction direction,
      int threads) {
    return directional(groups, bins, estimator, List.of(direction), threads, Progress.NONE);
  }

  /** The variograms of several directions one after the other, for fitting anisotropy. */
  public static ExperimentalVariogram directional(
      List<Observations> groups,
      LagBins bins,
      Estimator estimator,
      List<Direction> directions,
      int threads) {
    return directional(groups, bins, estimator, directions, threads, Progress.NONE);
  }

  /** The same, telling how far it is (phase {@code variogram}, once for each pass). */
  public static ExperimentalVariogram directional(
      List<Observations> groups,
      LagBins bins,
      Estimator estimator,
      List<Direction> directions,
      int threads,
      Progress progress) {
    if (threads < 1) {
      throw new IllegalArgumentException("threads must be >= 1, was " + threads);
    }
    PairScan scan = new PairScan(groups, bins, threads, progress);
    List<Lag> lags = new ArrayList<>();
    long coincident = 0;
    for (Direction direction : directions) {
      LagSums sums = LagSums.of(scan, estimator, direction);
      lags.addAll(sums.lags());
      coincident = sums.coincident();
    }
    return new ExperimentalVariogram(lags, coincident);
  }

  /** Pairs in all lags. */
  public long pairs() {
    return lags.stream().mapToLong(Lag::pairs).sum();
  }

  /** Longest mean separation, m; 0 without lags. */
  public double longestLag() {
    return lags.stream().mapToDouble(Lag::distance).max().orElse(0);
  }
}
