package org.mottle.engine.design;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Reading;

/**
 * The stations of one green in the order of the walk.
 *
 * @param planId which plan, unique on its green: the design's name, or the site's own
 * @param greenId the green
 * @param stations in walking order
 */
public record StationPlan(String planId, String greenId, List<PlannedStation> stations) {
  /** Time for one insertion, s (common practice, no source). */
  public static final double INSERTION_S = 20;

  /** Pace between stations, m/s (common practice, no source). */
  public static final double PACE_M_S = 1.2;

  public StationPlan {
    stations = List.copyOf(stations);
  }

  /** Length of the walk from the first station to the last, without control stations, m. */
  public double walkM() {
    List<PlannedStation> walk =
        stations.stream().filter(s -> s.role() != Reading.Role.CONTROL).toList();
    double sum = 0;
    for (int i = 1; i < walk.size(); i++) {
      PlannedStation a = walk.get(i - 1);
      PlannedStation b = walk.get(i);
      sum += Math.hypot(b.x() - a.x(), b.y() - a.y());
    }
    return sum;
  }

  /** How often the probe goes in. */
  public int insertions() {
    return stations.stream().mapToInt(PlannedStation::insertions).sum();
  }

  /** Time for the walk and the insertions, min. */
  public double minutes() {
    return (insertions() * INSERTION_S + walkM() / PACE_M_S) / 60;
  }

  public Optional<PlannedStation> station(String id) {
    return stations.stream().filter(s -> s.id().equals(id)).findFirst();
  }
}
