package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.Raster;

/**
 * The patches of a green: the connected parts of its dry and wet zones. Parts that touch in a point
 * only are two patches. Numbered from 1: dry before wet, large before small, north before south,
 * west before east.
 */
public final class Patches {
  private static final double TOLERANCE = 0.005;

  private final Raster surface;
  private final LinearSurface linear;
  private final List<Coordinate> readings;
  private final RegionMean regionMean;

  private Patches(Raster surface, List<Coordinate> readings, RegionMean regionMean) {
    this.surface = surface;
    this.linear = new LinearSurface(surface);
    this.readings = readings;
    this.regionMean = regionMean;
  }

  private record Part(ZoneClass kind, Polygon geometry, double area, Coordinate northWest) {
    static Part of(ZoneClass kind, Polygon geometry) {
      Coordinate corner =
          new Coordinate(
              geometry.getEnvelopeInternal().getMinX(), geometry.getEnvelopeInternal().getMaxY());
      return new Part(kind, geometry, geometry.getArea(), corner);
    }
  }

  private static final Comparator<Part> ORDER =
      Comparator.comparing(Part::kind)
          .thenComparing(Comparator.comparingDouble(Part::area).reversed())
          .thenComparing(part -> -part.northWest.y)
          .thenComparing(part -> part.northWest.x);

  /**
   * @param zones of the green
   * @param surface the zones were made from
   * @param readings where the readings were taken, m
   * @param regionMean gives the standard error of a patch's mean
   */
  public static List<Patch> of(
      List<Zone> zones, Raster surface, List<Coordinate> readings, RegionMean regionMean) {
    List<Part> parts = new ArrayList<>();
    for (Zone zone : zones) {
      if (zone.cls() == ZoneClass.DRY || zone.cls() == ZoneClass.WET) {
        for (int i = 0; i < zone.geometry().getNumGeometries(); i++) {
          parts.add(Part.of(zone.cls(), (Polygon) zone.geometry().getGeometryN(i)));
        }
      }
    }
    parts.sort(ORDER);
    Patches patches = new Patches(surface, List.copyOf(readings), regionMean);
    List<Patch> numbered = new ArrayList<>();
    for (Part part : parts) {
      numbered.add(patches.patch(numbered.size() + 1, part));
    }
    return numbered;
  }

  private Patch patch(int number, Part part) {
    Ground ground = Ground.of(part.geometry, surface);
    return new Patch(
        number,
        part.kind,
        part.geometry,
        new Patch.Size(part.area, 2 * InscribedCircle.radius(part.geometry, TOLERANCE)),
        readingsIn(part.geometry),
        ground.mean(linear),
        ground.sd(regionMean, surface.grid().cell()));
  }

  private int readingsIn(Polygon polygon) {
    int count = 0;
    for (Coordinate reading : readings) {
      boolean near = polygon.getEnvelopeInternal().contains(reading);
      if (near && SimplePointInAreaLocator.locate(reading, polygon) != Location.EXTERIOR) {
        count++;
      }
    }
    return count;
  }
}
