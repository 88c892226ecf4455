package org.mottle.engine.grid;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.Polygonal;

/**
 * How much of every cell a polygon covers, and where the centroid of the covered part lies: exact,
 * from the boundary integrals of 1, x and y, cell by cell (Green's theorem), so that the covered
 * areas sum to the polygon's area. Holes and multipolygons are allowed.
 *
 * <p>Cost: the cells the boundary passes plus the cells of the polygon's bounding box. Immutable.
 */
public final class CellCoverage {
  /** A share of a cell below this is rounding, not ground. */
  private static final double ROUNDING = 1e-12;

  private final CellGrid grid;
  private final int[] cells;
  private final double[] share;
  private final double[] centroidX;
  private final double[] centroidY;
  private final int firstRow;
  private final int firstColumn;
  private final int columns;
  private final boolean[] touched;
  private final int[] touchedCells;

  private CellCoverage(CoverageSums sums) {
    this.grid = sums.grid;
    int n = 0;
    int touches = 0;
    int[] found = new int[sums.rows * sums.columns];
    this.firstRow = sums.firstRow;
    this.firstColumn = sums.firstColumn;
    this.columns = sums.columns;
    this.touched = new boolean[found.length];
    int[] reached = new int[found.length];
    double[] foundShare = new double[found.length];
    double[] u = new double[found.length];
    double[] v = new double[found.length];
    for (int r = 0; r < sums.rows; r++) {
      double cover = 0;
      double coverV = 0;
      for (int c = 0; c < sums.columns; c++) {
        int at = r * (sums.columns + 1) + c;
        int cell = grid.index(sums.firstRow + r, sums.firstColumn + c);
        cover += sums.cover[at];
        coverV += sums.coverV[at];
        double area = cover + sums.area[at];
        if (sums.passed[at] || area > ROUNDING) {
          touched[r * columns + c] = true;
          reached[touches++] = cell;
        }
        if (area > ROUNDING) {
          boolean whole = area > 1 - ROUNDING;
          found[n] = cell;
          foundShare[n] = whole ? 1 : area;
          u[n] = whole ? 0.5 : unit((0.5 * cover + sums.momentU[at]) / area);
          v[n] = whole ? 0.5 : unit((coverV + sums.momentV[at]) / area);
          n++;
        }
      }
    }
    this.touchedCells = Arrays.copyOf(reached, touches);
    this.cells = Arrays.copyOf(found, n);
    this.share = Arrays.copyOf(foundShare, n);
    this.centroidX = Arrays.copyOf(u, n);
    this.centroidY = Arrays.copyOf(v, n);
    for (int i = 0; i < n; i++) {
      centroidX[i] = grid.west() + (cells[i] % grid.columns() + u[i]) * grid.cell();
      centroidY[i] = grid.north() - (cells[i] / grid.columns() + v[i]) * grid.cell();
    }
  }

  /**
   * @param area polygon or multipolygon
   * @param grid cells that cover it
   * @throws IllegalArgumentException when {@code area} is not polygonal or reaches beyond the grid
   */
  public static CellCoverage of(Geometry area, CellGrid grid) {
    if (!(area instanceof Polygonal)) {
      throw new IllegalArgumentException(
          "only polygons cover cells, was " + area.getGeometryType());
    }
    CoverageSums sums = new CoverageSums(grid, area.getEnvelopeInternal());
    for (int p = 0; p < area.getNumGeometries(); p++) {
      Polygon polygon = (Polygon) area.getGeometryN(p);
      sums.add(polygon.getExteriorRing(), true);
      for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
        sums.add(polygon.getInteriorRingN(h), false);
      }
    }
    return new CellCoverage(sums);
  }

  public CellGrid grid() {
    return grid;
  }

  /** Number of cells of which some part is covered. */
  public int size() {
    return cells.length;
  }

  /** Index of the i-th covered cell, ascending with i: north first, west to east. */
  public int cell(int i) {
    return cells[i];
  }

  /** Covered area of the i-th covered cell, m². */
  public double areaM2(int i) {
    return share[i] * grid.cell() * grid.cell();
  }

  /** x of the centroid of the covered part; the cell's centre when it is covered whole, m. */
  public double x(int i) {
    return centroidX[i];
  }

  /** y of the centroid of the covered part, m. */
  public double y(int i) {
    return centroidY[i];
  }

  /** Whether the polygon or its boundary reaches into the cell, with however little. */
  public boolean touches(int cell) {
    int row = cell / grid.columns() - firstRow;
    int column = cell % grid.columns() - firstColumn;
    return row >= 0
        && column >= 0
        && column < columns
        && row * columns < touched.length
        && touched[row * columns + column];
  }

  /** Number of cells the polygon or its boundary reaches into. */
  public int touchedCount() {
    return touchedCells.length;
  }

  /** Index of the i-th such cell, ascending with i. */
  public int touchedCell(int i) {
    return touchedCells[i];
  }

  /** Sum of the covered areas, m². */
  public double areaM2() {
    double sum = 0;
    for (double part : share) {
      sum += part;
    }
    return sum * grid.cell() * grid.cell();
  }

  private static double unit(double value) {
    return Math.min(1, Math.max(0, value));
  }
}
