package org.mottle.engine.order;

import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Refusal;

/** Whether a visit and a plan can belong together at all. */
final class PlanMatch {
  private static final int MOST_PER_STATION = 2;
  private static final double LEAST_SHARE_WITHOUT_TIMES = 0.5;

  private PlanMatch() {}

  /** Why they cannot; null when they can. */
  static Refusal refusal(OrderedVisit visit, StationPlan plan) {
    int stations = plan.stations().size();
    if (stations == 0) {
      return new Refusal(
          "plan " + plan.planId() + " has no stations on green " + plan.greenId(),
          "give the plan that was walked, or the positions");
    }
    long firsts = visit.readings().stream().filter(r -> r.replicate() == 1).count();
    if (firsts > MOST_PER_STATION * (long) Math.max(stations, plan.insertions())) {
      return new Refusal(
          "%d first insertions are more than twice the %d stations of plan %s on green %s"
              .formatted(firsts, stations, plan.planId(), plan.greenId()),
          "give the plan that was walked, or split the visit where it was repeated");
    }
    if (!visit.timed() && firsts < LEAST_SHARE_WITHOUT_TIMES * stations) {
      return new Refusal(
          "%d readings without times could be at any of the %d stations of plan %s on green %s"
              .formatted(visit.size(), stations, plan.planId(), plan.greenId()),
          "give the station ids or the times of the readings");
    }
    return null;
  }
}
