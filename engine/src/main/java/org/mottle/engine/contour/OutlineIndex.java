package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * The segments of an outline in local coordinates, found by place through square buckets. Segment i
 * runs from vertex i to vertex {@code next(i)}; no two neighbouring vertices coincide. One thread
 * at a time.
 */
final class OutlineIndex {
  private double[] x = new double[64];
  private double[] y = new double[64];
  private int[] next = new int[64];
  private int[] previous = new int[64];
  private int n;
  private final List<Integer> ringStart = new ArrayList<>();

  private final SegmentBuckets buckets;

  OutlineIndex(Geometry outline, Frame frame) {
    for (int p = 0; p < outline.getNumGeometries(); p++) {
      Polygon polygon = (Polygon) outline.getGeometryN(p);
      addRing(polygon.getExteriorRing().getCoordinateSequence(), true, frame);
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        addRing(polygon.getInteriorRingN(h).getCoordinateSequence(), false, frame);
      }
    }
    double[] endX = new double[n];
    double[] endY = new double[n];
    for (int i = 0; i < n; i++) {
      endX[i] = x[next[i]];
      endY[i] = y[next[i]];
    }
    this.buckets = new SegmentBuckets(Arrays.copyOf(x, n), Arrays.copyOf(y, n), endX, endY);
  }

  int size() {
    return n;
  }

  double x(int vertex) {
    return x[vertex];
  }

  double y(int vertex) {
    return y[vertex];
  }

  int next(int vertex) {
    return next[vertex];
  }

  int previous(int vertex) {
    return previous[vertex];
  }

  /** Finds the segments that may meet a rectangle; read them by {@link #found(int)}. */
  int find(double x0, double y0, double x1, double y1) {
    return buckets.find(x0, y0, x1, y1);
  }

  int found(int i) {
    return buckets.found(i);
  }

  /** Even-odd rule; points on the outline fall on either side. */
  boolean contains(double px, double py) {
    boolean in = false;
    for (int i = 0; i < n; i++) {
      int j = next[i];
      if (y[i] > py != y[j] > py && px < x[i] + (py - y[i]) / (y[j] - y[i]) * (x[j] - x[i])) {
        in = !in;
      }
    }
    return in;
  }

  /** A point on a side of the outline, at t of the way along it. */
  record SidePoint(int segment, double t, double x, double y) {}

  /** The rings, closed, with the inside of the outline on their left and points put in. */
  List<Coordinate[]> rings(Collection<SidePoint> added) {
    List<SidePoint> sorted = new ArrayList<>(added);
    sorted.sort(Comparator.comparingInt(SidePoint::segment).thenComparingDouble(SidePoint::t));
    List<Coordinate[]> rings = new ArrayList<>();
    int at = 0;
    for (int r = 0; r < ringStart.size(); r++) {
      int end = r + 1 < ringStart.size() ? ringStart.get(r + 1) : n;
      CoordinateList ring = new CoordinateList();
      for (int i = ringStart.get(r); i < end; i++) {
        ring.add(new Coordinate(x[i], y[i]), false);
        for (; at < sorted.size() && sorted.get(at).segment() == i; at++) {
          ring.add(new Coordinate(sorted.get(at).x(), sorted.get(at).y()), false);
        }
      }
      ring.closeRing();
      rings.add(ring.toCoordinateArray());
    }
    return rings;
  }

  private void addRing(CoordinateSequence ring, boolean shell, Frame frame) {
    int first = n;
    int last = ring.size() - 1;
    boolean reversed = Area.ofRingSigned(ring) > 0 == shell;
    for (int i = 0; i < last; i++) {
      int at = reversed ? last - i : i;
      double px = Frame.fine(frame.localX(ring.getX(at)));
      double py = Frame.fine(frame.localY(ring.getY(at)));
      if (n == first || px != x[n - 1] || py != y[n - 1]) {
        addVertex(px, py);
      }
    }
    while (n > first + 1 && x[n - 1] == x[first] && y[n - 1] == y[first]) {
      n--;
    }
    for (int i = first; i < n; i++) {
      next[i] = i + 1 < n ? i + 1 : first;
      previous[i] = i > first ? i - 1 : n - 1;
    }
    ringStart.add(first);
  }

  private void addVertex(double px, double py) {
    if (n == x.length) {
      x = Arrays.copyOf(x, 2 * n);
      y = Arrays.copyOf(y, 2 * n);
      next = Arrays.copyOf(next, 2 * n);
      previous = Arrays.copyOf(previous, 2 * n);
    }
    x[n] = px;
    y[n++] = py;
  }
}
