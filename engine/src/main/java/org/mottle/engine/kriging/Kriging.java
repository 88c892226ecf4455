package org.mottle.engine.kriging;

import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.NestedModel;

/**
 * A specification of kriging, to be fitted to observations.
 *
 * @param model variogram; its nugget is variance of the soil at short distance
 * @param drift what is assumed of the mean
 * @param neighbourhood which observations take part in an estimate
 * @param support what an estimate stands for
 */
public record Kriging(
    NestedModel model, Drift drift, Neighbourhood neighbourhood, BlockSupport support) {

  public Kriging {
    if (!model.bounded() && !drift.unbiased()) {
      throw new IllegalArgumentException(
          "simple kriging needs a variogram that levels off, was "
              + model
              + "; use ordinary kriging, or a bounded model");
    }
  }

  /** Ordinary kriging at points from all observations. */
  public static Kriging ordinary(NestedModel model) {
    return new Kriging(model, Drift.constant(), Neighbourhood.ALL, BlockSupport.POINT);
  }

  public Kriging with(Drift newDrift) {
    return new Kriging(model, newDrift, neighbourhood, support);
  }

  public Kriging with(Neighbourhood newNeighbourhood) {
    return new Kriging(model, drift, newNeighbourhood, support);
  }

  public Kriging with(BlockSupport newSupport) {
    return new Kriging(model, drift, neighbourhood, newSupport);
  }

  /**
   * Assembles and factors the system. Observations that share a place should have been resolved
   * before. A system that cannot be solved is told by {@link Predictor#soundness()}, not thrown.
   *
   * <p>Errors of places and errors in common that the observations carry are taken into account as
   * {@link KrigingSystem} says.
   *
   * @throws IllegalArgumentException if the drift wants covariates and there are none, if there are
   *     too many observations for one system, if there are errors of places and the model has no
   *     sill or is anisotropic or the drift changes with place, or if there are such errors or
   *     errors in common and a neighbourhood
   */
  public Predictor fit(Observations observations) {
    if (neighbourhood.global(observations.size())) {
      return new GlobalPredictor(
          new KrigingSystem(model, drift, observations, KrigingSystem.PSEUDO_SILL), support);
    }
    return new LocalPredictor(this, observations);
  }

  /** The system of all observations, whatever the neighbourhood. */
  public KrigingSystem system(Observations observations) {
    return new KrigingSystem(model, drift, observations, KrigingSystem.PSEUDO_SILL);
  }

  /**
   * Every observation, as a point, estimated from the others. The variance is that of observed
   * minus estimated, the measurement variance of the observation included.
   */
  public Estimates leaveOneOut(Observations observations, int threads, Progress progress) {
    if (neighbourhood.global(observations.size())) {
      return ClosedForm.leaveOneOut(system(observations), observations);
    }
    return new LocalPredictor(with(BlockSupport.POINT), observations)
        .estimateWithout(threads, progress);
  }
}
