package org.mottle.engine.validation;

import java.util.List;
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

  /**
   * The mixture, in equal shares, of predictions of the same observations under different
   * parameters: the mean of the predictions, and the mean of their variances plus the variance of
   * the predictions.
   */
  public static Predictions mixture(List<Predictions> draws) {
    int n = draws.get(0).size();
    double[] mean = new double[n];
    double[] variance = new double[n];
    for (Predictions draw : draws) {
      for (int i = 0; i < n; i++) {
        mean[i] += draw.predicted(i) / draws.size();
      }
    }
    for (Predictions draw : draws) {
      for (int i = 0; i < n; i++) {
        double off = draw.predicted(i) - mean[i];
        variance[i] += (draw.variance(i) + off * off) / draws.size();
      }
    }
    return new Predictions(draws.get(0).observed, Estimates.of(mean, variance));
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
