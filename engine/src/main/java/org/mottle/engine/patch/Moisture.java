package org.mottle.engine.patch;

import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.Raster;

/**
 * The mapped moisture, asked for the mean of pieces of ground. Immutable.
 *
 * @param surface at cell centres, % by volume
 * @param linear the same, interpolated
 * @param estimator gives the standard error of a mean
 */
record Moisture(Raster surface, LinearSurface linear, RegionMean estimator) {

  static Moisture of(Raster surface, RegionMean estimator) {
    return new Moisture(surface, new LinearSurface(surface), estimator);
  }

  RegionMean.MeanAndSd of(Geometry area) {
    Ground ground = Ground.of(area, surface);
    return new RegionMean.MeanAndSd(
        ground.mean(linear), ground.sd(estimator, surface.grid().cell()));
  }
}
