package org.mottle.engine.terrain;

import java.util.Arrays;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;

/**
 * The ground filled to where water would spill: the priority flood of Barnes, Lehman & Mulla (2014,
 * Computers & Geosciences 62). The flood comes in from the edge of the grid and from voids, lowest
 * ground first; a cell lower than the way in is filled to it. The filled height is the least, over
 * all ways out over the eight neighbours, of the highest ground on the way:
 *
 * <pre>  filled = max(height, min over the neighbours of filled)</pre>
 *
 * <p>Level and filled ground has no fall of its own. The paper raises it by an epsilon a step; here
 * heights stay exact and the cell from which the flood came in ({@link #wayOut}) tells where water
 * leaves: the paper's variant for flow directions, in the order of the flood ({@link
 * #cellInOrder}), in which every cell comes after the one its water goes to.
 *
 * <p>Voids count as ground where water leaves: whoever asks should look at {@link
 * ElevationModel#voids} first. O(n log n), of which cells in hollows cost O(1). Immutable.
 */
public final class PriorityFlood {
  private static final int EVERY = 1 << 18;
  private static final double ROUNDING_M = 1e-9;

  private final ElevationModel model;
  private final double[] filled;
  private final byte[] wayOut;
  private final int[] order;

  private PriorityFlood(ElevationModel model, double[] filled, byte[] wayOut, int[] order) {
    this.model = model;
    this.filled = filled;
    this.wayOut = wayOut;
    this.order = order;
  }

  public static PriorityFlood of(ElevationModel model) {
    return of(model, Progress.NONE);
  }

  /** Reports and stops in the phase "flood". */
  public static PriorityFlood of(ElevationModel model, Progress progress) {
    CellGrid grid = model.grid();
    double[] z = model.heights();
    double[] filled = new double[z.length];
    byte[] wayOut = new byte[z.length];
    Arrays.fill(filled, Double.NaN);
    Arrays.fill(wayOut, (byte) -1);
    CellHeap shore = new CellHeap();
    seed(model, filled, shore);
    // the order is also the queue of cells in hollows: those are flooded before the shore goes on
    int[] order = new int[z.length - model.voids()];
    int taken = 0;
    int queued = 0;
    while (taken < queued || !shore.isEmpty()) {
      if (taken == queued) {
        order[queued++] = shore.poll();
      }
      int cell = order[taken++];
      int row = cell / grid.columns();
      int column = cell - row * grid.columns();
      double level = filled[cell];
      for (int k = 0; k < 8; k++) {
        int next = model.neighbour(row, column, k);
        if (next >= 0 && filled[next] != filled[next]) {
          wayOut[next] = (byte) (k ^ 4);
          if (z[next] <= level) {
            filled[next] = level;
            order[queued++] = next;
          } else {
            filled[next] = z[next];
            shore.add(z[next], next);
          }
        }
      }
      if ((taken & (EVERY - 1)) == 0) {
        progress.check();
        progress.report("flood", taken, order.length);
      }
    }
    progress.report("flood", taken, order.length);
    return new PriorityFlood(model, filled, wayOut, order);
  }

  private static void seed(ElevationModel model, double[] filled, CellHeap shore) {
    CellGrid grid = model.grid();
    for (int row = 0; row < grid.rows(); row++) {
      for (int column = 0; column < grid.columns(); column++) {
        int cell = grid.index(row, column);
        if (model.has(cell) && meetsEdge(model, row, column)) {
          filled[cell] = model.height(cell);
          shore.add(filled[cell], cell);
        }
      }
    }
  }

  private static boolean meetsEdge(ElevationModel model, int row, int column) {
    CellGrid grid = model.grid();
    boolean inner = row > 0 && column > 0 && row < grid.rows() - 1 && column < grid.columns() - 1;
    if (inner && model.voids() == 0) {
      return false;
    }
    for (int k = 0; k < 8; k++) {
      if (model.neighbour(row, column, k) < 0) {
        return true;
      }
    }
    return false;
  }

  public ElevationModel model() {
    return model;
  }

  /** Height of the filled ground, m: the spill level where it is above the ground. */
  public double filled(int index) {
    return filled[index];
  }

  /** Depth of the water that would stand before it spills, m; 0 on ground that drains. */
  public double depth(int index) {
    return filled[index] - model.height(index);
  }

  /**
   * Whether water at least so deep would stand, to a nanometre: heights in whole millimetres must
   * not miss a limit in millimetres by rounding.
   */
  boolean holds(int index, double depthM) {
    return depth(index) >= depthM - ROUNDING_M;
  }

  /** The filled ground as a model of its own. */
  public ElevationModel filledModel() {
    return ElevationModel.owning(model.grid(), filled.clone());
  }

  /** {@link #depth} of every cell, m. */
  public Raster depths() {
    double[] depths = new double[filled.length];
    for (int i = 0; i < depths.length; i++) {
      depths[i] = depth(i);
    }
    return new Raster(model.grid(), depths);
  }

  /** Direction (0 north, clockwise) in which the flood came in; -1 at the edge. */
  int wayOut(int index) {
    return wayOut[index];
  }

  /** Number of cells with a height. */
  int count() {
    return order.length;
  }

  /** The i-th cell flooded: filled heights ascend with i. */
  int cellInOrder(int i) {
    return order[i];
  }

  double[] filledHeights() {
    return filled;
  }
}
