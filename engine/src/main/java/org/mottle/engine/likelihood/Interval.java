package org.mottle.engine.likelihood;

/**
 * A parameter with its interval.
 *
 * @param low lower end; at the end of what was searched when the readings set no limit
 * @param best value of the greatest likelihood
 * @param high upper end, likewise
 */
public record Interval(double low, double best, double high) {

  public boolean holds(double value) {
    return low <= value && value <= high;
  }
}
