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
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * The segments of an outline in local coordinates, found by place through square buckets. Segment i
 * runs from vertex i to vertex {@code next(i)}; no two neighbouring vertices coincide. One thread
 * at a time.
 */
final class OutlineIndex {
  private static final int MOST_BUCKETS_A_SIDE = 256;

  private double[] x = new double[64];
  private double[] y = new double[64];
  private int[] next = new int[64];
  private int[] previous = new int[64];
  private int n;
  private final List<Integer> ringStart = new ArrayList<>();

  private final double west;
  private final double south;
  private final double bucket;
  private final int columns;
  private final int rows;
  private int[] start;
  private int[] held;
  private final int[] stamp;
  private int query;
  private int[] found = new int[16];
  private int foundCount;

  OutlineIndex(Geometry outline, Frame frame) {
    for (int p = 0; p < outline.getNumGeometries(); p++) {
      Polygon polygon = (Polygon) outline.getGeometryN(p);
      addRing(polygon.getExteriorRing().getCoordinateSequence(), true, frame);
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        addRing(polygon.getInteriorRingN(h).getCoordinateSequence(), false, frame);
      }
    }
    Envelope extent = outline.getEnvelopeInternal();
    this.west = frame.localX(extent.getMinX());
    this.south = frame.localY(extent.getMinY());
    double side = Math.max(extent.getWidth(), extent.getHeight());
    int aSide = (int) Math.min(MOST_BUCKETS_A_SIDE, Math.max(16, 4 * Math.sqrt(n)));
    this.bucket = side / aSide;
    this.columns = (int) (extent.getWidth() / bucket) + 1;
    this.rows = (int) (extent.getHeight() / bucket) + 1;
    this.stamp = new int[n];
    fillBuckets();
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
    query++;
    foundCount = 0;
    int firstRow = row(Math.min(y0, y1));
    int lastRow = row(Math.max(y0, y1));
    int firstColumn = column(Math.min(x0, x1));
    int lastColumn = column(Math.max(x0, x1));
    for (int r = firstRow; r <= lastRow; r++) {
      for (int at = start[r * columns + firstColumn];
          at < start[r * columns + lastColumn + 1];
          at++) {
        if (stamp[held[at]] != query) {
          stamp[held[at]] = query;
          if (foundCount == found.length) {
            found = Arrays.copyOf(found, 2 * foundCount);
          }
          found[foundCount++] = held[at];
        }
      }
    }
    return foundCount;
  }

  int found(int i) {
    return found[i];
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

  private int row(double py) {
    return (int) Math.max(0, Math.min(rows - 1, Math.floor((py - south) / bucket)));
  }

  private int column(double px) {
    return (int) Math.max(0, Math.min(columns - 1, Math.floor((px - west) / bucket)));
  }

  private void fillBuckets() {
    start = new int[rows * columns + 1];
    for (int i = 0; i < n; i++) {
      visit(i, false);
    }
    for (int b = 1; b <= rows * columns; b++) {
      start[b] += start[b - 1];
    }
    held = new int[start[rows * columns]];
    for (int i = n - 1; i >= 0; i--) {
      visit(i, true);
    }
  }

  /** Every bucket of every row the segment passes, one to either side more for rounding. */
  private void visit(int i, boolean place) {
    int j = next[i];
    int firstRow = row(Math.min(y[i], y[j]) - Frame.UNIT);
    int lastRow = row(Math.max(y[i], y[j]) + Frame.UNIT);
    for (int r = firstRow; r <= lastRow; r++) {
      double from = xAt(i, j, r == firstRow ? Math.min(y[i], y[j]) : south + r * bucket, i);
      double to = xAt(i, j, r == lastRow ? Math.max(y[i], y[j]) : south + (r + 1) * bucket, j);
      int last = column(Math.max(from, to) + Frame.UNIT);
      for (int c = column(Math.min(from, to) - Frame.UNIT); c <= last; c++) {
        if (place) {
          held[--start[r * columns + c]] = i;
        } else {
          start[r * columns + c]++;
        }
      }
    }
  }

  private double xAt(int i, int j, double py, int whenLevel) {
    if (y[i] == y[j]) {
      return x[whenLevel];
    }
    double t = Math.min(1, Math.max(0, (py - y[i]) / (y[j] - y[i])));
    return x[i] + t * (x[j] - x[i]);
  }
}
