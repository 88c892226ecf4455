package org.mottle.engine.terrain;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * The ground that drains through a cell, its own included, m². Worked out from the top down in the
 * reverse order of the flood, O(n); nothing is lost: the areas of the cells where water leaves sum
 * to the area of all cells that have a height. Immutable.
 *
 * <p>Two ways: {@link #steepest} gives everything to one neighbour (D8) and draws single lines;
 * {@link #multiple} shares it among all lower neighbours, which is what spreading flow on mown turf
 * is like.
 */
public final class ContributingArea {
  /** Freeman (1991, Computers & Geosciences 17). */
  private static final double EXPONENT = 1.1;

  private static final double DIAGONAL = Math.sqrt(0.5);

  private final CellGrid grid;
  private final double[] areaM2;
  private final double leavingM2;

  private ContributingArea(CellGrid grid, double[] areaM2, double leavingM2) {
    this.grid = grid;
    this.areaM2 = areaM2;
    this.leavingM2 = leavingM2;
  }

  /** All to the one neighbour of {@link FlowDirection}. */
  public static ContributingArea steepest(FlowDirection flow) {
    PriorityFlood flood = flow.flood();
    double[] area = ownAreas(flood.model());
    double leaving = 0;
    for (int i = flood.count() - 1; i >= 0; i--) {
      int cell = flood.cellInOrder(i);
      int receiver = flow.receiver(cell);
      if (receiver >= 0) {
        area[receiver] += area[cell];
      } else {
        leaving += area[cell];
      }
    }
    return new ContributingArea(flood.model().grid(), area, leaving);
  }

  /**
   * Shared among the lower neighbours in the proportion of (tan beta)^1.1, tan beta the fall to
   * each on the filled ground over the distance (Freeman 1991). Where none is lower all goes to the
   * neighbour from which the flood came in.
   */
  public static ContributingArea multiple(PriorityFlood flood) {
    ElevationModel model = flood.model();
    int columns = model.grid().columns();
    double[] filled = flood.filledHeights();
    double[] area = ownAreas(model);
    double[] share = new double[8];
    int[] lower = new int[8];
    double leaving = 0;
    for (int i = flood.count() - 1; i >= 0; i--) {
      int cell = flood.cellInOrder(i);
      int row = cell / columns;
      int column = cell - row * columns;
      int n = 0;
      double sum = 0;
      for (int k = 0; k < 8; k++) {
        int next = model.neighbour(row, column, k);
        if (next >= 0 && filled[next] < filled[cell]) {
          double fall = (filled[cell] - filled[next]) * ((k & 1) == 0 ? 1 : DIAGONAL);
          share[n] = Math.pow(fall, EXPONENT);
          sum += share[n];
          lower[n++] = next;
        }
      }
      if (n > 0) {
        for (int k = 0; k < n; k++) {
          area[lower[k]] += area[cell] * (share[k] / sum);
        }
      } else if (flood.wayOut(cell) >= 0) {
        area[model.neighbour(row, column, flood.wayOut(cell))] += area[cell];
      } else {
        leaving += area[cell];
      }
    }
    return new ContributingArea(model.grid(), area, leaving);
  }

  private static double[] ownAreas(ElevationModel model) {
    double[] area = new double[model.grid().size()];
    double own = model.grid().cell() * model.grid().cell();
    for (int i = 0; i < area.length; i++) {
      area[i] = model.has(i) ? own : Double.NaN;
    }
    return area;
  }

  public CellGrid grid() {
    return grid;
  }

  /** Ground that drains through the cell, m²; NaN in a void. */
  public double areaM2(int index) {
    return areaM2[index];
  }

  /** The same for each metre of contour, the side of a cell taken for its width, m. */
  public double specificM(int index) {
    return areaM2[index] / grid.cell();
  }

  /** Sum over the cells where water leaves the model, m². */
  public double leavingM2() {
    return leavingM2;
  }

  /** {@link #areaM2(int)} of every cell. */
  public Raster areaM2() {
    return new Raster(grid, areaM2);
  }
}
