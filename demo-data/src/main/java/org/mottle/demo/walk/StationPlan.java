package org.mottle.demo.walk;

import java.util.List;

/**
 * Stations of one green in walking order.
 *
 * @param id base, w, tour, free, infill or poi
 * @param greenId the green
 * @param stations in walking order
 */
public record StationPlan(String id, String greenId, List<Station> stations) {
  public StationPlan {
    stations = List.copyOf(stations);
  }

  /** The station of that id. */
  public Station station(String stationId) {
    return stations.stream()
        .filter(s -> s.id().equals(stationId))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "plan " + id + " of " + greenId + " has no station '" + stationId + "'"));
  }
}
