package org.mottle.engine.fit;

import java.util.Optional;
import org.mottle.engine.variogram.NestedModel;

/**
 * No model could be had.
 *
 * @param reason why not, and what would help, in words
 */
public record NotFitted(String reason) implements FitOutcome {

  @Override
  public Optional<NestedModel> fittedModel() {
    return Optional.empty();
  }
}
