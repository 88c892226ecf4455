package org.mottle.engine.patch;

import org.locationtech.jts.geom.Polygon;

/**
 * A connected part of the dry or the wet zone.
 *
 * @param number from 1, dry before wet, large before small
 * @param kind dry or wet
 * @param geometry m
 * @param size how large
 * @param readings number of readings inside or on its edge
 * @param mean moisture, % by volume, weighted by covered area
 * @param sd standard error of the mean, % by volume; NaN when not known
 */
public record Patch(
    int number, ZoneClass kind, Polygon geometry, Size size, int readings, double mean, double sd) {

  /**
   * @param areaM2 m²
   * @param widthM diameter of the largest circle that fits in, to within a centimetre, m
   */
  public record Size(double areaM2, double widthM) {}

  public double areaM2() {
    return size.areaM2;
  }

  public double widthM() {
    return size.widthM;
  }
}
