package org.mottle.engine.review;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/**
 * One green in one survey, as it comes to the review.
 *
 * @param green the green
 * @param surveyId the survey
 * @param readings all of them in order of file, placed; without those of control stations
 * @param conditions what was recorded of the visit, if anything was
 * @param plans the plans that were followed; empty when not known
 */
public record GreenVisit(
    Green green,
    String surveyId,
    List<Reading> readings,
    Optional<Conditions> conditions,
    List<StationPlan> plans) {
  public GreenVisit {
    readings = List.copyOf(readings);
    plans = List.copyOf(plans);
  }

  GreenVisit withReadings(List<Reading> newReadings) {
    return new GreenVisit(green, surveyId, newReadings, conditions, plans);
  }

  /** The planned station of a reading, by its id. */
  Optional<PlannedStation> planned(Reading reading) {
    String id = reading.label().stationId();
    return plans.stream().flatMap(p -> p.station(id).stream()).findFirst();
  }

  String label() {
    return surveyId.isEmpty() ? "green " + green.id() : "green " + green.id() + ", " + surveyId;
  }
}
