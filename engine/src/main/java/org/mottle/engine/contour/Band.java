package org.mottle.engine.contour;

import org.locationtech.jts.geom.Geometry;

/**
 * The ground of an outline whose values lie between two limits.
 *
 * @param index 0 below the first limit, 1 between the first and the second, and so on; {@link
 *     #NO_VALUE} where the surface has no values
 * @param geometry polygon or multipolygon, valid, m
 */
public record Band(int index, Geometry geometry) {
  /** Index of the ground without values. */
  public static final int NO_VALUE = -1;
}
