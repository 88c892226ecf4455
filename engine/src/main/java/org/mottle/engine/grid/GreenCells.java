package org.mottle.engine.grid;

import java.util.Arrays;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryComponentFilter;
import org.locationtech.jts.geom.LineString;

/**
 * The cells of an outline. Three sets, each in the order of the grid (north first, west to east):
 *
 * <ul>
 *   <li><b>inside</b>: the centre lies inside the outline. A centre on a western or lower edge is
 *       in, on an eastern or upper edge it is out, so that outlines that share an edge share no
 *       cell;
 *   <li><b>covered</b>: some part is covered, with its exact area ({@link CellCoverage});
 *   <li><b>needed</b>: the covered cells and their eight neighbours. Values at their centres let
 *       linear interpolation reach every point of the outline. They lie on {@link #surfaceGrid()},
 *       the grid grown by one cell on every side.
 * </ul>
 *
 * <p>Found by scan lines in time proportional to the cells of the bounding box plus those the
 * boundary passes. Immutable; depends on outline and cell only, so it may be kept over surveys.
 */
public final class GreenCells {
  private final CellGrid grid;
  private final CellGrid surfaceGrid;
  private final CellCoverage coverage;
  private final boolean[] inside;
  private final int insideCount;
  private final int[] needed;

  private GreenCells(Geometry outline, CellGrid grid) {
    this.grid = grid;
    this.surfaceGrid = grid.grown(1);
    this.coverage = CellCoverage.of(outline, grid);
    this.inside = centresInside(outline, grid);
    int count = 0;
    for (boolean in : inside) {
      count += in ? 1 : 0;
    }
    this.insideCount = count;
    this.needed = neededCells();
  }

  /**
   * The cells of an outline, their edges on whole multiples of {@code cell}.
   *
   * @param outline polygon or multipolygon, holes allowed, m
   * @param cell side of a cell, m
   */
  public static GreenCells of(Geometry outline, double cell) {
    return of(outline, CellGrid.covering(outline.getEnvelopeInternal(), cell));
  }

  /** The cells of an outline on a grid that covers it. */
  public static GreenCells of(Geometry outline, CellGrid grid) {
    if (outline.isEmpty()) {
      throw new IllegalArgumentException("an empty outline has no cells: " + outline.toText());
    }
    return new GreenCells(outline, grid);
  }

  /** The cells of the map. */
  public CellGrid grid() {
    return grid;
  }

  /** The cells of the map and one ring round them: where the surface is known. */
  public CellGrid surfaceGrid() {
    return surfaceGrid;
  }

  /** Covered area and centroid of every cell of {@link #grid()} that the outline covers. */
  public CellCoverage coverage() {
    return coverage;
  }

  public int insideCount() {
    return insideCount;
  }

  /** Whether the centre of a cell of {@link #grid()} lies inside the outline. */
  public boolean inside(int cell) {
    return inside[cell];
  }

  /** Number of centres at which the surface is wanted. */
  public int neededCount() {
    return needed.length;
  }

  /** Index on {@link #surfaceGrid()} of the i-th centre at which the surface is wanted. */
  public int neededCell(int i) {
    return needed[i];
  }

  /** x of the centres at which the surface is wanted, m. */
  public double[] neededX() {
    double[] x = new double[needed.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = surfaceGrid.x(needed[i] % surfaceGrid.columns());
    }
    return x;
  }

  /** y of the centres at which the surface is wanted, m. */
  public double[] neededY() {
    double[] y = new double[needed.length];
    for (int i = 0; i < y.length; i++) {
      y[i] = surfaceGrid.y(needed[i] / surfaceGrid.columns());
    }
    return y;
  }

  /**
   * The surface to interpolate in, on {@link #surfaceGrid()}.
   *
   * @param values one for each needed centre; NaN where there is none
   */
  public Raster surface(double[] values) {
    requireNeeded(values);
    double[] all = new double[surfaceGrid.size()];
    Arrays.fill(all, Double.NaN);
    for (int i = 0; i < needed.length; i++) {
      all[needed[i]] = values[i];
    }
    return new Raster(surfaceGrid, all);
  }

  /**
   * The map to hand out, on {@link #grid()}: NaN in cells whose centre is not inside.
   *
   * @param values one for each needed centre; NaN where there is none
   */
  public Raster map(double[] values) {
    requireNeeded(values);
    double[] all = new double[grid.size()];
    Arrays.fill(all, Double.NaN);
    for (int i = 0; i < needed.length; i++) {
      int row = needed[i] / surfaceGrid.columns() - 1;
      int column = needed[i] % surfaceGrid.columns() - 1;
      if (row >= 0 && row < grid.rows() && column >= 0 && column < grid.columns()) {
        int cell = grid.index(row, column);
        if (inside[cell]) {
          all[cell] = values[i];
        }
      }
    }
    return new Raster(grid, all);
  }

  private void requireNeeded(double[] values) {
    if (values.length != needed.length) {
      throw new IllegalArgumentException(
          "a surface needs " + needed.length + " values, was " + values.length);
    }
  }

  private int[] neededCells() {
    int columns = surfaceGrid.columns();
    boolean[] wanted = new boolean[surfaceGrid.size()];
    int count = 0;
    for (int i = 0; i < coverage.touchedCount(); i++) {
      int cell = coverage.touchedCell(i);
      int centre = surfaceGrid.index(cell / grid.columns() + 1, cell % grid.columns() + 1);
      for (int dr = -columns; dr <= columns; dr += columns) {
        for (int at = centre + dr - 1; at <= centre + dr + 1; at++) {
          count += wanted[at] ? 0 : 1;
          wanted[at] = true;
        }
      }
    }
    int[] found = new int[count];
    int n = 0;
    for (int at = 0; at < wanted.length; at++) {
      if (wanted[at]) {
        found[n++] = at;
      }
    }
    return found;
  }

  /** Even-odd scan line through the centres of every row: a running flip instead of a sort. */
  private static boolean[] centresInside(Geometry outline, CellGrid grid) {
    boolean[] flips = new boolean[grid.size()];
    outline.apply(
        (GeometryComponentFilter)
            part -> {
              if (part instanceof LineString ring) {
                addFlips(ring.getCoordinateSequence(), grid, flips);
              }
            });
    for (int row = 0; row < grid.rows(); row++) {
      boolean in = false;
      for (int at = grid.index(row, 0); at < grid.index(row, 0) + grid.columns(); at++) {
        in ^= flips[at];
        flips[at] = in;
      }
    }
    return flips;
  }

  private static void addFlips(CoordinateSequence ring, CellGrid grid, boolean[] flips) {
    for (int i = 1; i < ring.size(); i++) {
      double u0 = (ring.getX(i - 1) - grid.west()) / grid.cell() - 0.5;
      double v0 = (grid.north() - ring.getY(i - 1)) / grid.cell() - 0.5;
      double u1 = (ring.getX(i) - grid.west()) / grid.cell() - 0.5;
      double v1 = (grid.north() - ring.getY(i)) / grid.cell() - 0.5;
      int first = (int) Math.max(0, Math.ceil(Math.min(v0, v1)));
      int end = (int) Math.min(grid.rows(), Math.ceil(Math.max(v0, v1)));
      for (int row = first; row < end; row++) {
        double u = u0 + (row - v0) / (v1 - v0) * (u1 - u0);
        int column = (int) Math.max(0, Math.ceil(u));
        if (column < grid.columns()) {
          flips[grid.index(row, column)] ^= true;
        }
      }
    }
  }
}
