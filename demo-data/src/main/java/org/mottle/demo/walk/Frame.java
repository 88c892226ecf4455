package org.mottle.demo.walk;

import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;

/**
 * The rectangle of smallest area round a ring, to half a degree, its first axis the longer.
 *
 * @param corner where both axes start
 * @param along unit vector of the longer side
 * @param width length of the longer side, m
 * @param height length of the shorter side, m
 */
record Frame(Point corner, Point along, double width, double height) {

  static Frame smallest(Ring ring) {
    Frame best = null;
    for (int half = 0; half < 360; half++) {
      double a = Math.PI * half / 360;
      Frame frame = turned(ring, StrictMath.cos(a), StrictMath.sin(a));
      boolean longer = frame.width >= frame.height;
      if (longer && (best == null || frame.width * frame.height < best.width * best.height)) {
        best = frame;
      }
    }
    return best;
  }

  /** A place by its shares of the two sides. */
  Point at(double u, double v) {
    double s = u * width;
    double t = v * height;
    return corner.plus(s * along.x() - t * along.y(), s * along.y() + t * along.x());
  }

  private static Frame turned(Ring ring, double c, double s) {
    double loU = Double.POSITIVE_INFINITY;
    double hiU = Double.NEGATIVE_INFINITY;
    double loV = Double.POSITIVE_INFINITY;
    double hiV = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < ring.size(); i++) {
      Point p = ring.vertex(i);
      double u = p.x() * c + p.y() * s;
      double v = p.y() * c - p.x() * s;
      loU = Math.min(loU, u);
      hiU = Math.max(hiU, u);
      loV = Math.min(loV, v);
      hiV = Math.max(hiV, v);
    }
    Point corner = new Point(loU * c - loV * s, loU * s + loV * c);
    return new Frame(corner, new Point(c, s), hiU - loU, hiV - loV);
  }
}
