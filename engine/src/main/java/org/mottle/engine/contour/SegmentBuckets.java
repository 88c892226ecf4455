package org.mottle.engine.contour;

import java.util.Arrays;

/**
 * Segments from (ax, ay) to (bx, by) found by place through square buckets, about as many as there
 * are segments. One thread at a time.
 */
final class SegmentBuckets {
  private static final int FEWEST_A_SIDE = 16;
  private static final int MOST_A_SIDE = 1024;

  private final double[] ax;
  private final double[] ay;
  private final double[] bx;
  private final double[] by;
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

  SegmentBuckets(double[] ax, double[] ay, double[] bx, double[] by) {
    this.ax = ax;
    this.ay = ay;
    this.bx = bx;
    this.by = by;
    int n = ax.length;
    double minX = Double.POSITIVE_INFINITY;
    double minY = Double.POSITIVE_INFINITY;
    double maxX = Double.NEGATIVE_INFINITY;
    double maxY = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      minX = Math.min(minX, Math.min(ax[i], bx[i]));
      minY = Math.min(minY, Math.min(ay[i], by[i]));
      maxX = Math.max(maxX, Math.max(ax[i], bx[i]));
      maxY = Math.max(maxY, Math.max(ay[i], by[i]));
    }
    this.west = minX;
    this.south = minY;
    int aSide = (int) Math.min(MOST_A_SIDE, Math.max(FEWEST_A_SIDE, 1.5 * Math.sqrt(n)));
    this.bucket = Math.max(Math.max(maxX - minX, maxY - minY), Frame.UNIT) / aSide;
    this.columns = (int) ((maxX - minX) / bucket) + 1;
    this.rows = (int) ((maxY - minY) / bucket) + 1;
    this.stamp = new int[n];
    fillBuckets();
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

  private int row(double py) {
    return (int) Math.max(0, Math.min(rows - 1, Math.floor((py - south) / bucket)));
  }

  private int column(double px) {
    return (int) Math.max(0, Math.min(columns - 1, Math.floor((px - west) / bucket)));
  }

  private void fillBuckets() {
    start = new int[rows * columns + 1];
    for (int i = 0; i < ax.length; i++) {
      visit(i, false);
    }
    for (int b = 1; b <= rows * columns; b++) {
      start[b] += start[b - 1];
    }
    held = new int[start[rows * columns]];
    for (int i = ax.length - 1; i >= 0; i--) {
      visit(i, true);
    }
  }

  /** Every bucket of every row the segment passes, one to either side more for rounding. */
  private void visit(int i, boolean place) {
    int firstRow = row(Math.min(ay[i], by[i]) - Frame.UNIT);
    int lastRow = row(Math.max(ay[i], by[i]) + Frame.UNIT);
    for (int r = firstRow; r <= lastRow; r++) {
      double from = xAt(i, r == firstRow ? Math.min(ay[i], by[i]) : south + r * bucket, ax[i]);
      double to = xAt(i, r == lastRow ? Math.max(ay[i], by[i]) : south + (r + 1) * bucket, bx[i]);
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

  private double xAt(int i, double py, double whenLevel) {
    if (ay[i] == by[i]) {
      return whenLevel;
    }
    double t = Math.min(1, Math.max(0, (py - ay[i]) / (by[i] - ay[i])));
    return ax[i] + t * (bx[i] - ax[i]);
  }
}
