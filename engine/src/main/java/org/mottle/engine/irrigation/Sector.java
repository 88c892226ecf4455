package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** The ground a head's throw reaches, as a polygon: chords of 2 degrees, inside the true arc. */
final class Sector {
  private static final double STEP_DEG = 2;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private Sector() {}

  static Polygon of(Head head) {
    double sweep = head.sweep();
    int steps = (int) Math.ceil(sweep / STEP_DEG);
    List<Coordinate> ring = new ArrayList<>();
    boolean circle = sweep == 360;
    if (!circle) {
      ring.add(new Coordinate(head.x(), head.y()));
    }
    for (int i = 0; i <= steps - (circle ? 1 : 0); i++) {
      double bearing = Math.toRadians(head.arcFrom() + sweep * i / steps);
      ring.add(
          new Coordinate(
              head.x() + head.radiusM() * Math.sin(bearing),
              head.y() + head.radiusM() * Math.cos(bearing)));
    }
    ring.add(ring.get(0).copy());
    return FACTORY.createPolygon(ring.toArray(Coordinate[]::new));
  }
}
