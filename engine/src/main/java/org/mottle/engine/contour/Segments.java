package org.mottle.engine.contour;

/** Plane geometry of one segment a-b. */
final class Segments {
  private Segments() {}

  /** Where along a-b the point nearest to p lies, 0 at a, 1 at b. */
  static double nearest(double px, double py, double ax, double ay, double bx, double by) {
    double dx = bx - ax;
    double dy = by - ay;
    double length = dx * dx + dy * dy;
    if (length == 0) {
      return 0;
    }
    return Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / length));
  }

  static double distanceSquared(double px, double py, double ax, double ay, double bx, double by) {
    double t = nearest(px, py, ax, ay, bx, by);
    double dx = ax + t * (bx - ax) - px;
    double dy = ay + t * (by - ay) - py;
    return dx * dx + dy * dy;
  }
}
