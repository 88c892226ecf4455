package org.mottle.engine.irrigation;

/**
 * 90 % interval; NaN where it is not known.
 *
 * @param low 5 % below
 * @param high 5 % above
 */
public record Interval(double low, double high) {
  static final Interval UNKNOWN = new Interval(Double.NaN, Double.NaN);

  public boolean known() {
    return !Double.isNaN(low) && !Double.isNaN(high);
  }
}
