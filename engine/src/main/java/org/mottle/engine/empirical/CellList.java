package org.mottle.engine.empirical;

import java.util.Arrays;
import java.util.Comparator;
import org.mottle.engine.observation.Observations;

/**
 * Observations of one group sorted by square cells, row by row, and within a cell by x, y and
 * value, so that the order of the rows they came in is forgotten. The points of neighbouring cells
 * of a row lie next to each other. Memory is proportional to the number of points. Immutable.
 */
final class CellList {
  private static final int CELLS_PER_CUTOFF = 8;
  private static final int BLOCK = 512;

  private final double cutoff;
  private final double west;
  private final double south;
  private final double side;
  private final int columns;
  private final int rows;
  private final int[] start;
  private final double[] x;
  private final double[] y;
  private final double[] value;

  CellList(Observations observations, double cutoff) {
    int n = observations.size();
    double[] px = observations.xs();
    double[] py = observations.ys();
    double[] pv = observations.values();
    this.cutoff = cutoff;
    west = Arrays.stream(px).min().orElse(0);
    south = Arrays.stream(py).min().orElse(0);
    double width = Arrays.stream(px).max().orElse(0) - west;
    double height = Arrays.stream(py).max().orElse(0) - south;
    side = side(width, height, cutoff, n);
    columns = (int) (width / side) + 1;
    rows = (int) (height / side) + 1;
    Integer[] order = new Integer[n];
    int[] cell = new int[n];
    start = new int[columns * rows + 1];
    for (int i = 0; i < n; i++) {
      order[i] = i;
      cell[i] = row(py[i]) * columns + column(px[i]);
      start[cell[i] + 1]++;
    }
    Arrays.parallelPrefix(start, Integer::sum);
    Arrays.sort(
        order,
        Comparator.comparingInt((Integer i) -> cell[i])
            .thenComparingDouble(i -> px[i])
            .thenComparingDouble(i -> py[i])
            .thenComparingDouble(i -> pv[i]));
    x = new double[n];
    y = new double[n];
    value = new double[n];
    for (int k = 0; k < n; k++) {
      x[k] = px[order[k]];
      y[k] = py[order[k]];
      value[k] = pv[order[k]];
    }
  }

  /** An eighth of the cutoff, or what keeps the cells to about two a point. */
  private static double side(double width, double height, double cutoff, int n) {
    double side = cutoff / CELLS_PER_CUTOFF;
    double most = 2.0 * n + 16;
    while ((width / side + 1) * (height / side + 1) > most) {
      side *= 1.25;
    }
    return side;
  }

  int size() {
    return x.length;
  }

  /** Sends every pair of a point in [from, to) and a later point to the sink, once. */
  void scan(int from, int to, Direction direction, PairSink sink) {
    Block block = new Block(direction, sink);
    for (int i = from; i < to; i++) {
      int row = row(y[i]);
      send(i, i + 1, start[row * columns + reach(x[i] + cutoff, side) + 1], block);
      int last = Math.min(rows - 1, row(y[i] + cutoff * (1 + 1e-9)) + 1);
      for (int r = row + 1; r <= last; r++) {
        // the row's southern edge, a little lower so that rounding loses no pair
        double gap = Math.max(0, south + r * side - y[i] - 1e-6 * side);
        if (gap > cutoff) {
          break;
        }
        double half = Math.sqrt(cutoff * cutoff - gap * gap);
        int first = reach(x[i] - half, -side);
        send(
            i,
            start[r * columns + first],
            start[r * columns + reach(x[i] + half, side) + 1],
            block);
      }
    }
  }

  private void send(int i, int from, int to, Block block) {
    for (int j = from; j < to; j += BLOCK) {
      block.send(i, j, Math.min(to, j + BLOCK));
    }
  }

  private int row(double py) {
    return Math.max(0, Math.min(rows - 1, (int) ((py - south) / side)));
  }

  private int column(double px) {
    return Math.max(0, Math.min(columns - 1, (int) ((px - west) / side)));
  }

  /** Column of a coordinate pushed outward by a millionth of {@code outward}. */
  private int reach(double px, double outward) {
    return column(px + 1e-6 * outward);
  }

  /** Separations and differences of one point and a run of others. */
  private final class Block {
    private final double[] distance = new double[BLOCK];
    private final double[] difference = new double[BLOCK];
    private final boolean all;
    private final double east;
    private final double north;
    private final double leastCosine;
    private final PairSink sink;

    Block(Direction direction, PairSink sink) {
      all = direction.omnidirectional();
      east = Math.sin(direction.azimuth().radians());
      north = Math.cos(direction.azimuth().radians());
      leastCosine = direction.leastCosine();
      this.sink = sink;
    }

    void send(int i, int from, int to) {
      int count = all ? inAnyDirection(i, from, to) : inDirection(i, from, to);
      sink.accept(distance, difference, count);
    }

    private int inAnyDirection(int i, int from, int to) {
      double xi = x[i];
      double yi = y[i];
      double vi = value[i];
      for (int j = from, k = 0; j < to; j++, k++) {
        double dx = x[j] - xi;
        double dy = y[j] - yi;
        distance[k] = Math.sqrt(dx * dx + dy * dy);
        difference[k] = value[j] - vi;
      }
      return to - from;
    }

    private int inDirection(int i, int from, int to) {
      int count = 0;
      for (int j = from; j < to; j++) {
        double dx = x[j] - x[i];
        double dy = y[j] - y[i];
        double h = Math.sqrt(dx * dx + dy * dy);
        if (h == 0 || Math.abs((dx * east + dy * north) / h) >= leastCosine) {
          distance[count] = h;
          difference[count++] = value[j] - value[i];
        }
      }
      return count;
    }
  }
}
