package org.mottle.engine.terrain;

import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * Heights of the ground at cell centres, m above one datum; NaN marks a void. Everything in this
 * package depends on differences of height only, so the datum changes nothing but contour levels.
 * Immutable.
 */
public final class ElevationModel {
  private static final int[] ROW_STEP = {-1, -1, 0, 1, 1, 1, 0, -1};
  private static final int[] COLUMN_STEP = {0, 1, 1, 1, 0, -1, -1, -1};

  private final CellGrid grid;
  private final double[] heights;
  private final int voids;

  private ElevationModel(CellGrid grid, double[] own) {
    this.grid = grid;
    this.heights = own;
    int missing = 0;
    for (int i = 0; i < own.length; i++) {
      if (Double.isInfinite(own[i])) {
        throw new IllegalArgumentException(
            "the height in row %d, column %d must be finite or NaN (a void), was %s"
                .formatted(i / grid.columns(), i % grid.columns(), own[i]));
      }
      missing += Double.isNaN(own[i]) ? 1 : 0;
    }
    this.voids = missing;
    if (missing == own.length) {
      throw new IllegalArgumentException(
          "an elevation model needs at least one height, all " + missing + " cells are voids");
    }
  }

  /**
   * @param raster heights, m; NaN where unknown
   * @throws IllegalArgumentException when a height is infinite or there is none
   */
  public static ElevationModel of(Raster raster) {
    return new ElevationModel(raster.grid(), raster.values());
  }

  /** Takes over an array that nobody else holds. */
  static ElevationModel owning(CellGrid grid, double[] heights) {
    return new ElevationModel(grid, heights);
  }

  public CellGrid grid() {
    return grid;
  }

  /** Height of a cell, m; NaN in a void. */
  public double height(int index) {
    return heights[index];
  }

  public boolean has(int index) {
    return !Double.isNaN(heights[index]);
  }

  /** Number of cells without a height. */
  public int voids() {
    return voids;
  }

  /** The heights as a raster; a copy. */
  public Raster raster() {
    return new Raster(grid, heights);
  }

  /** The heights themselves; to be read only. */
  double[] heights() {
    return heights;
  }

  /** Index of the cell a place lies in, or -1 beyond the grid. */
  int cellAt(double x, double y) {
    double column = Math.floor((x - grid.west()) / grid.cell());
    double row = Math.floor((grid.north() - y) / grid.cell());
    boolean within = column >= 0 && column < grid.columns() && row >= 0 && row < grid.rows();
    return within ? grid.index((int) row, (int) column) : -1;
  }

  /**
   * Index of the neighbour in direction k (0 north, clockwise; odd ones are diagonal), or -1 where
   * the grid ends or a void lies.
   */
  int neighbour(int row, int column, int k) {
    int r = row + ROW_STEP[k];
    int c = column + COLUMN_STEP[k];
    if (r < 0 || c < 0 || r >= grid.rows() || c >= grid.columns()) {
      return -1;
    }
    int at = r * grid.columns() + c;
    return Double.isNaN(heights[at]) ? -1 : at;
  }
}
