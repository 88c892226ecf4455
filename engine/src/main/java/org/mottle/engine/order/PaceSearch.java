package org.mottle.engine.order;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.order.Alignment.Pace;

/**
 * Pace and alignment in turn (expectation and maximisation), from several beginnings since the turn
 * can settle on a walk shifted by a station. The chances of the ends are averaged with the weight
 * of their likelihoods and of the priors of pace and insertion time.
 */
final class PaceSearch {
  private static final double[] START_SDS = {0.06, 0.12, 0.2};
  private static final double[] START_INSERTIONS = {0.8, 1.0, 1.25};
  private static final int ROUNDS = 4;
  private static final double PRIOR_SD = 0.2;

  private PaceSearch() {}

  /**
   * @param pace of the likeliest end
   * @param chance [readings][stations] averaged over the ends
   */
  record Result(Pace pace, double[][] chance) {}

  private record End(Pace pace, StationChain.Posterior posterior, double log) {}

  static Result of(OrderedVisit visit, StationPlan plan, OrderSettings settings) {
    List<End> ends = new ArrayList<>();
    End best = null;
    for (double sd : START_SDS) {
      for (double share : START_INSERTIONS) {
        End end =
            end(
                visit,
                plan,
                settings,
                new Pace(settings.paceMS(), share * settings.insertionS(), sd, 0));
        ends.add(end);
        best = best == null || end.log() > best.log() ? end : best;
      }
    }
    double[][] chance = new double[visit.size()][plan.stations().size()];
    double sum = 0;
    for (End end : ends) {
      double weight = Math.exp(end.log() - best.log());
      sum += weight;
      for (int k = 0; k < chance.length; k++) {
        for (int i = 0; i < chance[k].length; i++) {
          chance[k][i] += weight * end.posterior().station()[k][i];
        }
      }
    }
    for (double[] row : chance) {
      for (int i = 0; i < row.length; i++) {
        row[i] /= sum;
      }
    }
    return new Result(best.pace(), chance);
  }

  private static End end(OrderedVisit visit, StationPlan plan, OrderSettings settings, Pace start) {
    Pace pace = start;
    StationChain.Posterior posterior = chain(visit, plan, settings, pace).posterior();
    for (int round = 0; round < ROUNDS; round++) {
      pace = PaceFit.of(plan.stations(), visit, posterior, settings, pace);
      posterior = chain(visit, plan, settings, pace).posterior();
    }
    double log =
        posterior.logLikelihood()
            - prior(pace.paceMS() / settings.paceMS())
            - prior(pace.insertionS() / settings.insertionS());
    return new End(pace, posterior, log);
  }

  private static double prior(double ratio) {
    double z = Math.log(ratio) / PRIOR_SD;
    return 0.5 * z * z;
  }

  static StationChain chain(
      OrderedVisit visit, StationPlan plan, OrderSettings settings, Pace pace) {
    return new StationChain(plan.stations(), visit, settings, GapModel.of(pace));
  }
}
