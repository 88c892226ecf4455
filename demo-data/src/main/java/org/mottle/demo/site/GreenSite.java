package org.mottle.demo.site;

import java.util.ArrayList;
import java.util.List;

/**
 * One green of the invented course. Everything about it is in metres from its centre, x east and y
 * north; {@link #world} leads to EPSG:32628.
 *
 * @param id G1 to G9
 * @param name invented
 * @param centre metres from the origin of the course
 * @param ring outline round the centre
 * @param build root zone
 * @param slopePct rise towards the east (x) and the north (y), %
 */
public record GreenSite(
    String id, String name, Point centre, Ring ring, Build build, Point slopePct) {

  /** Width of the collar outside the green, m. */
  public static final double COLLAR_M = 1.2;

  /** From metres round the centre to EPSG:32628. */
  public Point world(double dx, double dy) {
    return new Point(
        CoursePlace.ORIGIN.x() + centre.x() + dx, CoursePlace.ORIGIN.y() + centre.y() + dy);
  }

  public Point world(Point local) {
    return world(local.x(), local.y());
  }

  /** The outer edge of the collar. */
  public Ring collar() {
    return ring.outset(COLLAR_M);
  }

  /** Centres of the cells of side {@code stepM} (edges at multiples of it) inside the outline. */
  public List<Point> cells(double stepM) {
    List<Point> cells = new ArrayList<>();
    int rows = (int) Math.ceil(20 / stepM);
    for (int row = -rows; row < rows; row++) {
      for (int column = -rows; column < rows; column++) {
        double x = (column + 0.5) * stepM;
        double y = (row + 0.5) * stepM;
        if (ring.contains(x, y)) {
          cells.add(new Point(x, y));
        }
      }
    }
    return cells;
  }
}
