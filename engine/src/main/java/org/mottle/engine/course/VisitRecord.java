package org.mottle.engine.course;

import java.util.Optional;
import org.mottle.engine.review.Grade;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.WaterHistory;

/**
 * What is known of a visit beside its map.
 *
 * @param greenId the green
 * @param surveyId the survey
 * @param conditions as recorded; empty when they were not
 * @param grade by the review; empty where there was none
 */
public record VisitRecord(
    String greenId, String surveyId, Optional<Conditions> conditions, Optional<Grade> grade) {

  /** A visit of which nothing was recorded. */
  public static VisitRecord unknown(String greenId, String surveyId) {
    return new VisitRecord(greenId, surveyId, Optional.empty(), Optional.empty());
  }

  public WaterHistory history() {
    return conditions.map(c -> WaterHistory.of(c.water())).orElse(WaterHistory.UNKNOWN);
  }

  /** Reference evapotranspiration, mm a day; NaN when not recorded. */
  double et0MmDay() {
    return conditions.map(c -> c.water().et0MmDay()).orElse(Double.NaN);
  }
}
