package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.SharedError;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.VisitErrors;

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
 * @param errors what the readings have in common that is wrong
 */
public record GreenSurvey(
    Green green,
    String surveyId,
    List<Reading> readings,
    Optional<TargetBand> band,
    Optional<Refusal> obstacle,
    VisitErrors errors) {
  public GreenSurvey {
    readings = List.copyOf(readings);
    for (SharedError error : errors.shared()) {
      if (error.share().length != readings.size()) {
        throw new IllegalArgumentException(
            "%s has %d shares where green %s has %d readings"
                .formatted(error.what(), error.share().length, green.id(), readings.size()));
      }
    }
  }

  /** Readings that nothing is known to stand in the way of. */
  public GreenSurvey(
      Green green, String surveyId, List<Reading> readings, Optional<TargetBand> band) {
    this(green, surveyId, readings, band, Optional.empty(), VisitErrors.UNKNOWN);
  }

  public GreenSurvey withObstacle(Refusal why) {
    return new GreenSurvey(green, surveyId, readings, band, Optional.of(why), errors);
  }

  public GreenSurvey withErrors(VisitErrors newErrors) {
    return new GreenSurvey(green, surveyId, readings, band, obstacle, newErrors);
  }

  /** Name for messages. */
  public String label() {
    return surveyId.isEmpty() ? "green " + green.id() : "green " + green.id() + ", " + surveyId;
  }
}
