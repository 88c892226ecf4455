package org.mottle.engine.observation;

import java.util.ArrayList;
import java.util.List;

/**
 * Averages the observations of each shared place into its first row: plain means of coordinates,
 * value and covariates; the measurement variance is that of the mean of independent measurements,
 * the sum of their variances over m². The position error is the largest of theirs: the covariance
 * of the mean with a reading elsewhere is blurred by the jitter of one of them, however many there
 * are. A common error enters the mean with the mean of its shares.
 */
final class SharedPlaces {

  private SharedPlaces() {}

  static Observations averaged(Observations from, List<int[]> groups) {
    double[] x = from.xs();
    double[] y = from.ys();
    double[] value = from.values();
    double[] variance = new double[from.size()];
    for (int i = 0; i < variance.length; i++) {
      variance[i] = from.measurementVariance(i);
    }
    List<double[]> covariates = new ArrayList<>();
    for (int c = 0; c < from.covariateCount(); c++) {
      double[] column = new double[from.size()];
      for (int i = 0; i < column.length; i++) {
        column[i] = from.covariate(c, i);
      }
      covariates.add(column);
    }
    double[] jitter = from.positionError().jitterSdM();
    List<double[]> shares = from.commonErrors().stream().map(CommonError::share).toList();
    for (int[] group : groups) {
      int first = group[0];
      double m = group.length;
      x[first] = mean(x, group);
      y[first] = mean(y, group);
      value[first] = mean(value, group);
      variance[first] = mean(variance, group) / m;
      for (double[] column : covariates) {
        column[first] = mean(column, group);
      }
      for (int row : group) {
        jitter[first] = Math.max(jitter[first], jitter[row]);
      }
      for (double[] share : shares) {
        share[first] = mean(share, group);
      }
    }
    return Observations.of(x, y, value)
        .withMeasurementVariance(variance)
        .withCovariates(covariates)
        .withPositionError(new PositionError(jitter, from.positionError().shiftSdM()))
        .withCommonErrors(withShares(from.commonErrors(), shares));
  }

  private static List<CommonError> withShares(List<CommonError> errors, List<double[]> shares) {
    List<CommonError> averaged = new ArrayList<>();
    for (int c = 0; c < errors.size(); c++) {
      averaged.add(new CommonError(shares.get(c), errors.get(c).variance()));
    }
    return averaged;
  }

  /** Deviations from the first are averaged, so that equal numbers keep their last digit. */
  private static double mean(double[] column, int[] group) {
    double sum = 0;
    for (int row : group) {
      sum += column[row] - column[group[0]];
    }
    return column[group[0]] + sum / group.length;
  }
}
