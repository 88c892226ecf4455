package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.order.Alignment.NotPlaced;
import org.mottle.engine.order.Alignment.Pace;
import org.mottle.engine.survey.Refusal;

/**
 * Puts readings of which only the order is known, and perhaps the time, to the stations of a plan.
 *
 * <p>A hidden Markov chain ({@link StationChain}) lets the walker pass stations by and read others
 * once more; gaps in time speak for distances ({@link GapModel}), whose pace, insertion time and
 * scatter are estimated from the visit in turn with the alignment ({@link PaceSearch}). Each
 * reading goes to the station on the path, never going back, that is expected to place the most
 * readings right. Its place is the station's, with the standard error per axis sqrt(0.7² + half the
 * mean squared distance of the possible stations from it). Cost: some 40 passes of the chain, 50 ms
 * a visit. Stateless.
 */
public final class StationOrder {
  private StationOrder() {}

  /** Aligns a visit with the stations of a plan, which stand in the order of the walk. */
  public static Alignment align(OrderedVisit visit, StationPlan plan, OrderSettings settings) {
    Pace pace = new Pace(settings.paceMS(), settings.insertionS(), PaceFit.START_SD, 0);
    if (visit.size() == 0) {
      List<String> all = plan.stations().stream().map(PlannedStation::id).toList();
      return new Alignment(visit, List.of(), List.of(), all, List.of(), pace, List.of());
    }
    Refusal why = PlanMatch.refusal(visit, plan);
    if (why != null) {
      return refused(visit, pace, why);
    }
    if (!visit.timed()) {
      double[][] chance = PaceSearch.chain(visit, plan, settings, pace).posterior().station();
      return AlignmentReport.of(visit, plan, settings, pace, chance);
    }
    PaceSearch.Result result = PaceSearch.of(visit, plan, settings);
    return AlignmentReport.of(visit, plan, settings, result.pace(), result.chance());
  }

  private static Alignment refused(OrderedVisit visit, Pace pace, Refusal why) {
    List<NotPlaced> all = new ArrayList<>();
    for (int k = 0; k < visit.size(); k++) {
      all.add(new NotPlaced(k, visit.readings().get(k).sequence(), why));
    }
    return new Alignment(visit, List.of(), all, List.of(), List.of(), pace, List.of());
  }
}
