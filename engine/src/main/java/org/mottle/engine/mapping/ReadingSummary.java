package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/**
 * Plain statistics of values, each counted once: mean, standard deviation with n - 1, quartiles by
 * linear interpolation of the order statistics (type 7 of Hyndman & Fan 1996).
 *
 * @param n how many
 * @param mean % by volume
 * @param sd standard deviation, % by volume; NaN for fewer than two
 * @param minimum % by volume
 * @param lowerQuartile % by volume
 * @param median % by volume
 * @param upperQuartile % by volume
 * @param maximum % by volume
 */
public record ReadingSummary(
    int n,
    double mean,
    double sd,
    double minimum,
    double lowerQuartile,
    double median,
    double upperQuartile,
    double maximum) {

  public static ReadingSummary of(double[] values) {
    if (values.length == 0) {
      double none = Double.NaN;
      return new ReadingSummary(0, none, none, none, none, none, none, none);
    }
    DescriptiveStatistics statistics = new DescriptiveStatistics(values);
    statistics.setPercentileImpl(new Percentile().withEstimationType(EstimationType.R_7));
    return new ReadingSummary(
        values.length,
        statistics.getMean(),
        values.length > 1 ? statistics.getStandardDeviation() : Double.NaN,
        statistics.getMin(),
        statistics.getPercentile(25),
        statistics.getPercentile(50),
        statistics.getPercentile(75),
        statistics.getMax());
  }

  /** Coefficient of variation, %: 100 sd / mean. */
  public double coefficientOfVariation() {
    return 100 * sd / mean;
  }

  public double interquartileRange() {
    return upperQuartile - lowerQuartile;
  }

  static ReadingSummary of(DoubleStream values) {
    double[] sorted = values.toArray();
    Arrays.sort(sorted); // row order must not reach the last digit
    return of(sorted);
  }
}
