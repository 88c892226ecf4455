package org.mottle.engine.design;

import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Refusal;

/** A plan, or why there is none. */
public sealed interface PlanOutcome {

  Green green();

  /**
   * @param green the green
   * @param plan its stations
   * @param note what the user should know of it; empty when nothing
   */
  record Planned(Green green, StationPlan plan, String note) implements PlanOutcome {}

  /**
   * @param green the green
   * @param why what stands in the way, and what would help
   */
  record NotPlanned(Green green, Refusal why) implements PlanOutcome {}
}
