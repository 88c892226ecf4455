package org.mottle.engine.inversedistance;

import org.mottle.engine.check.Check;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Inverse distance weighting (Shepard 1968): the mean of the neighbours weighted by 1 / h^power; at
 * an observation its own value, at a shared place the mean of its values. No variance. All targets
 * cost n each, in panels; with a neighbourhood the search and k each. The same bytes for any number
 * of threads.
 *
 * @param power of the distance, above 0
 * @param neighbourhood which observations take part
 */
public record InverseDistance(double power, Neighbourhood neighbourhood) {
  private static final int PANEL = 256;

  public InverseDistance {
    Check.above("power", power, 0, "");
  }

  /** All observations. */
  public static InverseDistance ofPower(double power) {
    return new InverseDistance(power, Neighbourhood.ALL);
  }

  public InverseDistance with(Neighbourhood newNeighbourhood) {
    return new InverseDistance(power, newNeighbourhood);
  }

  /** Values at targets; NaN, with the status of too few neighbours, where none is in reach. */
  public Estimates estimate(
      Observations observations, Targets targets, int threads, Progress progress) {
    double[] value = new double[targets.size()];
    boolean all = neighbourhood.global(observations.size()) && observations.size() > 0;
    Panels.run(
        targets.size(),
        PANEL,
        threads,
        "inverse distance",
        progress,
        all
            ? () -> new AllObservations(observations, power, targets, PANEL, value)
            : NearObservations.onTargets(observations, this, targets, value));
    return Estimates.withoutVariance(value);
  }

  /** Every observation estimated from the others. */
  public Estimates leaveOneOut(Observations observations, int threads, Progress progress) {
    double[] value = new double[observations.size()];
    Panels.run(
        observations.size(),
        PANEL,
        threads,
        "leave-one-out",
        progress,
        NearObservations.withoutOne(observations, this, value));
    return Estimates.withoutVariance(value);
  }
}
