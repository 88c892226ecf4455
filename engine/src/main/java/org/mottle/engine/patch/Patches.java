package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.grid.Raster;

/**
 * The patches of a green on a map without probabilities: the connected parts of its dry and wet
 * zones. Parts that touch in a point only are two patches. Numbered from 1: dry before wet, large
 * before small, north before south, west before east. With probabilities see {@link Marks}.
 */
public final class Patches {
  private static final double TOLERANCE = 0.005;

  private static final Comparator<Patch> ORDER =
      Comparator.comparing(Patch::kind)
          .thenComparing(Comparator.comparingDouble(Patch::areaM2).reversed())
          .thenComparing(p -> -p.geometry().getEnvelopeInternal().getMaxY())
          .thenComparing(p -> p.geometry().getEnvelopeInternal().getMinX());

  private Patches() {}

  /**
   * @param zones of the green
   * @param surface the zones were made from
   * @param readings where the readings were taken, m
   * @param regionMean gives the standard error of a patch's mean
   */
  public static List<Patch> of(
      List<Zone> zones, Raster surface, List<Coordinate> readings, RegionMean regionMean) {
    Moisture moisture = Moisture.of(surface, regionMean);
    List<Patch> patches = new ArrayList<>();
    for (Zone zone : zones) {
      if (zone.cls() == ZoneClass.DRY || zone.cls() == ZoneClass.WET) {
        for (int i = 0; i < zone.geometry().getNumGeometries(); i++) {
          Polygon part = (Polygon) zone.geometry().getGeometryN(i);
          RegionMean.MeanAndSd mean = moisture.of(part);
          patches.add(
              new Patch(
                  0,
                  zone.cls(),
                  part,
                  size(part),
                  readingsIn(part, readings),
                  mean.mean(),
                  mean.sd(),
                  Optional.empty()));
        }
      }
    }
    return numbered(patches);
  }

  /** In order, with their numbers. */
  static List<Patch> numbered(List<Patch> patches) {
    List<Patch> sorted = new ArrayList<>(patches);
    sorted.sort(ORDER);
    sorted.replaceAll(patch -> patch.numbered(sorted.indexOf(patch) + 1));
    return sorted;
  }

  static Patch.Size size(Polygon part) {
    return new Patch.Size(part.getArea(), 2 * InscribedCircle.radius(part, TOLERANCE));
  }

  static int readingsIn(Polygon part, List<Coordinate> readings) {
    return (int) readings.stream().filter(reading -> holds(part, reading)).count();
  }

  /** Whether a point lies in a polygon or on its edge. */
  static boolean holds(Polygon part, Coordinate point) {
    return part.getEnvelopeInternal().contains(point)
        && SimplePointInAreaLocator.locate(point, part) != Location.EXTERIOR;
  }
}
