package org.mottle.engine.kriging;

/**
 * One estimate.
 *
 * @param value of the soil; NaN unless the status is {@code ESTIMATED}
 * @param variance of the estimation error, value²; never negative; NaN where none is known
 * @param status whether there is a value
 */
public record Estimate(double value, double variance, CellStatus status) {

  static Estimate none(CellStatus status) {
    return new Estimate(Double.NaN, Double.NaN, status);
  }

  public double standardDeviation() {
    return Math.sqrt(variance);
  }

  public boolean estimated() {
    return status == CellStatus.ESTIMATED;
  }
}
