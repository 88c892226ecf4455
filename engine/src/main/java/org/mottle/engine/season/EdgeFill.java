package org.mottle.engine.season;

import java.util.Arrays;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

/**
 * Carries a raster of the cells whose centre is inside a green to the centres around, so that every
 * point of the outline has a value: each new centre gets the mean of its neighbours that have one,
 * ring by ring.
 */
final class EdgeFill {
  private EdgeFill() {}

  /**
   * @param inside on {@code cells.grid()}
   * @return on {@code cells.surfaceGrid()}
   */
  static Raster of(Raster inside, GreenCells cells) {
    CellGrid from = inside.grid();
    CellGrid to = cells.surfaceGrid();
    double[] values = new double[to.size()];
    Arrays.fill(values, Double.NaN);
    for (int row = 0; row < from.rows(); row++) {
      for (int column = 0; column < from.columns(); column++) {
        values[to.index(row + 1, column + 1)] = inside.value(row, column);
      }
    }
    boolean grows = true;
    while (grows) {
      grows = false;
      double[] before = values.clone();
      for (int i = 0; i < cells.neededCount(); i++) {
        int at = cells.neededCell(i);
        if (Double.isNaN(before[at])) {
          values[at] = neighbours(before, to, at);
          grows |= !Double.isNaN(values[at]);
        }
      }
    }
    return new Raster(to, values);
  }

  private static double neighbours(double[] values, CellGrid grid, int at) {
    int row = at / grid.columns();
    int column = at % grid.columns();
    double sum = 0;
    int count = 0;
    for (int r = Math.max(0, row - 1); r <= Math.min(grid.rows() - 1, row + 1); r++) {
      for (int c = Math.max(0, column - 1); c <= Math.min(grid.columns() - 1, column + 1); c++) {
        double v = values[grid.index(r, c)];
        if (!Double.isNaN(v)) {
          sum += v;
          count++;
        }
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }
}
