package org.mottle.export.calibration;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;

/**
 * Where a map is compared with the truth: the cells whose centre is inside the outline, each of the
 * same area.
 *
 * @param grid rows and columns of cells that cover the outline
 * @param index [n] number of each cell on the grid
 * @param x [n] centres, m east
 * @param y [n] centres, m north
 */
record Cells(CellGrid grid, int[] index, double[] x, double[] y) {

  static Cells of(Geometry outline, double cellM) {
    GreenCells cells = GreenCells.of(outline, cellM);
    CellGrid grid = cells.grid();
    int[] index = IntStream.range(0, grid.size()).filter(cells::inside).toArray();
    return new Cells(
        grid,
        index,
        Arrays.stream(index).mapToDouble(i -> grid.x(i % grid.columns())).toArray(),
        Arrays.stream(index).mapToDouble(i -> grid.y(i / grid.columns())).toArray());
  }

  int size() {
    return index.length;
  }

  /** Area of one cell, m². */
  double cellM2() {
    return grid.cell() * grid.cell();
  }
}
