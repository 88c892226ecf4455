package org.mottle.engine.localgrid;

/**
 * What is left at one point: where it was given, less where the fit puts it.
 *
 * @param name of the point
 * @param east m
 * @param north m
 */
public record Residual(String name, double east, double north) {
  /** m. */
  public double length() {
    return Math.hypot(east, north);
  }
}
