package org.mottle.engine.patch;

import java.util.Comparator;
import java.util.PriorityQueue;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/**
 * The radius of the largest circle that fits in a polygon, holes left out, to within a tolerance.
 * Squares that cover the polygon are quartered, most promising first; a square is given up once the
 * distance of its centre to the boundary plus its half diagonal cannot beat the best circle found,
 * which the first few segments of the boundary mostly decide, so no spatial index is needed.
 */
final class InscribedCircle {
  private static final double DIAGONAL = Math.sqrt(2);

  private final double[] ax;
  private final double[] ay;
  private final double[] bx;
  private final double[] by;
  private final double tolerance;
  private double best;

  /** A square by its centre and half its side, with the largest radius a circle in it may have. */
  private record Square(double x, double y, double half, double bound) {}

  private InscribedCircle(Polygon polygon, double tolerance) {
    int n = polygon.getNumPoints() - 1 - polygon.getNumInteriorRing();
    this.ax = new double[n];
    this.ay = new double[n];
    this.bx = new double[n];
    this.by = new double[n];
    this.tolerance = tolerance;
    int at = add(polygon.getExteriorRing().getCoordinates(), 0);
    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
      at = add(polygon.getInteriorRingN(h).getCoordinates(), at);
    }
  }

  /** Radius, m; never more than the true one, at most {@code tolerance} less. */
  static double radius(Polygon polygon, double tolerance) {
    return new InscribedCircle(polygon, tolerance).search(polygon.getEnvelopeInternal());
  }

  private int add(Coordinate[] ring, int from) {
    int at = from;
    for (int i = 1; i < ring.length; i++) {
      ax[at] = ring[i - 1].x;
      ay[at] = ring[i - 1].y;
      bx[at] = ring[i].x;
      by[at++] = ring[i].y;
    }
    return at;
  }

  private double search(Envelope extent) {
    PriorityQueue<Square> open =
        new PriorityQueue<>(Comparator.comparingDouble(Square::bound).reversed());
    double half = Math.min(extent.getWidth(), extent.getHeight()) / 2;
    for (double x = extent.getMinX() + half; x < extent.getMaxX() + half; x += 2 * half) {
      for (double y = extent.getMinY() + half; y < extent.getMaxY() + half; y += 2 * half) {
        consider(x, y, half, open);
      }
    }
    while (!open.isEmpty() && open.peek().bound > best + tolerance) {
      Square square = open.poll();
      double quarter = square.half / 2;
      consider(square.x - quarter, square.y - quarter, quarter, open);
      consider(square.x + quarter, square.y - quarter, quarter, open);
      consider(square.x - quarter, square.y + quarter, quarter, open);
      consider(square.x + quarter, square.y + quarter, quarter, open);
    }
    return best;
  }

  private void consider(double x, double y, double half, PriorityQueue<Square> open) {
    double reach = half * DIAGONAL;
    double hopeless = best + tolerance - reach;
    double hopelessSquared = hopeless > 0 ? hopeless * hopeless : -1;
    double nearest = Double.POSITIVE_INFINITY;
    boolean inside = false;
    for (int i = 0; i < ax.length; i++) {
      double dx = bx[i] - ax[i];
      double dy = by[i] - ay[i];
      double px = x - ax[i];
      double py = y - ay[i];
      double t = Math.min(1, Math.max(0, (px * dx + py * dy) / (dx * dx + dy * dy)));
      double ex = px - t * dx;
      double ey = py - t * dy;
      nearest = Math.min(nearest, ex * ex + ey * ey);
      if (nearest <= hopelessSquared) {
        return;
      }
      if (ay[i] > y != by[i] > y && px < py / dy * dx) {
        inside = !inside;
      }
    }
    double distance = inside ? Math.sqrt(nearest) : -Math.sqrt(nearest);
    best = Math.max(best, distance);
    if (distance + reach > best + tolerance) {
      open.add(new Square(x, y, half, distance + reach));
    }
  }
}
