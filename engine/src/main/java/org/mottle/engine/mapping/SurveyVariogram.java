package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.fit.FitOutcome;
import org.mottle.engine.variogram.NestedModel;

/**
 * The variogram behind one or more maps.
 *
 * @param surveyId which survey
 * @param greens whose pairs are in it, by id; one for a green's own variogram
 * @param readings station values in it
 * @param experimental semivariances by lag
 * @param outcome the fitted model, or why there is none
 */
public record SurveyVariogram(
    String surveyId,
    List<String> greens,
    int readings,
    ExperimentalVariogram experimental,
    FitOutcome outcome) {

  /** At this share of nugget or more, the readings show no spatial structure. */
  public static final double ALL_NUGGET = 0.95;

  public SurveyVariogram {
    greens = List.copyOf(greens);
  }

  public long pairs() {
    return experimental.pairs();
  }

  public Optional<NestedModel> model() {
    return outcome.fittedModel();
  }

  /** Whether a model was found that ties near readings closer than far ones. */
  public boolean structured() {
    return model().filter(m -> m.nuggetShare() < ALL_NUGGET).isPresent();
  }

  /** In words, for the reader of a map. */
  public String source() {
    return greens.size() == 1
        ? "the green's own variogram (" + readings + " readings)"
        : "a variogram pooled over " + greens.size() + " greens (" + pairs() + " pairs)";
  }
}
