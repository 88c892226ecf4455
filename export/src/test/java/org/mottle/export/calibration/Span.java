package org.mottle.export.calibration;

/**
 * An interval, ends included.
 *
 * @param low lower end
 * @param high upper end
 */
record Span(double low, double high) {
  boolean holds(double value) {
    return value >= low && value <= high;
  }
}
