package org.mottle.engine.mapping;

import java.util.List;

/**
 * All that came of mapping.
 *
 * @param variograms each once, in the order of the first green that uses it
 * @param outcomes one a green and survey, in the order given
 */
public record SurveyMap(List<SurveyVariogram> variograms, List<Outcome> outcomes) {
  public SurveyMap {
    variograms = List.copyOf(variograms);
    outcomes = List.copyOf(outcomes);
  }

  /** How many greens have a map. */
  public long mapped() {
    return outcomes.stream().filter(Outcome.Mapped.class::isInstance).count();
  }
}
