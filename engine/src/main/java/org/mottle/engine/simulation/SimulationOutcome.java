package org.mottle.engine.simulation;

import org.mottle.engine.survey.Refusal;

/** A conditional simulation, or why there is none. */
public sealed interface SimulationOutcome
    permits ConditionalSimulation, SimulationOutcome.NotSimulated {

  /** The readings or the model do not allow it. */
  record NotSimulated(Refusal refusal) implements SimulationOutcome {}
}
