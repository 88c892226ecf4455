package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * Polygons of the rings of a shape, by which ring lies in which: a ring in no other is a shell, a
 * ring in a shell is a hole of it, a ring in a hole is a shell again. Which way they wind is left
 * aside, since much software gets it wrong.
 */
final class ShpPolygons {
  private ShpPolygons() {}

  private record Nested(LinearRing ring, double area, Nested parent, List<LinearRing> holes) {
    boolean isShell() {
      return parent == null || !parent.isShell();
    }
  }

  static Geometry of(GeometryFactory factory, List<Coordinate[]> rings) {
    List<Nested> nested = new ArrayList<>();
    List<LinearRing> closed = new ArrayList<>();
    for (int i = 0; i < rings.size(); i++) {
      LinearRing ring = Rings.closed(factory, rings.get(i), i + 1);
      if (!ring.isEmpty()) {
        closed.add(ring);
      }
    }
    // largest first: whatever a ring lies in has been placed before it
    closed.sort(Comparator.comparingDouble((LinearRing r) -> -area(factory, r)));
    for (LinearRing ring : closed) {
      Nested parent = smallestRound(ring, nested);
      Nested placed = new Nested(ring, area(factory, ring), parent, new ArrayList<>());
      nested.add(placed);
      if (!placed.isShell()) {
        parent.holes().add(ring);
      }
    }
    Polygon[] polygons =
        nested.stream()
            .filter(Nested::isShell)
            .map(s -> factory.createPolygon(s.ring(), s.holes().toArray(LinearRing[]::new)))
            .toArray(Polygon[]::new);
    return polygons.length == 1 ? polygons[0] : factory.createMultiPolygon(polygons);
  }

  private static double area(GeometryFactory factory, LinearRing ring) {
    return factory.createPolygon(ring).getArea();
  }

  private static Nested smallestRound(LinearRing ring, List<Nested> placed) {
    Nested best = null;
    for (Nested candidate : placed) {
      boolean smaller = best == null || candidate.area() <= best.area();
      if (smaller
          && candidate.ring().getEnvelopeInternal().covers(ring.getEnvelopeInternal())
          && isInside(ring, candidate.ring())) {
        best = candidate;
      }
    }
    return best;
  }

  /** By the first vertex that is not on the other ring itself. */
  private static boolean isInside(LinearRing ring, LinearRing other) {
    Coordinate[] around = other.getCoordinates();
    for (Coordinate c : ring.getCoordinates()) {
      int where = PointLocation.locateInRing(c, around);
      if (where != Location.BOUNDARY) {
        return where == Location.INTERIOR;
      }
    }
    return false;
  }
}
