package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/**
 * The continuous surface through the cell centres of a raster. Between four centres it consists of
 * four triangles that meet in the middle, where the value is the mean of the four: along the edges
 * and in the middle it equals bilinear interpolation, it has no preferred diagonal, and saddles are
 * resolved by the mean. Level lines of this surface are exactly straight in every triangle.
 *
 * <p>NaN beyond the outer centres and wherever one of the four centres has no value. Immutable.
 */
public final class LinearSurface {
  private final CellGrid grid;
  private final double[] values;

  public LinearSurface(Raster raster) {
    this(raster.grid(), raster.values());
  }

  private LinearSurface(CellGrid grid, double[] values) {
    this.grid = grid;
    this.values = values;
  }

  /** Surfaces of one grid, each without value wherever one of them has none. */
  static List<LinearSurface> alike(List<Raster> rasters) {
    List<LinearSurface> surfaces = new ArrayList<>();
    CellGrid grid = rasters.get(0).grid();
    for (Raster raster : rasters) {
      if (!raster.grid().equals(grid)) {
        throw new IllegalArgumentException(
            "surfaces must lie on one grid, were on " + grid + " and " + raster.grid());
      }
    }
    for (Raster raster : rasters) {
      double[] values = raster.values();
      for (Raster other : rasters) {
        blankWhereMissing(values, other);
      }
      surfaces.add(new LinearSurface(grid, values));
    }
    return surfaces;
  }

  private static void blankWhereMissing(double[] values, Raster other) {
    for (int i = 0; i < values.length; i++) {
      if (!other.has(i)) {
        values[i] = Double.NaN;
      }
    }
  }

  /** Side of a cell, m. */
  double cell() {
    return grid.cell();
  }

  /** The least value at a cell centre; infinite when there is none. */
  double least() {
    double least = Double.POSITIVE_INFINITY;
    for (double value : values) {
      least = value < least ? value : least;
    }
    return least;
  }

  /** The greatest value at a cell centre; infinite when there is none. */
  double most() {
    double most = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      most = value > most ? value : most;
    }
    return most;
  }

  CellGrid grid() {
    return grid;
  }

  /** Value at a cell centre. */
  double centre(int at) {
    return values[at];
  }

  /** Whether the four centres south and east of a centre, itself included, have values. */
  boolean known(int row, int column) {
    return row >= 0
        && column >= 0
        && row < grid.rows() - 1
        && column < grid.columns() - 1
        && !Double.isNaN(middle(grid.index(row, column)));
  }

  /** Value in the middle of four centres of which the given one is the north-western. */
  double middle(int at) {
    int below = at + grid.columns();
    return 0.25 * ((values[at] + values[at + 1]) + (values[below] + values[below + 1]));
  }

  /** The interpolated value at a place, m. */
  public double value(double x, double y) {
    double u = (x - grid.west()) / grid.cell() - 0.5;
    double v = (grid.north() - y) / grid.cell() - 0.5;
    if (!(u >= 0 && v >= 0 && u <= grid.columns() - 1 && v <= grid.rows() - 1)) {
      return Double.NaN;
    }
    int column = Math.max(0, Math.min(grid.columns() - 2, (int) u));
    int row = Math.max(0, Math.min(grid.rows() - 2, (int) v));
    if (!known(row, column)) {
      return Double.NaN;
    }
    return inQuad(row, column, u - column, v - row);
  }

  /** A triangle is corner, corner, middle; p runs along its outer edge, q from there inwards. */
  private double inQuad(int row, int column, double u, double v) {
    int at = grid.index(row, column);
    double northWest = values[at];
    double northEast = values[at + 1];
    double southWest = values[at + grid.columns()];
    double southEast = values[at + grid.columns() + 1];
    double middle = middle(at);
    boolean upright = Math.abs(v - 0.5) >= Math.abs(u - 0.5);
    if (upright) {
      return v <= 0.5
          ? inTriangle(northWest, northEast, middle, u, v)
          : inTriangle(southWest, southEast, middle, u, 1 - v);
    }
    return u <= 0.5
        ? inTriangle(northWest, southWest, middle, v, u)
        : inTriangle(northEast, southEast, middle, v, 1 - u);
  }

  private static double inTriangle(double first, double second, double middle, double p, double q) {
    return first * (1 - p - q) + second * (p - q) + middle * 2 * q;
  }
}
