package org.mottle.engine.season;

import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.review.Grade;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.WaterHistory;

/**
 * The map of a green in one survey, with what decides how it may be compared over the season.
 *
 * @param map the map
 * @param history the water before the visit
 * @param grade how far its readings can be trusted; empty where they were not graded
 */
public record SurveyedMap(Outcome.Mapped map, WaterHistory history, Optional<Grade.Letter> grade) {

  public String surveyId() {
    return map.subject().surveyId();
  }

  /** Lengths of the rods of the readings used, in words; empty when not recorded. */
  String rods() {
    TreeSet<Double> lengths = new TreeSet<>();
    for (Reading r : map.subject().readings()) {
      if (r.quality().used() && r.role() != Reading.Role.CONTROL) {
        lengths.add(r.protocol().rodMm());
      }
    }
    if (lengths.isEmpty() || lengths.stream().anyMatch(v -> Double.isNaN(v))) {
      return "";
    }
    StringBuilder words = new StringBuilder();
    for (double mm : lengths) {
      words.append(words.isEmpty() ? "" : " and ").append(String.format(Locale.ROOT, "%.0f", mm));
    }
    return words.append(" mm").toString();
  }
}
