package org.mottle.engine.kriging;

import java.util.List;
import org.mottle.engine.progress.Progress;

/**
 * Kriging fitted to observations: estimates anywhere. Immutable, shared by threads. What is
 * estimated is the soil: the measurement variance of the observations and the errors of their
 * places are not in the target, the nugget is in it at points and averages out over blocks and
 * areas.
 */
public sealed interface Predictor permits GlobalPredictor, LocalPredictor {

  /** Variances down to this share of the sill below zero are rounding and are set to zero. */
  double CLAMPED_SHARE = 1e-8;

  /** Estimates at many targets; the same bytes for any number of threads. */
  Estimates estimate(Targets targets, int threads, Progress progress);

  /**
   * Estimate of the weighted mean of the surface over a set of points that discretise an area; the
   * nugget averages out.
   *
   * @param points the discretising points, with covariates if the drift has them
   * @param weight [n] weights, at least one above 0; they are scaled to sum to 1
   */
  Estimate mean(Targets points, double[] weight);

  /**
   * Weights of every observation at every target, beside the estimates; the same bytes for any
   * number of threads. Takes n m numbers of memory.
   *
   * @throws UnsupportedOperationException for neighbourhoods, which give most observations no
   *     weight
   * @throws IllegalStateException if the system is not sound
   */
  Weights weights(Targets targets, int threads, Progress progress);

  /** Weights at these targets, on one thread. */
  default Weights weights(Targets targets) {
    return weights(targets, 1, Progress.NONE);
  }

  /** Whether the system of all observations is sound; neighbourhoods answer by each estimate. */
  Soundness soundness();

  /**
   * Generalised least squares coefficients of the drift from all observations; empty for a known
   * mean and for neighbourhoods.
   */
  List<TrendCoefficient> trendCoefficients();

  /** Condition estimate of the system of all observations; 1 where neighbourhoods are used. */
  default double conditionEstimate() {
    return soundness().conditionEstimate();
  }

  /** Estimate at one target. */
  default Estimate at(double x, double y, double... covariates) {
    List<double[]> columns =
        java.util.Arrays.stream(covariates).mapToObj(c -> new double[] {c}).toList();
    Targets target = Targets.of(new double[] {x}, new double[] {y}).withCovariates(columns);
    return estimate(target, 1, Progress.NONE).get(0);
  }

  /** Estimate of the weighted mean over points, for drifts without covariates. */
  default Estimate mean(double[] x, double[] y, double[] weight) {
    return mean(Targets.of(x, y), weight);
  }
}
