package org.mottle.engine.plan;

import java.util.List;

/**
 * Stations to be read next, the most telling first.
 *
 * @param criterion by what they are ranked
 * @param stations in the order of rank
 * @param stop why there are no more
 * @param before the criterion (m² or value²) as the survey stands; NaN without a sound draw
 * @param after the same, expected once all stations are read
 * @param draws indices of the parameter draws that were averaged over
 * @param walkM length of the walk from the nearer end of the survey, m
 */
public record StationRanking(
    Criterion criterion,
    List<NextStation> stations,
    StopReason stop,
    double before,
    double after,
    List<Integer> draws,
    double walkM) {

  public StationRanking {
    stations = List.copyOf(stations);
    draws = List.copyOf(draws);
  }
}
