package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Stations at equal steps along a line: the first where the line enters the ground, the last where
 * it leaves it; one alone in the middle. Only what lies on the ground counts as length, so a bunker
 * that cuts the line takes no station. O(legs × corners of the outline).
 */
final class WalkedLine {
  private WalkedLine() {}

  /** Along a line through the middle of the ground; NaN as bearing: along its long side. */
  static List<Coordinate> transect(Ground ground, double bearingDeg, int n) {
    Frame frame = ground.frame();
    double radians = Math.toRadians(bearingDeg);
    double ux = Double.isNaN(bearingDeg) ? frame.ux() : Math.sin(radians);
    double uy = Double.isNaN(bearingDeg) ? frame.uy() : Math.cos(radians);
    double reach = frame.halfLong() + frame.halfShort();
    Coordinate from = new Coordinate(frame.x() - reach * ux, frame.y() - reach * uy);
    Coordinate to = new Coordinate(frame.x() + reach * ux, frame.y() + reach * uy);
    return steps(ground, n, from, to);
  }

  /** Along four legs from corner to corner of the frame, like a W. */
  static List<Coordinate> zigzag(Ground ground, int n) {
    Frame f = ground.frame();
    Coordinate[] corners = new Coordinate[5];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = f.at(f.halfLong() * (i / 2.0 - 1), i % 2 == 0 ? f.halfShort() : -f.halfShort());
    }
    return steps(ground, n, corners);
  }

  private static List<Coordinate> steps(Ground ground, int n, Coordinate... corners) {
    List<LineString> parts = new ArrayList<>();
    for (int i = 1; i < corners.length; i++) {
      parts.addAll(clipped(ground.shape(), corners[i - 1], corners[i]));
    }
    double total = parts.stream().mapToDouble(LineString::getLength).sum();
    List<Coordinate> places = new ArrayList<>();
    for (int i = 0; i < n && total > 0; i++) {
      places.add(at(parts, n == 1 ? total / 2 : total * i / (n - 1)));
    }
    return places;
  }

  /** The parts of a leg on the ground, in the direction of the walk. */
  private static List<LineString> clipped(Geometry shape, Coordinate from, Coordinate to) {
    GeometryFactory factory = shape.getFactory();
    Geometry on = shape.intersection(factory.createLineString(new Coordinate[] {from, to}));
    List<LineString> parts = new ArrayList<>();
    for (int i = 0; i < on.getNumGeometries(); i++) {
      if (on.getGeometryN(i) instanceof LineString part && !part.isEmpty()) {
        Coordinate a = part.getCoordinateN(0);
        Coordinate b = part.getCoordinateN(part.getNumPoints() - 1);
        boolean forward = a.distance(from) <= b.distance(from);
        parts.add(factory.createLineString(new Coordinate[] {forward ? a : b, forward ? b : a}));
      }
    }
    parts.sort(
        (a, b) ->
            Double.compare(a.getCoordinateN(0).distance(from), b.getCoordinateN(0).distance(from)));
    return parts;
  }

  private static Coordinate at(List<LineString> parts, double length) {
    double left = length;
    for (LineString part : parts) {
      if (left <= part.getLength()) {
        return between(part, left / part.getLength());
      }
      left -= part.getLength();
    }
    return between(parts.get(parts.size() - 1), 1);
  }

  private static Coordinate between(LineString part, double share) {
    Coordinate a = part.getCoordinateN(0);
    Coordinate b = part.getCoordinateN(1);
    return new Coordinate(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
  }
}
