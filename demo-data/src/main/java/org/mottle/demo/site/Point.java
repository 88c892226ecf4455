package org.mottle.demo.site;

/**
 * A place in metres, x east, y north.
 *
 * @param x east
 * @param y north
 */
public record Point(double x, double y) {

  /** The point so far east and north of this one. */
  public Point plus(double dx, double dy) {
    return new Point(x + dx, y + dy);
  }

  public double distance(Point other) {
    return Math.sqrt((x - other.x) * (x - other.x) + (y - other.y) * (y - other.y));
  }
}
