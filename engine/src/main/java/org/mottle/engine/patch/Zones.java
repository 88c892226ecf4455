package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Band;
import org.mottle.engine.contour.Bands;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.survey.TargetBand;

/**
 * Zones of a green: {@link Bands} between the limits of its target band, so they tile the green
 * without gap or overlap and share their edges. The mean of a zone is that of the interpolated
 * surface, cell by cell at the centroid of the covered part, weighted by covered area.
 */
public final class Zones {
  private Zones() {}

  /**
   * @param outline of the green, m
   * @param surface moisture at cell centres, % by volume; wide enough for every point of the
   *     outline, as {@link org.mottle.engine.grid.GreenCells#surface} makes it
   * @param band the limits
   * @param regionMean gives the standard error of a zone's mean
   * @return the zones that exist: ground without values, dry, in band, wet
   */
  public static List<Zone> of(
      Geometry outline, Raster surface, TargetBand band, RegionMean regionMean) {
    return of(Contours.of(outline, surface), surface, band, regionMean);
  }

  /** The same from contours that exist already, made from the outline and the surface. */
  public static List<Zone> of(
      Contours contours, Raster surface, TargetBand band, RegionMean regionMean) {
    List<Zone> zones = new ArrayList<>();
    for (Band part : contours.bands(band.lowPct(), band.highPct())) {
      zones.add(zone(part, surface, contours.surface(), regionMean));
    }
    return zones;
  }

  private static Zone zone(Band part, Raster surface, LinearSurface linear, RegionMean regionMean) {
    Geometry geometry = part.geometry();
    if (part.index() == Band.NO_VALUE) {
      return new Zone(ZoneClass.NO_VALUE, geometry, geometry.getArea(), Double.NaN, Double.NaN);
    }
    Ground ground = Ground.of(geometry, surface);
    return new Zone(
        ZoneClass.values()[part.index()],
        geometry,
        geometry.getArea(),
        ground.mean(linear),
        ground.sd(regionMean, surface.grid().cell()));
  }
}
