package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.validation.Predictions;
import org.mottle.engine.validation.Scores;

/**
 * All that came of mapping.
 *
 * @param settings how it was mapped
 * @param variograms each once, in the order of the first green that uses it
 * @param outcomes one a green and survey, in the order given
 */
public record SurveyMap(
    MappingSettings settings, List<SurveyVariogram> variograms, List<Outcome> outcomes) {
  /** Level of the intervals whose coverage is scored. */
  public static final double LEVEL = 0.9;

  public SurveyMap {
    variograms = List.copyOf(variograms);
    outcomes = List.copyOf(outcomes);
  }

  /** The maps, in the order given. */
  public List<Outcome.Mapped> maps() {
    return outcomes.stream()
        .filter(Outcome.Mapped.class::isInstance)
        .map(Outcome.Mapped.class::cast)
        .toList();
  }

  /** The greens without a map, in the order given. */
  public List<Outcome.NoMap> notMapped() {
    return outcomes.stream()
        .filter(Outcome.NoMap.class::isInstance)
        .map(Outcome.NoMap.class::cast)
        .toList();
  }

  /** What came of a green in a survey; empty when it was not among those asked for. */
  public Optional<Outcome> of(String greenId, String surveyId) {
    return outcomes.stream()
        .filter(o -> o.subject().green().id().equals(greenId))
        .filter(o -> o.subject().surveyId().equals(surveyId))
        .findFirst();
  }

  /**
   * Scores of the leave-one-out predictions of every green that rests on a variogram, taken
   * together; empty when none does.
   */
  public Optional<Scores> scores(SurveyVariogram variogram) {
    List<Predictions> all =
        maps().stream()
            .map(Outcome.Mapped::basis)
            .filter(basis -> basis.variogram().filter(v -> v == variogram).isPresent())
            .flatMap(basis -> basis.crossValidation().stream())
            .toList();
    return all.isEmpty() ? Optional.empty() : Optional.of(Scores.pooled(all, LEVEL));
  }
}
