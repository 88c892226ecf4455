package org.mottle.engine.season;

import org.mottle.engine.survey.Refusal;

/** How lasting the differences between stations are, or why that cannot be said. */
public sealed interface StabilityOutcome permits TemporalStability, StabilityOutcome.Refused {

  /** Too few stations or surveys. */
  record Refused(Refusal why) implements StabilityOutcome {}
}
