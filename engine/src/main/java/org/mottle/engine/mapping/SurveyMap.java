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

  /** How many greens have a map. */
  public long mapped() {
    return outcomes.stream().filter(Outcome.Mapped.class::isInstance).count();
  }

  /**
   * Scores of the leave-one-out predictions of every green that rests on a variogram, taken
   * together; empty when none does.
   */
  public Optional<Scores> scores(SurveyVariogram variogram) {
    List<Predictions> all =
        outcomes.stream()
            .filter(Outcome.Mapped.class::isInstance)
            .map(o -> ((Outcome.Mapped) o).basis())
            .filter(basis -> basis.variogram().filter(v -> v == variogram).isPresent())
            .flatMap(basis -> basis.crossValidation().stream())
            .toList();
    return all.isEmpty() ? Optional.empty() : Optional.of(Scores.pooled(all, LEVEL));
  }
}
