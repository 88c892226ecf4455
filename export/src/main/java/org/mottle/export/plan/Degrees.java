package org.mottle.export.plan;

import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.design.PlannedStation;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;

/**
 * Stations in WGS 84, from their metres to the millimetre, as the table of stations has them: a
 * plan that is read back from there gives the same degrees. Nine decimals: 0.1 mm on the ground.
 */
final class Degrees {
  private static final double PLACES = 1e9;
  private static final double MM = 1e3;

  private final CrsTransform toWgs84;

  Degrees(Crs working) {
    this.toWgs84 = CrsTransform.between(working, Crs.wgs84());
  }

  /** x is the longitude, y the latitude. */
  Coordinate of(PlannedStation station) {
    Coordinate place = toWgs84.apply(new Coordinate(toMm(station.x()), toMm(station.y())));
    return new Coordinate(
        Math.rint(place.x * PLACES) / PLACES, Math.rint(place.y * PLACES) / PLACES);
  }

  /** To the millimetre, as the table of stations prints it. */
  static double toMm(double metres) {
    return Math.rint(metres * MM) / MM;
  }
}
