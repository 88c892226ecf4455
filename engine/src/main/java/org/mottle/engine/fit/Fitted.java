package org.mottle.engine.fit;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.variogram.NestedModel;

/**
 * A fitted model.
 *
 * @param model the best model; without structures when the variogram shows none
 * @param weightedSse the weighted sum of squares at the model, in the units of the weighting
 * @param evaluations how often the sum of squares was computed
 * @param notes what a reader must know about the model, in words; empty when there is nothing
 */
public record Fitted(NestedModel model, double weightedSse, int evaluations, List<String> notes)
    implements FitOutcome {

  public Fitted {
    notes = List.copyOf(notes);
  }

  @Override
  public Optional<NestedModel> fittedModel() {
    return Optional.of(model);
  }
}
