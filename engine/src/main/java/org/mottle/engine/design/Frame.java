package org.mottle.engine.design;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * The rectangle of least area round a piece of ground, with its long side as first axis. One side
 * of it lies along an edge of the convex hull (Freeman and Shapira 1975), so every edge is tried;
 * of equal rectangles the first found counts. The long axis points east, or north if it runs due
 * north, so that equal ground gives an equal frame. O(h²) for h corners of the hull.
 *
 * @param x east of the middle, m
 * @param y north of the middle, m
 * @param ux east part of the unit vector along the long side
 * @param uy north part of it
 * @param halfLong half the long side, m
 * @param halfShort half the short side, m
 */
record Frame(double x, double y, double ux, double uy, double halfLong, double halfShort) {
  private static final double ROUNDING = 1e-9;

  static Frame round(Geometry ground) {
    Coordinate[] hull = ground.convexHull().getCoordinates();
    Frame best = null;
    for (int i = 1; i < hull.length; i++) {
      double length = hull[i].distance(hull[i - 1]);
      Frame frame =
          along(hull, (hull[i].x - hull[i - 1].x) / length, (hull[i].y - hull[i - 1].y) / length);
      if (best == null || frame.area() < best.area() * (1 - ROUNDING)) {
        best = frame;
      }
    }
    return best;
  }

  private static Frame along(Coordinate[] hull, double ux, double uy) {
    double[] u = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    double[] v = u.clone();
    for (Coordinate c : hull) {
      widen(u, c.x * ux + c.y * uy);
      widen(v, c.y * ux - c.x * uy);
    }
    double middleU = (u[0] + u[1]) / 2;
    double middleV = (v[0] + v[1]) / 2;
    double halfU = (u[1] - u[0]) / 2;
    double halfV = (v[1] - v[0]) / 2;
    double x = middleU * ux - middleV * uy;
    double y = middleU * uy + middleV * ux;
    boolean longFirst = halfU >= halfV;
    return eastward(
        x,
        y,
        longFirst ? ux : -uy,
        longFirst ? uy : ux,
        Math.max(halfU, halfV),
        Math.min(halfU, halfV));
  }

  private static void widen(double[] range, double value) {
    range[0] = Math.min(range[0], value);
    range[1] = Math.max(range[1], value);
  }

  private static Frame eastward(double x, double y, double ux, double uy, double a, double b) {
    boolean back = ux < -ROUNDING || Math.abs(ux) <= ROUNDING && uy < 0;
    return new Frame(x, y, back ? -ux : ux, back ? -uy : uy, a, b);
  }

  private double area() {
    return 4 * halfLong * halfShort;
  }

  /** The point this far along the long side and to the left of it, from the middle. */
  Coordinate at(double along, double across) {
    return new Coordinate(x + along * ux - across * uy, y + along * uy + across * ux);
  }
}
