package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.algorithm.locate.PointOnGeometryLocator;
import org.locationtech.jts.coverage.CoverageValidator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateFilter;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.CoverageUnion;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.mottle.engine.grid.Raster;

/** What must hold for the bands of any outline and any surface. */
final class BandLaws {
  private BandLaws() {}

  static void check(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    tile(what, outline, bands);
    valuesLieInTheirBand(what, outline, surface, limits, bands);
  }

  static void tile(String what, Geometry outline, List<Band> bands) {
    Geometry[] parts = bands.stream().map(Band::geometry).toArray(Geometry[]::new);
    double area = 0;
    for (Geometry part : parts) {
      assertThat(part.isValid()).as("%s: band is valid", what).isTrue();
      assertThat(part.isEmpty()).as("%s: band is not empty", what).isFalse();
      area += part.getArea();
    }
    assertThat(area).as("%s: areas sum", what).isCloseTo(outline.getArea(), within(0.01));
    edgesMatch(what, parts);
    if (CoverageValidator.hasInvalidResult(CoverageValidator.validate(parts)))
      System.out.println("COV " + what);
    Geometry union = CoverageUnion.union(outline.getFactory().createGeometryCollection(parts));
    double difference = OverlayNGRobust.overlay(union, outline, OverlayNG.SYMDIFFERENCE).getArea();
    assertThat(difference)
        .as("%s: symmetric difference with the outline", what)
        .isLessThan(1e-6 * outline.getLength());
  }

  /** A segment is the edge of one polygon, or of two that run along it in opposite directions. */
  static void edgesMatch(String what, Geometry[] parts) {
    Map<LineSegment, Integer> balance = new HashMap<>();
    Map<LineSegment, Integer> count = new HashMap<>();
    for (Geometry part : parts) {
      for (Coordinate[] ring : insideOnLeft(part)) {
        for (int i = 1; i < ring.length; i++) {
          LineSegment segment = new LineSegment(ring[i - 1], ring[i]);
          segment.normalize();
          balance.merge(segment, segment.p0.equals2D(ring[i]) ? 1 : -1, Integer::sum);
          count.merge(segment, 1, Integer::sum);
        }
      }
    }
    count.forEach(
        (segment, n) -> {
          boolean alone = n == 1;
          boolean between = n == 2 && balance.get(segment) == 0;
          assertThat(alone || between).as("%s: edge %s of %d polygons", what, segment, n).isTrue();
        });
  }

  private static List<Coordinate[]> insideOnLeft(Geometry part) {
    List<Coordinate[]> rings = new ArrayList<>();
    for (int p = 0; p < part.getNumGeometries(); p++) {
      Polygon polygon = (Polygon) part.getGeometryN(p);
      rings.add(oriented(polygon.getExteriorRing(), true));
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        rings.add(oriented(polygon.getInteriorRingN(h), false));
      }
    }
    return rings;
  }

  private static Coordinate[] oriented(LinearRing ring, boolean counterClockwise) {
    return Orientation.isCCW(ring.getCoordinateSequence()) == counterClockwise
        ? ring.getCoordinates()
        : ring.reverse().getCoordinates();
  }

  private static org.assertj.core.data.Offset<Double> within(double tolerance) {
    return org.assertj.core.data.Offset.offset(tolerance);
  }

  /** Random points more than 3 mm from every band's edge are in the band of their value. */
  static void valuesLieInTheirBand(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    Random random = new Random(7);
    LinearSurface linear = new LinearSurface(surface);
    Envelope extent = outline.getEnvelopeInternal();
    PointOnGeometryLocator[] locators =
        bands.stream()
            .map(b -> new IndexedPointInAreaLocator(b.geometry()))
            .toArray(PointOnGeometryLocator[]::new);
    for (int k = 0; k < 400; k++) {
      Coordinate p =
          new Coordinate(
              extent.getMinX() + random.nextDouble() * extent.getWidth(),
              extent.getMinY() + random.nextDouble() * extent.getHeight());
      double value = linear.value(p.x, p.y);
      double slack = 0;
      for (int corner = 0; corner < 4; corner++) {
        double near =
            linear.value(
                p.x + ((corner & 1) == 0 ? -0.003 : 0.003),
                p.y + ((corner & 2) == 0 ? -0.003 : 0.003));
        slack = Double.isNaN(near) ? slack : Math.max(slack, Math.abs(near - value));
      }
      int hits = 0;
      for (int b = 0; b < locators.length; b++) {
        if (locators[b].locate(p) == Location.INTERIOR) {
          hits++;
          int index = bands.get(b).index();
          if (index == Band.NO_VALUE) {
            continue;
          }
          assertThat(value).as("%s: a band with values has them at %s", what, p).isNotNaN();
          double low = index == 0 ? Double.NEGATIVE_INFINITY : limits[index - 1];
          double high = index == limits.length ? Double.POSITIVE_INFINITY : limits[index];
          assertThat(value)
              .as("%s: value in band %d at %s", what, index, p)
              .isBetween(low - slack - 5e-8, high + slack + 5e-8);
        }
      }
      assertThat(hits).as("%s: bands at %s", what, p).isLessThanOrEqualTo(1);
    }
  }

  /** Written with nine decimals of a degree, all polygons are still valid. */
  static int brokenInDegrees(List<Band> bands) {
    int broken = 0;
    for (Band band : bands) {
      Geometry degrees = band.geometry().copy();
      degrees.apply(
          (CoordinateFilter)
              c -> {
                c.x = Math.rint((c.x - 500000) / 74_600 * 1e9) / 1e9;
                c.y = Math.rint(c.y / 111_190 * 1e9) / 1e9;
              });
      degrees.geometryChanged();
      for (int i = 0; i < degrees.getNumGeometries(); i++) {
        broken += degrees.getGeometryN(i).isValid() ? 0 : 1;
      }
    }
    return broken;
  }

  static double shortestSegment(List<Band> bands) {
    double shortest = Double.POSITIVE_INFINITY;
    for (Band band : bands) {
      Coordinate[] all = band.geometry().getCoordinates();
      for (int i = 1; i < all.length; i++) {
        double d = all[i].distance(all[i - 1]);
        shortest = d > 0 ? Math.min(shortest, d) : shortest;
      }
    }
    return shortest;
  }

  /** Lines at the limits run along the edges of the bands, vertex for vertex. */
  static void isoLinesLieOnEdges(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    Set<Coordinate> vertices = new HashSet<>();
    for (Band band : bands) {
      vertices.addAll(Arrays.asList(band.geometry().getCoordinates()));
    }
    for (IsoLine line : IsoLines.at(outline, surface, limits, limits)) {
      for (Coordinate c : line.geometry().getCoordinates()) {
        assertThat(vertices.contains(c)).as("%s: level %s at %s", what, line.level(), c).isTrue();
      }
    }
  }
}
