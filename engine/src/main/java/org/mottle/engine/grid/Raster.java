package org.mottle.engine.grid;

/**
 * One number a cell; NaN where there is none. Immutable: the array is copied in and never handed
 * out.
 */
public final class Raster {
  private final CellGrid grid;
  private final double[] values;

  /**
   * @param grid the cells
   * @param values {@code grid.size()} numbers, row 0 (north) first, west to east
   */
  public Raster(CellGrid grid, double[] values) {
    if (values.length != grid.size()) {
      throw new IllegalArgumentException(
          "a raster of " + grid.size() + " cells needs as many values, was " + values.length);
    }
    this.grid = grid;
    this.values = values.clone();
  }

  public CellGrid grid() {
    return grid;
  }

  public double value(int row, int column) {
    return values[grid.index(row, column)];
  }

  public double value(int index) {
    return values[index];
  }

  public boolean has(int index) {
    return !Double.isNaN(values[index]);
  }

  /** A copy of the numbers, row 0 first. */
  public double[] values() {
    return values.clone();
  }
}
