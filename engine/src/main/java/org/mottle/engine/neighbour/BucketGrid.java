package org.mottle.engine.neighbour;

import java.util.Arrays;

/**
 * Points sorted into square buckets, for exact nearest-neighbour search. Building takes O(n), a
 * search for k of them about k log k; immutable, shared by threads, each with its own {@link
 * Search}.
 */
public final class BucketGrid {
  private static final double POINTS_PER_BUCKET = 3;

  private final double originX;
  private final double originY;
  private final double size;
  private final int columns;
  private final int rows;

  /** [columns x rows + 1] where each bucket starts in the sorted arrays. */
  private final int[] start;

  private final double[] sortedX;
  private final double[] sortedY;
  private final int[] sortedRow;

  /**
   * @param x [n] east, m
   * @param y [n] north, m
   */
  public BucketGrid(double[] x, double[] y) {
    int n = x.length;
    originX = Arrays.stream(x).min().orElse(0);
    originY = Arrays.stream(y).min().orElse(0);
    double width = Arrays.stream(x).max().orElse(0) - originX;
    double height = Arrays.stream(y).max().orElse(0) - originY;
    size = bucketSize(n, width, height);
    columns = (int) (width / size) + 1;
    rows = (int) (height / size) + 1;
    start = new int[columns * rows + 1];
    sortedX = new double[n];
    sortedY = new double[n];
    sortedRow = new int[n];
    sort(x, y);
  }

  /** Some points a bucket; long thin sets get buckets along their length only. */
  private static double bucketSize(int n, double width, double height) {
    double buckets = Math.max(1, n / POINTS_PER_BUCKET);
    double byArea = Math.sqrt(width * height / buckets);
    double byLength = Math.max(width, height) / buckets;
    double size = Math.max(byArea, byLength);
    return size > 0 && Double.isFinite(size) ? size : 1;
  }

  private void sort(double[] x, double[] y) {
    int n = x.length;
    int[] bucket = new int[n];
    for (int i = 0; i < n; i++) {
      bucket[i] = bucketRow(y[i]) * columns + bucketColumn(x[i]);
      start[bucket[i] + 1]++;
    }
    for (int b = 0; b < columns * rows; b++) {
      start[b + 1] += start[b];
    }
    int[] next = start.clone();
    for (int i = 0; i < n; i++) {
      int to = next[bucket[i]]++;
      sortedX[to] = x[i];
      sortedY[to] = y[i];
      sortedRow[to] = i;
    }
  }

  private int bucketColumn(double x) {
    return (int) Math.max(0, Math.min(columns - 1, (x - originX) / size));
  }

  private int bucketRow(double y) {
    return (int) Math.max(0, Math.min(rows - 1, (y - originY) / size));
  }

  /** A search of one thread in a neighbourhood. */
  public Search search(Neighbourhood neighbourhood) {
    return new Search(neighbourhood);
  }

  /** Finds neighbours and holds those found last; for one thread. */
  public final class Search {
    private final int nearest;
    private final double squaredRadius;
    private final boolean limited;
    private final int[] found;
    private final double[] squared;
    private int count;

    private Search(Neighbourhood neighbourhood) {
      int n = sortedRow.length;
      nearest = Math.min(neighbourhood.nearest(), n);
      limited = neighbourhood.nearest() < n;
      squaredRadius = largestSquare(neighbourhood.radius());
      found = new int[nearest];
      squared = new double[nearest];
    }

    /** Number of observations found last. */
    public int count() {
      return count;
    }

    /**
     * Row number of the k-th found; in order of distance where their number is limited, in the
     * order of the buckets where only the radius limits them.
     */
    public int row(int k) {
      return found[k];
    }

    /** Squared distance of the k-th found, m². */
    public double squaredDistance(int k) {
      return squared[k];
    }

    /** Finds the neighbours of a place; returns their number. */
    public int find(double x, double y) {
      return find(x, y, -1);
    }

    /** Finds the neighbours of a place, leaving out one row; returns their number. */
    public int find(double x, double y, int excluded) {
      count = 0;
      int column = bucketColumn(x);
      int row = bucketRow(y);
      int reach = Math.max(Math.max(column, columns - 1 - column), Math.max(row, rows - 1 - row));
      for (int ring = 0; ring <= reach; ring++) {
        scanRing(column, row, ring, x, y, excluded);
        double clear = clearance(column, row, ring, x, y);
        double square = clear <= 0 ? 0 : clear * clear;
        if (square > squaredRadius
            || (count == nearest && limited && squared[count - 1] < square)) {
          break;
        }
      }
      return count;
    }

    private void scanRing(int column, int row, int ring, double x, double y, int excluded) {
      int left = Math.max(0, column - ring);
      int right = Math.min(columns - 1, column + ring);
      for (int r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
        if (r == row - ring || r == row + ring) {
          scan(r * columns + left, r * columns + right, x, y, excluded);
          continue;
        }
        if (column - ring >= 0) {
          scan(r * columns + left, r * columns + left, x, y, excluded);
        }
        if (column + ring < columns) {
          scan(r * columns + right, r * columns + right, x, y, excluded);
        }
      }
    }

    /** Distance from the place within which every point has been seen, less a rounding margin. */
    private double clearance(int column, int row, int ring, double x, double y) {
      double clear = Double.POSITIVE_INFINITY;
      if (column - ring > 0) {
        clear = Math.min(clear, x - (originX + (column - ring) * size));
      }
      if (column + ring < columns - 1) {
        clear = Math.min(clear, originX + (column + ring + 1) * size - x);
      }
      if (row - ring > 0) {
        clear = Math.min(clear, y - (originY + (row - ring) * size));
      }
      if (row + ring < rows - 1) {
        clear = Math.min(clear, originY + (row + ring + 1) * size - y);
      }
      return clear - 1e-9 * size;
    }

    private void scan(int firstBucket, int lastBucket, double x, double y, int excluded) {
      int to = start[lastBucket + 1];
      for (int p = start[firstBucket]; p < to; p++) {
        double dx = sortedX[p] - x;
        double dy = sortedY[p] - y;
        double d = dx * dx + dy * dy;
        if (d > squaredRadius || (count == nearest && limited && d > squared[count - 1])) {
          continue;
        }
        if (sortedRow[p] != excluded) {
          keep(d, sortedRow[p]);
        }
      }
    }

    private void keep(double d, int row) {
      if (!limited) {
        squared[count] = d;
        found[count++] = row;
        return;
      }
      int at = count;
      if (count == nearest) {
        at--;
        if (!before(d, row, at)) {
          return;
        }
      } else {
        count++;
      }
      while (at > 0 && before(d, row, at - 1)) {
        squared[at] = squared[at - 1];
        found[at] = found[at - 1];
        at--;
      }
      squared[at] = d;
      found[at] = row;
    }

    private boolean before(double d, int row, int at) {
      return d < squared[at] || (d == squared[at] && row < found[at]);
    }
  }

  /** The largest square whose root still rounds to within the radius: the radius is inclusive. */
  private static double largestSquare(double radius) {
    if (radius == Double.POSITIVE_INFINITY) {
      return radius;
    }
    double square = radius * radius;
    while (Math.sqrt(Math.nextUp(square)) <= radius) {
      square = Math.nextUp(square);
    }
    return square;
  }
}
