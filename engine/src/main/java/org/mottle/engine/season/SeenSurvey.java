package org.mottle.engine.season;

import java.util.stream.IntStream;
import org.mottle.engine.observation.Observations;

/**
 * One survey of a green as the season sees it: its values with the errors of their places and those
 * they have in common, which are this visit's own.
 *
 * @param observations one value a station; variances of measurement are not looked at, the nugget
 *     holds them
 * @param insertions [n] behind each value
 * @param site [n] number of the place that the station has in common with other surveys, {@link
 *     #ONCE} where it has none; the error of a common place is whole in the station's jitter
 */
public record SeenSurvey(Observations observations, int[] insertions, int[] site) {
  /** Of a station that was not gone back to. */
  static final int ONCE = -1;

  /** A survey whose stations are nobody else's. */
  public SeenSurvey(Observations observations, int[] insertions) {
    this(
        observations,
        insertions,
        IntStream.generate(() -> ONCE).limit(insertions.length).toArray());
  }

  public SeenSurvey {
    insertions = insertions.clone();
    site = site.clone();
    if (site.length != insertions.length) {
      throw new IllegalArgumentException(
          site.length + " sites for " + insertions.length + " stations");
    }
    if (insertions.length != observations.size()) {
      throw new IllegalArgumentException(
          insertions.length + " counts of insertions for " + observations.size() + " stations");
    }
  }

  @Override
  public int[] insertions() {
    return insertions.clone();
  }

  @Override
  public int[] site() {
    return site.clone();
  }

  /** Per axis, m²: what a station's own place may be off. */
  double jitterVariance(int i) {
    double sd = observations.positionError().jitterSdM(i);
    return sd * sd + returnVariance(i);
  }

  /** Per axis, m²: what it may be off together with the other stations of the visit. */
  double shiftVariance(int i) {
    double sd = observations.positionError().shiftSdM();
    return site[i] == ONCE ? sd * sd : 0;
  }

  /** Per axis, m²: how far from a common place the probe may go in. */
  double returnVariance(int i) {
    return site[i] == ONCE ? 0 : ReturnedStations.RETURN_M * ReturnedStations.RETURN_M;
  }

  /** Whether the station stands at the same place as one of another survey. */
  boolean samePlace(int i, SeenSurvey other, int j) {
    return site[i] != ONCE && site[i] == other.site[j];
  }

  int size() {
    return observations.size();
  }
}
