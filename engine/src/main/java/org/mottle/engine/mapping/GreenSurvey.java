package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;

/**
 * One green in one survey: what is mapped as a unit.
 *
 * @param green the green
 * @param surveyId which survey
 * @param readings every reading of the green in the survey; those not {@code used} are carried
 *     along but not mapped
 * @param band what the site's agronomist wants there; without it the map has no classes
 * @param obstacle why the readings must not be mapped, where their reader knows already; they then
 *     stay out of the variogram too
 */
public record GreenSurvey(
    Green green,
    String surveyId,
    List<Reading> readings,
    Optional<TargetBand> band,
    Optional<Refusal> obstacle) {
  public GreenSurvey {
    readings = List.copyOf(readings);
  }

  /** Readings that nothing is known to stand in the way of. */
  public GreenSurvey(
      Green green, String surveyId, List<Reading> readings, Optional<TargetBand> band) {
    this(green, surveyId, readings, band, Optional.empty());
  }

  public GreenSurvey withObstacle(Refusal why) {
    return new GreenSurvey(green, surveyId, readings, band, Optional.of(why));
  }

  /** Name for messages. */
  public String label() {
    return surveyId.isEmpty() ? "green " + green.id() : "green " + green.id() + ", " + surveyId;
  }
}
