package org.mottle.engine.validation;

import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/**
 * Every observation predicted from the others, with the parameters of the method kept.
 *
 * <p>Kriging with all observations goes by the closed form: with B the upper left block of the
 * inverse of the bordered kriging matrix, the residual is (Bz)ᵢ / Bᵢᵢ and its variance 1 / Bᵢᵢ, the
 * drift being estimated anew each time (Dubrule 1983, Math. Geol. 15, 687-699); O(n³) in all.
 * Kriging with neighbourhoods and inverse distance are solved again for every observation. Blocks
 * make no sense here: observations are points, and are predicted as such.
 */
public final class LeaveOneOut {

  private LeaveOneOut() {}

  /**
   * Predictions of kriging. The variance is that of observed minus predicted, so it includes the
   * measurement variance of the observation.
   */
  public static Predictions of(
      Kriging kriging, Observations observations, int threads, Progress progress) {
    return Predictions.of(observations, kriging.leaveOneOut(observations, threads, progress));
  }

  /** Predictions of inverse distance weighting; no variance. */
  public static Predictions of(
      InverseDistance method, Observations observations, int threads, Progress progress) {
    Estimates estimates = method.leaveOneOut(observations, threads, progress);
    return Predictions.of(observations, estimates);
  }
}
