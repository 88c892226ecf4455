package org.mottle.engine.validation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.mottle.engine.check.Check;

/**
 * How good predictions are. Residual = observed - predicted; z = residual / its standard deviation.
 * With a right model the mean error is near 0, MSDR near 1, the median of z² near 0.455 and the
 * coverage near its level (Webster & Oliver 2007, ch. 8).
 *
 * @param predictions how many there were
 * @param missing observations without a prediction
 * @param meanError of the residuals
 * @param rootMeanSquareError of the residuals
 * @param meanAbsoluteError of the residuals
 * @param meanSquaredDeviationRatio mean z², MSDR; NaN without variances
 * @param medianSquaredZ NaN without variances
 * @param coverage share of observations inside the central interval at the level asked for, by the
 *     normal distribution; NaN without variances
 */
public record Scores(
    int predictions,
    int missing,
    double meanError,
    double rootMeanSquareError,
    double meanAbsoluteError,
    double meanSquaredDeviationRatio,
    double medianSquaredZ,
    double coverage) {

  static Scores of(Predictions predictions, double level) {
    return pooled(List.of(predictions), level);
  }

  /** Scores over several sets of predictions taken together, each prediction counting once. */
  public static Scores pooled(List<Predictions> sets, double level) {
    Check.above("level of an interval", level, 0, "");
    Check.within("level of an interval", level, 0, 1, "");
    double[] residual =
        sets.stream()
            .flatMapToDouble(p -> IntStream.range(0, p.size()).mapToDouble(p::residual))
            .filter(r -> !Double.isNaN(r))
            .toArray();
    double[] squaredZ =
        sets.stream()
            .flatMapToDouble(p -> IntStream.range(0, p.size()).mapToDouble(p::z))
            .filter(z -> !Double.isNaN(z))
            .map(z -> z * z)
            .toArray();
    int all = sets.stream().mapToInt(Predictions::size).sum();
    double bound = level == 1 ? Double.POSITIVE_INFINITY : quantile((1 + level) / 2);
    return new Scores(
        residual.length,
        all - residual.length,
        mean(residual),
        Math.sqrt(mean(Arrays.stream(residual).map(r -> r * r).toArray())),
        mean(Arrays.stream(residual).map(Math::abs).toArray()),
        mean(squaredZ),
        median(squaredZ),
        mean(Arrays.stream(squaredZ).map(z2 -> z2 <= bound * bound ? 1 : 0).toArray()));
  }

  private static double quantile(double probability) {
    return new NormalDistribution(null, 0, 1).inverseCumulativeProbability(probability);
  }

  private static double mean(double[] values) {
    return values.length == 0 ? Double.NaN : Arrays.stream(values).sum() / values.length;
  }

  private static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int middle = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
  }
}
