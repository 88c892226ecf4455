package org.mottle.engine.fit;

import java.util.Optional;
import org.mottle.engine.variogram.NestedModel;

/** What became of a fit: a model, or the reason why there is none. */
public sealed interface FitOutcome permits Fitted, NotFitted {

  /** The model, where there is one. */
  Optional<NestedModel> fittedModel();
}
