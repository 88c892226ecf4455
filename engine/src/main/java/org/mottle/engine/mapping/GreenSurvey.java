package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/**
 * One green in one survey: what is mapped as a unit.
 *
 * @param green the green
 * @param surveyId which survey
 * @param readings every reading of the green in the survey; those not {@code used} are carried
 *     along but not mapped
 * @param band what the site's agronomist wants there; without it the map has no classes
 */
public record GreenSurvey(
    Green green, String surveyId, List<Reading> readings, Optional<TargetBand> band) {
  public GreenSurvey {
    readings = List.copyOf(readings);
  }

  /** Name for messages. */
  public String label() {
    return surveyId.isEmpty() ? "green " + green.id() : "green " + green.id() + ", " + surveyId;
  }
}
