package org.mottle.engine.population;

import java.util.List;
import java.util.stream.IntStream;
import org.mottle.engine.interval.Interval;

/**
 * Two populations are shown. Which stations belong to the lower one comes from all stations; its
 * share of the ground only from those that were not chosen for what is seen there. Immutable.
 */
public final class TwoFound implements PopulationOutcome {
  private final Evidence evidence;
  private final List<StationValues> surveys;
  private final double[][] membership;
  private final GroundShare groundShare;
  private final List<Interval> depth;

  TwoFound(
      Evidence evidence,
      List<StationValues> surveys,
      double[][] membership,
      GroundShare groundShare,
      List<Interval> depth) {
    this.evidence = evidence;
    this.surveys = List.copyOf(surveys);
    this.membership = membership;
    this.groundShare = groundShare;
    this.depth = List.copyOf(depth);
  }

  @Override
  public Evidence evidence() {
    return evidence;
  }

  public Mixture mixture() {
    return evidence.mixture().orElseThrow();
  }

  /** In the order in which they were given. */
  public List<StationValues> surveys() {
    return surveys;
  }

  /** The probability that a station belongs to the lower population. */
  public double membership(int survey, int station) {
    return membership[survey][station];
  }

  /** Whether a station rather belongs to the lower population than to the other. */
  public boolean isLow(int survey, int station) {
    return membership[survey][station] >= 0.5;
  }

  /**
   * Stations of a survey that belong to the lower population: to be left out of the surface of the
   * main one.
   */
  public int[] lowStations(int survey) {
    return IntStream.range(0, membership[survey].length).filter(i -> isLow(survey, i)).toArray();
  }

  /** The other stations of a survey. */
  public int[] otherStations(int survey) {
    return IntStream.range(0, membership[survey].length).filter(i -> !isLow(survey, i)).toArray();
  }

  /** Share of the ground that belongs to the lower population. */
  public GroundShare groundShare() {
    return groundShare;
  }

  /** Difference of the two means in a survey, % by volume: 90 % interval by likelihood profile. */
  public Interval depth(int survey) {
    return depth.get(survey);
  }

  /**
   * Whether the lower population is the exception. Where it is the rule, the exception is wet, and
   * nothing here speaks of water-repellent spots.
   */
  public boolean lowIsException() {
    return groundShare.share().best() < 0.5;
  }
}
