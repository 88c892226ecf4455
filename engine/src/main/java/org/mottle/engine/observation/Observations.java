package org.mottle.engine.observation;

import java.util.List;
import org.mottle.engine.check.Check;

/**
 * Point observations: place, value, variance of the measurement, and any covariates, errors of the
 * places and errors in common. Immutable and safe to share between threads; arrays are copied in
 * and never handed out.
 */
public final class Observations {
  private final double[] x;
  private final double[] y;
  private final double[] value;
  private final double[] measurementVariance;
  private final List<double[]> covariates;
  private final Errors errors;

  /** What is wrong with places, and with several observations at once. */
  private record Errors(PositionError position, List<CommonError> common) {
    static Errors none(int n) {
      return new Errors(PositionError.none(n), List.of());
    }

    Errors rows(int[] rows) {
      return new Errors(
          new PositionError(pick(position.jitterSdM(), rows), position.shiftSdM()),
          common.stream().map(c -> new CommonError(pick(c.share(), rows), c.variance())).toList());
    }
  }

  private Observations(
      double[] x,
      double[] y,
      double[] value,
      double[] measurementVariance,
      List<double[]> covariates,
      Errors errors) {
    this.x = x;
    this.y = y;
    this.value = value;
    this.measurementVariance = measurementVariance;
    this.covariates = covariates;
    this.errors = errors;
  }

  /**
   * Observations without error of measurement or place.
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
    return new Observations(
        x.clone(), y.clone(), value.clone(), new double[n], List.of(), Errors.none(n));
  }

  /** The same places and values with a variance of the measurement each, [n] in value squared. */
  public Observations withMeasurementVariance(double[] variance) {
    requireLength("measurement variance", variance.length, size());
    for (int i = 0; i < variance.length; i++) {
      Check.atLeast("measurement variance of observation " + (i + 1), variance[i], 0, "value²");
    }
    return new Observations(x, y, value, variance.clone(), covariates, errors);
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
        x, y, value, measurementVariance, columns.stream().map(double[]::clone).toList(), errors);
  }

  /** The same observations with errors of their places, one jitter an observation. */
  public Observations withPositionError(PositionError error) {
    requireLength("position error", error.size(), size());
    return new Observations(
        x, y, value, measurementVariance, covariates, new Errors(error, errors.common()));
  }

  /** The same observations with these errors in common, in place of any before. */
  public Observations withCommonErrors(List<CommonError> common) {
    for (int c = 0; c < common.size(); c++) {
      requireLength("common error " + (c + 1), common.get(c).size(), size());
    }
    return new Observations(
        x,
        y,
        value,
        measurementVariance,
        covariates,
        new Errors(errors.position(), List.copyOf(common)));
  }

  /** The same places with other values, [n]. */
  public Observations withValues(double[] values) {
    requireLength("value", values.length, size());
    for (int i = 0; i < values.length; i++) {
      Check.finite("value of observation " + (i + 1), values[i], "");
    }
    return new Observations(x, y, values.clone(), measurementVariance, covariates, errors);
  }

  /** The observations of these rows, in this order, with all that belongs to them. */
  public Observations rows(int... rows) {
    return new Observations(
        pick(x, rows),
        pick(y, rows),
        pick(value, rows),
        pick(measurementVariance, rows),
        covariates.stream().map(c -> pick(c, rows)).toList(),
        errors.rows(rows));
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

  /** Errors of the places; none unless given. */
  public PositionError positionError() {
    return errors.position();
  }

  /** Errors that observations share; none unless given. */
  public List<CommonError> commonErrors() {
    return errors.common();
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
