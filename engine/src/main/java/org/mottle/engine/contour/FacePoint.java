package org.mottle.engine.contour;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

/**
 * Points inside a polygon: on a horizontal scan line, within the widest of its stretches inside.
 * Scan lines and places on them follow golden sections, so that of several points few lie on one of
 * the regular lines of a grid.
 */
final class FacePoint {
  private static final double GOLDEN = 0.6180339887498949;

  private double[] crossings = new double[16];
  private int count;

  /** The k-th point inside, or null when the scan line meets no inside. */
  Coordinate find(Polygon polygon, int k) {
    Envelope extent = polygon.getEnvelopeInternal();
    double y = extent.getMinY() + fraction(k + 0.88) * extent.getHeight();
    count = 0;
    scan(polygon.getExteriorRing(), y);
    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
      scan(polygon.getInteriorRingN(h), y);
    }
    Arrays.sort(crossings, 0, count);
    int widest = -1;
    double width = 0;
    for (int i = 0; i + 1 < count; i += 2) {
      if (crossings[i + 1] - crossings[i] > width) {
        width = crossings[i + 1] - crossings[i];
        widest = i;
      }
    }
    if (widest < 0) {
      return null;
    }
    return new Coordinate(crossings[widest] + (0.3 + 0.4 * fraction(k * 2 + 1)) * width, y);
  }

  private static double fraction(double k) {
    double turned = k * GOLDEN;
    return turned - Math.floor(turned);
  }

  private void scan(LinearRing ring, double y) {
    CoordinateSequence points = ring.getCoordinateSequence();
    double x0 = points.getX(0);
    double y0 = points.getY(0);
    for (int i = 1; i < points.size(); i++) {
      double x1 = points.getX(i);
      double y1 = points.getY(i);
      if (y0 > y != y1 > y) {
        if (count == crossings.length) {
          crossings = Arrays.copyOf(crossings, 2 * count);
        }
        crossings[count++] = x0 + (y - y0) / (y1 - y0) * (x1 - x0);
      }
      x0 = x1;
      y0 = y1;
    }
  }
}
