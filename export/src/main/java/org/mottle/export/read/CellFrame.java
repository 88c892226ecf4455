package org.mottle.export.read;

import org.locationtech.jts.geom.Envelope;

/**
 * Where the cells of a file lie; it may have more than one grid in memory can hold.
 *
 * @param west outer edge, in the units of the CRS
 * @param north outer edge
 * @param cell side
 * @param columns west to east
 * @param rows north to south
 */
record CellFrame(double west, double north, double cell, int columns, int rows) {
  /** How far from a whole multiple, in cells, the edges of two files may lie apart. */
  private static final double OUT_OF_LINE = 0.01;

  Envelope box() {
    return new Envelope(west, west + columns * cell, north - rows * cell, north);
  }

  /** Whether the cells of the other are cells of the same lattice. */
  boolean linesUpWith(CellFrame other) {
    double longest = Math.max(Math.max(columns, rows), Math.max(other.columns, other.rows));
    return Math.abs(cell - other.cell) * longest < OUT_OF_LINE * cell
        && isWhole((other.west - west) / cell)
        && isWhole((other.north - north) / cell);
  }

  private static boolean isWhole(double cells) {
    return Math.abs(cells - Math.rint(cells)) <= OUT_OF_LINE;
  }
}
