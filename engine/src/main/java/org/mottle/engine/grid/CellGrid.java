package org.mottle.engine.grid;

import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.check.Check;

/**
 * Square cells in rows and columns. Row 0 is the northern row, column 0 the western column; {@code
 * west} and {@code north} are outer edges, not centres.
 *
 * @param west x of the western edge, m
 * @param north y of the northern edge, m
 * @param cell side of a cell, m
 * @param columns number of columns
 * @param rows number of rows
 */
public record CellGrid(double west, double north, double cell, int columns, int rows) {

  public CellGrid {
    Check.finite("west", west, "m");
    Check.finite("north", north, "m");
    Check.above("cell", cell, 0, "m");
    Check.atLeast("columns", columns, 1, "");
    Check.atLeast("rows", rows, 1, "");
    if ((long) columns * rows > Integer.MAX_VALUE - 8) {
      throw new IllegalArgumentException(
          columns + " x " + rows + " cells are more than one grid can hold; use a larger cell");
    }
  }

  /**
   * The grid that covers an extent, its edges on whole multiples of the cell, so that grids of the
   * same cell size line up.
   */
  public static CellGrid covering(Envelope extent, double cell) {
    Check.above("cell", cell, 0, "m");
    double west = Math.floor(extent.getMinX() / cell) * cell;
    double north = Math.ceil(extent.getMaxY() / cell) * cell;
    double columns = Math.max(1, Math.ceil((extent.getMaxX() - west) / cell));
    double rows = Math.max(1, Math.ceil((north - extent.getMinY()) / cell));
    if (columns * rows > Integer.MAX_VALUE - 8) {
      throw new IllegalArgumentException(
          String.format(
              java.util.Locale.ROOT,
              "%.0f x %.0f cells of %s m are more than one grid can hold; use a larger cell",
              columns,
              rows,
              cell));
    }
    return new CellGrid(west, north, cell, (int) columns, (int) rows);
  }

  /** The same grid with {@code margin} more cells on every side. */
  public CellGrid grown(int margin) {
    return new CellGrid(
        west - margin * cell, north + margin * cell, cell, columns + 2 * margin, rows + 2 * margin);
  }

  public int size() {
    return columns * rows;
  }

  public int index(int row, int column) {
    return row * columns + column;
  }

  /** x of the centre of a column, m. */
  public double x(int column) {
    return west + (column + 0.5) * cell;
  }

  /** y of the centre of a row, m. */
  public double y(int row) {
    return north - (row + 0.5) * cell;
  }

  public double east() {
    return west + columns * cell;
  }

  public double south() {
    return north - rows * cell;
  }
}
