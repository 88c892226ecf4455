package org.mottle.engine.contour;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.contour.Faces.Face;

/**
 * Points inside a face: on a horizontal scan line, within the widest of its stretches inside. Scan
 * lines and places on them follow golden sections, so that of several points few lie on one of the
 * regular lines of a grid.
 */
final class FacePoint {
  private static final double GOLDEN = 0.6180339887498949;

  private double[] crossings = new double[16];
  private int count;

  /** The k-th point inside, or null when the scan line meets no inside. */
  Coordinate find(Face face, int k) {
    double y = face.extent().getMinY() + fraction(k + 0.88) * face.extent().getHeight();
    count = 0;
    scan(face.shell(), y);
    for (Coordinate[] hole : face.holes()) {
      scan(hole, y);
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

  private void scan(Coordinate[] ring, double y) {
    for (int i = 1; i < ring.length; i++) {
      Coordinate a = ring[i - 1];
      Coordinate b = ring[i];
      if (a.y > y != b.y > y) {
        if (count == crossings.length) {
          crossings = Arrays.copyOf(crossings, 2 * count);
        }
        crossings[count++] = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
      }
    }
  }
}
