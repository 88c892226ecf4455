package org.mottle.engine.validation;

import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.observation.Observations;

/**
 * Observations beside what was predicted for them. Immutable.
 *
 * <p>The residual is observed minus predicted; z is the residual over the root of its variance.
 * Both are NaN where there is no prediction, z also where there is no variance.
 */
public final class Predictions {
  private final double[] observed;
  private final Estimates estimates;

  private Predictions(double[] observed, Estimates estimates) {
    this.observed = observed;
    this.estimates = estimates;
  }

  static Predictions of(Observations observations, Estimates estimates) {
    return new Predictions(observations.values(), estimates);
  }

  public int size() {
    return observed.length;
  }

  public double observed(int i) {
    return observed[i];
  }

  public double predicted(int i) {
    return estimates.value(i);
  }

  public double variance(int i) {
    return estimates.variance(i);
  }

  public double residual(int i) {
    return observed[i] - estimates.value(i);
  }

  public double z(int i) {
    return residual(i) / Math.sqrt(estimates.variance(i));
  }

  /** What the prediction method reported, with the statuses. */
  public Estimates estimates() {
    return estimates;
  }

  /** Scores over all predictions; coverage of the central interval at a level, 0.9 say. */
  public Scores scores(double level) {
    return Scores.of(this, level);
  }
}
