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
  private final int firstRow;
  private final int firstColumn;
  private final int columns;
  private final boolean[] touched;
  private int[] touchedCells;
  private int touchedCount;
  private int[] cells;
  private double[] share;
  private double[] centroidU;
  private double[] centroidV;
  private int count;

  private CellCoverage(CoverageSums sums) {
    this.grid = sums.grid;
    this.firstRow = sums.firstRow;
    this.firstColumn = sums.firstColumn;
    this.columns = sums.columns;
    this.touched = new boolean[sums.rows * columns];
    this.touchedCells = new int[touched.length];
    this.cells = new int[touched.length];
    this.share = new double[touched.length];
    this.centroidU = new double[touched.length];
    this.centroidV = new double[touched.length];
    for (int r = 0; r < sums.rows; r++) {
      addRow(sums, r);
    }
    this.touchedCells = Arrays.copyOf(touchedCells, touchedCount);
    this.cells = Arrays.copyOf(cells, count);
    this.share = Arrays.copyOf(share, count);
    this.centroidU = Arrays.copyOf(centroidU, count);
    this.centroidV = Arrays.copyOf(centroidV, count);
  }

  /** Cells the boundary does not pass are covered whole or not at all. */
  private void addRow(CoverageSums sums, int r) {
    double cover = 0;
    double coverV = 0;
    int cell = grid.index(firstRow + r, firstColumn);
    int at = r * (columns + 1);
    for (int c = 0; c < columns; c++, cell++, at++) {
      cover += sums.cover[at];
      coverV += sums.coverV[at];
      boolean passed = sums.passed[at];
      if (passed || cover > 0.5) {
        touched[r * columns + c] = true;
        touchedCells[touchedCount++] = cell;
        if (passed) {
          addPart(sums, at, cell, cover, coverV);
        } else {
          add(cell, 1, 0.5, 0.5);
        }
      }
    }
  }

  private void addPart(CoverageSums sums, int at, int cell, double cover, double coverV) {
    double area = cover + sums.area[at];
    if (area > 1 - ROUNDING) {
      add(cell, 1, 0.5, 0.5);
    } else if (area > ROUNDING) {
      double u = (0.5 * cover + sums.momentU[at]) / area;
      double v = (coverV + sums.momentV[at]) / area;
      add(cell, area, Math.min(1, Math.max(0, u)), Math.min(1, Math.max(0, v)));
    }
  }

  private void add(int cell, double part, double u, double v) {
    cells[count] = cell;
    share[count] = part;
    centroidU[count] = u;
    centroidV[count++] = v;
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
    return grid.west() + (cells[i] % grid.columns() + centroidU[i]) * grid.cell();
  }

  /** y of the centroid of the covered part, m. */
  public double y(int i) {
    return grid.north() - (cells[i] / grid.columns() + centroidV[i]) * grid.cell();
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
}
