package org.mottle.export.read;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;

/** Rings that are what they claim to be. */
final class Rings {
  private Rings() {}

  /** A ring of four positions or more whose ends meet; the message names the ring otherwise. */
  static LinearRing closed(GeometryFactory factory, Coordinate[] ring, int number) {
    if (ring.length == 0) {
      return factory.createLinearRing();
    }
    if (!ring[0].equals2D(ring[ring.length - 1])) {
      throw new IllegalArgumentException(
          "ring %d is not closed: it starts at %s and ends at %s; repeat the first position at its end"
              .formatted(number, place(ring[0]), place(ring[ring.length - 1])));
    }
    if (ring.length < 4) {
      throw new IllegalArgumentException(
          "ring %d has %d positions; a ring needs at least 4, the first repeated at the end"
              .formatted(number, ring.length));
    }
    return factory.createLinearRing(ring);
  }

  static String place(Coordinate c) {
    return "(" + c.x + ", " + c.y + ")";
  }
}
