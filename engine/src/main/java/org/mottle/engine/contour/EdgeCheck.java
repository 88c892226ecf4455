package org.mottle.engine.contour;

import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.contour.EdgeNoding.Edge;

/** Whether edges meet each other, and themselves, in their end points only: exact, no tolerance. */
final class EdgeCheck {
  private final Coordinate[] from;
  private final Coordinate[] to;
  private final boolean[] first;
  private final boolean[] last;

  EdgeCheck(List<Edge> edges) {
    int n = edges.stream().mapToInt(e -> e.points().length - 1).sum();
    this.from = new Coordinate[n];
    this.to = new Coordinate[n];
    this.first = new boolean[n];
    this.last = new boolean[n];
    int at = 0;
    for (Edge edge : edges) {
      Coordinate[] points = edge.points();
      for (int i = 1; i < points.length; i++) {
        from[at] = points[i - 1];
        to[at] = points[i];
        first[at] = i == 1;
        last[at++] = i == points.length - 1;
      }
    }
  }

  boolean meetOnlyAtEnds() {
    int n = from.length;
    double[] ax = new double[n];
    double[] ay = new double[n];
    double[] bx = new double[n];
    double[] by = new double[n];
    for (int i = 0; i < n; i++) {
      ax[i] = from[i].x;
      ay[i] = from[i].y;
      bx[i] = to[i].x;
      by[i] = to[i].y;
    }
    SegmentBuckets buckets = new SegmentBuckets(ax, ay, bx, by);
    for (int i = 0; i < n; i++) {
      int count = buckets.find(ax[i], ay[i], bx[i], by[i]);
      for (int f = 0; f < count; f++) {
        int j = buckets.found(f);
        if (j > i && !meetWell(i, j)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Whether two segments, i before j, are apart or share an end that is an end of both edges. */
  private boolean meetWell(int i, int j) {
    if (apart(from[i].x, to[i].x, from[j].x, to[j].x)
        || apart(from[i].y, to[i].y, from[j].y, to[j].y)) {
      return true;
    }
    if (to[i].equals2D(from[j])) {
      boolean follows = j == i + 1 && !last[i];
      return (follows || last[i] && first[j]) && fork(from[i], to[i], to[j]);
    }
    if (from[i].equals2D(to[j])) {
      return first[i] && last[j] && fork(to[i], from[i], from[j]);
    }
    if (from[i].equals2D(from[j])) {
      return first[i] && first[j] && fork(to[i], from[i], to[j]);
    }
    if (to[i].equals2D(to[j])) {
      return last[i] && last[j] && fork(from[i], to[i], from[j]);
    }
    return sameSide(from[i], to[i], from[j], to[j]) || sameSide(from[j], to[j], from[i], to[i]);
  }

  private static boolean apart(double a, double b, double c, double d) {
    return Math.max(a, b) < Math.min(c, d) || Math.max(c, d) < Math.min(a, b);
  }

  private static boolean sameSide(Coordinate a, Coordinate b, Coordinate p, Coordinate q) {
    return Orientation.index(a, b, p) * Orientation.index(a, b, q) > 0;
  }

  /** Whether a-node and node-b do not run along each other. */
  private static boolean fork(Coordinate a, Coordinate node, Coordinate b) {
    double turn = (a.x - node.x) * (b.x - node.x) + (a.y - node.y) * (b.y - node.y);
    return turn < 0 || Orientation.index(a, node, b) != 0;
  }
}
