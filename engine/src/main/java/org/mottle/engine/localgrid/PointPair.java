package org.mottle.engine.localgrid;

import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.check.Check;

/**
 * One point known in two systems: a control of a site, a mark seen in an image.
 *
 * @param name as the site names it
 * @param from place in the system of the survey, m
 * @param to place in the other system, m
 */
public record PointPair(String name, Coordinate from, Coordinate to) {
  public PointPair {
    from = new Coordinate(finite(from.x), finite(from.y));
    to = new Coordinate(finite(to.x), finite(to.y));
  }

  private static double finite(double value) {
    return Check.finite("coordinate of a point pair", value, "m");
  }
}
