package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.mapping.Stations.Station;

/**
 * Two stations at one place, which only the person who surveyed can explain.
 *
 * @param subject green and survey
 * @param first station
 * @param second station
 */
public record Coincidence(GreenSurvey subject, Station first, Station second) {

  /** Places nearer than this are one place, m. */
  public static final double SAME_PLACE_M = 0.01;

  /** Every such pair of a green, in the order of the rows. */
  public static List<Coincidence> of(GreenSurvey subject) {
    // by place: partners are near each other in this order
    List<Station> stations = Stations.of(subject.readings()).stations();
    List<Coincidence> found = new ArrayList<>();
    for (int i = 0; i < stations.size(); i++) {
      for (int j = i + 1; j < stations.size(); j++) {
        Station a = stations.get(i);
        Station b = stations.get(j);
        if (b.x() - a.x() > Stations.REPLICATE_M) {
          break;
        }
        if (Math.hypot(a.x() - b.x(), a.y() - b.y()) <= SAME_PLACE_M) {
          found.add(
              a.row() <= b.row() ? new Coincidence(subject, a, b) : new Coincidence(subject, b, a));
        }
      }
    }
    return found;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%s: %s share a place (E %.2f N %.2f, values %s and %s)",
        subject.label(),
        who(),
        first.x(),
        first.y(),
        first.value(),
        second.value());
  }

  private String who() {
    return first.row() > 0
        ? "rows " + first.row() + " and " + second.row()
        : "stations '" + first.name() + "' and '" + second.name() + "'";
  }
}
