package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.validation.Calibration;

/**
 * All that came of mapping.
 *
 * @param settings how it was mapped
 * @param variograms each once, in the order of the first green that uses it
 * @param outcomes one a green and survey, in the order given
 */
public record SurveyMap(
    MappingSettings settings, List<MapVariogram> variograms, List<Outcome> outcomes) {
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
   * How the leave-one-out predictions of every green that rests on a variogram bear out, taken
   * together; empty when none does.
   */
  public Optional<Calibration> calibration(MapVariogram variogram) {
    return calibration(
        maps().stream()
            .filter(m -> m.basis().variogram().filter(v -> v == variogram).isPresent())
            .toList());
  }

  /** The same over the greens of a survey. */
  public Optional<Calibration> calibration(String surveyId) {
    return calibration(
        maps().stream().filter(m -> m.subject().surveyId().equals(surveyId)).toList());
  }

  /** The same over all maps. */
  public Optional<Calibration> calibration() {
    return calibration(maps());
  }

  private static Optional<Calibration> calibration(List<Outcome.Mapped> maps) {
    List<Calibration.Part> parts =
        maps.stream()
            .flatMap(
                m ->
                    m.basis().crossValidation().stream()
                        .map(p -> new Calibration.Part(p, m.subject().band())))
            .toList();
    return parts.isEmpty() ? Optional.empty() : Optional.of(Calibration.of(parts));
  }
}
