package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
  private static final int PROBES = 200;

  private BandLaws() {}

  static void check(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    tile(what, outline, bands);
    valuesLieInTheirBand(what, outline, surface, limits, bands);
  }

  /** Valid bands without gap or overlap that make up the outline and share edges exactly. */
  static void tile(String what, Geometry outline, List<Band> bands) {
    Geometry[] parts = bands.stream().map(Band::geometry).toArray(Geometry[]::new);
    double area = 0;
    for (Geometry part : parts) {
      assertThat(part.isValid()).as("%s: band is valid", what).isTrue();
      assertThat(part.isEmpty()).as("%s: band is empty", what).isFalse();
      area += part.getArea();
    }
    assertThat(area).as("%s: areas sum", what).isCloseTo(outline.getArea(), within(0.01));
    edgesMatch(what, parts);
    Geometry union = CoverageUnion.union(outline.getFactory().createGeometryCollection(parts));
    double difference = OverlayNGRobust.overlay(union, outline, OverlayNG.SYMDIFFERENCE).getArea();
    assertThat(difference)
        .as("%s: symmetric difference with the outline", what)
        .isLessThan(1e-6 * outline.getLength());
  }

  /**
   * The coverage validator of JTS finds nothing. It looks at one ring at a time and so reports
   * polygons whose hole touches their shell on the edge of the coverage; those come up only where a
   * level touches the outline in a point.
   */
  static void validatorFindsNothing(String what, List<Band> bands) {
    Geometry[] parts = bands.stream().map(Band::geometry).toArray(Geometry[]::new);
    for (Geometry finding : CoverageValidator.validate(parts)) {
      assertThat((Object) finding).as("%s: coverage", what).isNull();
    }
  }

  /** A segment is the edge of one polygon, or of two that run along it in opposite directions. */
  private static void edgesMatch(String what, Geometry[] parts) {
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
          assertThat(alone || between).as("%s: %s is in %d polygons", what, segment, n).isTrue();
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

  /** Random points are in the band of a value that the surface has within 3 mm of them. */
  private static void valuesLieInTheirBand(
      String what, Geometry outline, Raster surface, double[] limits, List<Band> bands) {
    Random random = new Random(7);
    LinearSurface linear = new LinearSurface(surface);
    Envelope extent = outline.getEnvelopeInternal();
    PointOnGeometryLocator[] locators = locators(bands);
    for (int k = 0; k < PROBES; k++) {
      Coordinate p =
          new Coordinate(
              extent.getMinX() + random.nextDouble() * extent.getWidth(),
              extent.getMinY() + random.nextDouble() * extent.getHeight());
      int hits = 0;
      for (int b = 0; b < locators.length; b++) {
        if (locators[b].locate(p) == Location.INTERIOR) {
          hits++;
          valueLiesIn(what, linear, p, limits, bands.get(b).index());
        }
      }
      assertThat(hits).as("%s: bands at %s", what, p).isLessThanOrEqualTo(1);
    }
  }

  private static PointOnGeometryLocator[] locators(List<Band> bands) {
    return bands.stream()
        .map(b -> new IndexedPointInAreaLocator(b.geometry()))
        .toArray(PointOnGeometryLocator[]::new);
  }

  private static void valueLiesIn(
      String what, LinearSurface surface, Coordinate p, double[] limits, int index) {
    double value = surface.value(p.x, p.y);
    if (index == Band.NO_VALUE || Double.isNaN(value)) {
      assertThat(value).as("%s: value in band %d at %s", what, index, p).isNaN();
      assertThat(index).as("%s: band at %s without value", what, p).isEqualTo(Band.NO_VALUE);
      return;
    }
    double slack = changeNearby(surface, p);
    double low = index == 0 ? Double.NEGATIVE_INFINITY : limits[index - 1];
    double high = index == limits.length ? Double.POSITIVE_INFINITY : limits[index];
    assertThat(value)
        .as("%s: value in band %d at %s", what, index, p)
        .isBetween(low - slack - 5e-8, high + slack + 5e-8);
  }

  /** The most the surface changes within the distance that a line may be off: a fiftieth cell. */
  static double changeNearby(LinearSurface surface, Coordinate p) {
    double reach = 0.003 + surface.cell() / 50;
    double value = surface.value(p.x, p.y);
    double change = 0;
    for (int direction = 0; direction < 16; direction++) {
      double dx = reach * Math.cos(direction * Math.PI / 8);
      double dy = reach * Math.sin(direction * Math.PI / 8);
      double there = Math.abs(surface.value(p.x + dx, p.y + dy) - value);
      change = there > change ? there : change;
    }
    return change;
  }

  /** Lines at the limits run along the edges of the bands, vertex for vertex. */
  static void isoLinesLieOnEdges(String what, Contours contours, double[] limits) {
    Set<Coordinate> vertices = new HashSet<>();
    for (Band band : contours.bands(limits)) {
      vertices.addAll(Arrays.asList(band.geometry().getCoordinates()));
    }
    for (IsoLine line : IsoLines.at(contours, limits, limits)) {
      for (Coordinate c : line.geometry().getCoordinates()) {
        assertThat(vertices.contains(c)).as("%s: level %s at %s", what, line.level(), c).isTrue();
      }
    }
  }

  /** How many polygons nine decimals of a degree make invalid. */
  static int brokenInDegrees(List<Band> bands) {
    int broken = 0;
    for (Band band : bands) {
      Geometry degrees = band.geometry().copy();
      degrees.apply(
          (CoordinateFilter)
              c -> {
                c.x = Math.rint((c.x - 500_000) / 74_600 * 1e9) / 1e9;
                c.y = Math.rint(c.y / 111_190 * 1e9) / 1e9;
              });
      degrees.geometryChanged();
      for (int i = 0; i < degrees.getNumGeometries(); i++) {
        broken += degrees.getGeometryN(i).isValid() ? 0 : 1;
      }
    }
    return broken;
  }

  /** The shortest segment of all bands, m. */
  static double shortestSegment(List<Band> bands) {
    double shortest = Double.POSITIVE_INFINITY;
    for (Band band : bands) {
      for (Coordinate[] ring : insideOnLeft(band.geometry())) {
        for (int i = 1; i < ring.length; i++) {
          shortest = Math.min(shortest, ring[i].distance(ring[i - 1]));
        }
      }
    }
    return shortest;
  }
}
