package org.mottle.export.write;

import org.mottle.engine.check.Check;

/**
 * Where a picture lies, north up: outer edges and the size of a pixel, in the units of its CRS.
 *
 * @param west outer edge
 * @param north outer edge
 * @param pixelX width of a pixel
 * @param pixelY height of a pixel
 * @param columns west to east
 * @param rows north to south
 */
public record PictureFrame(
    double west, double north, double pixelX, double pixelY, int columns, int rows) {
  public PictureFrame {
    Check.finite("western edge", west, "");
    Check.finite("northern edge", north, "");
    Check.above("width of a pixel", pixelX, 0, "");
    Check.above("height of a pixel", pixelY, 0, "");
    Check.atLeast("columns", columns, 1, "");
    Check.atLeast("rows", rows, 1, "");
  }

  public double east() {
    return west + columns * pixelX;
  }

  public double south() {
    return north - rows * pixelY;
  }

  /** Middle of a column. */
  public double x(int column) {
    return west + (column + 0.5) * pixelX;
  }

  /** Middle of a row. */
  public double y(int row) {
    return north - (row + 0.5) * pixelY;
  }
}
