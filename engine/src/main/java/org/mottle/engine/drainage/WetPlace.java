package org.mottle.engine.drainage;

import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.check.Check;

/**
 * A place that stays wet, as {@code season} finds it.
 *
 * @param greenId the green
 * @param placeId number of the place on the green
 * @param outline polygon, m
 * @param areaM2 its area
 * @param wetShare share of surveys in which it was wet; NaN when not known
 */
public record WetPlace(
    String greenId, String placeId, Geometry outline, double areaM2, double wetShare) {
  public WetPlace {
    Check.above("area of place " + placeId, areaM2, 0, "m²");
    outline = outline.copy();
  }
}
