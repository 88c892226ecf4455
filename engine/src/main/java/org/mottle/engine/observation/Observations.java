package org.mottle.engine.observation;

import java.util.List;
import org.mottle.engine.check.Check;

/**
 * Point observations: place, value, variance of the measurement, and any covariates. Immutable and
 * safe to share between threads; arrays are copied in and never handed out.
 */
public final class Observations {
  private final double[] x;
  private final double[] y;
  private final double[] value;
  private final double[] measurementVariance;
  private final List<double[]> covariates;

  private Observations(
      double[] x,
      double[] y,
      double[] value,
      double[] measurementVariance,
      List<double[]> covariates) {
    this.x = x;
    this.y = y;
    this.value = value;
    this.measurementVariance = measurementVariance;
    this.covariates = covariates;
  }

  /**
   * Observations without measurement error.
   *
   * @param x [n] east, m
   * @param y [n] north, m
   * @param value [n] what was observed
   * @throws IllegalArgumentException for arrays of unequal length or numbers that are not finite
   */
  public static Observations of(double[] x, double[] y, double[] value) {
    int n = x.length;
    requireLength("y", y.length, n);
    requireLength("value", value.length, n);
    for (int i = 0; i < n; i++) {
      Check.finite("x of observation " + (i + 1), x[i], "m");
      Check.finite("y of observation " + (i + 1), y[i], "m");
      Check.finite("value of observation " + (i + 1), value[i], "");
    }
    return new Observations(x.clone(), y.clone(), value.clone(), new double[n], List.of());
  }

  /** The same places and values with a variance of the measurement each, [n] in value squared. */
  public Observations withMeasurementVariance(double[] variance) {
    requireLength("measurement variance", variance.length, size());
    for (int i = 0; i < variance.length; i++) {
      Check.atLeast("measurement variance of observation " + (i + 1), variance[i], 0, "value²");
    }
    return new Observations(x, y, value, variance.clone(), covariates);
  }

  /** The same places and values with covariates, each column [n]. */
  public Observations withCovariates(List<double[]> columns) {
    for (int c = 0; c < columns.size(); c++) {
      double[] column = columns.get(c);
      requireLength("covariate " + (c + 1), column.length, size());
      for (int i = 0; i < column.length; i++) {
        Check.finite("covariate " + (c + 1) + " of observation " + (i + 1), column[i], "");
      }
    }
    return new Observations(
        x, y, value, measurementVariance, columns.stream().map(double[]::clone).toList());
  }

  /** The same places with other values, [n]. */
  public Observations withValues(double[] values) {
    requireLength("value", values.length, size());
    for (int i = 0; i < values.length; i++) {
      Check.finite("value of observation " + (i + 1), values[i], "");
    }
    return new Observations(x, y, values.clone(), measurementVariance, covariates);
  }

  /** The observations of these rows, in this order, with their variances and covariates. */
  public Observations rows(int... rows) {
    return new Observations(
        pick(x, rows),
        pick(y, rows),
        pick(value, rows),
        pick(measurementVariance, rows),
        covariates.stream().map(c -> pick(c, rows)).toList());
  }

  private static double[] pick(double[] from, int[] rows) {
    double[] picked = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      picked[i] = from[rows[i]];
    }
    return picked;
  }

  public int size() {
    return x.length;
  }

  public double x(int i) {
    return x[i];
  }

  public double y(int i) {
    return y[i];
  }

  public double value(int i) {
    return value[i];
  }

  public double measurementVariance(int i) {
    return measurementVariance[i];
  }

  public int covariateCount() {
    return covariates.size();
  }

  public double covariate(int column, int i) {
    return covariates.get(column)[i];
  }

  public double[] xs() {
    return x.clone();
  }

  public double[] ys() {
    return y.clone();
  }

  public double[] values() {
    return value.clone();
  }

  private static void requireLength(String what, int length, int wanted) {
    if (length != wanted) {
      throw new IllegalArgumentException(
          what + " has " + length + " entries where there are " + wanted + " observations");
    }
  }
}
