package org.mottle.engine.grid;

import java.util.Arrays;
import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
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
  private final boolean[] touched;

  private CellCoverage(Sums sums) {
    this.grid = sums.grid;
    int n = 0;
    int[] found = new int[sums.rows * sums.columns];
    this.touched = new boolean[grid.size()];
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
        touched[cell] = sums.passed[at] || area > ROUNDING;
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
    Sums sums = new Sums(grid, area.getEnvelopeInternal());
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
    return touched[cell];
  }

  /** Sum of the covered areas, m². */
  public double areaM2() {
    return Arrays.stream(share).sum() * grid.cell() * grid.cell();
  }

  private static double unit(double value) {
    return Math.min(1, Math.max(0, value));
  }

  /**
   * The integrals, in cell units within the bounding box of the polygon. A piece of boundary adds
   * the trapezoid between itself and the eastern edge of its cell, and its height to every cell
   * east of it in the row: the latter by a running sum.
   */
  private static final class Sums {
    final CellGrid grid;
    final int firstRow;
    final int firstColumn;
    final int rows;
    final int columns;
    final double[] area;
    final double[] momentU;
    final double[] momentV;
    final double[] cover;
    final double[] coverV;
    final boolean[] passed;

    Sums(CellGrid grid, Envelope extent) {
      this.grid = grid;
      double cell = grid.cell();
      double slack = 1e-9 * (grid.columns() + grid.rows()) + 1e-6;
      double west = (extent.getMinX() - grid.west()) / cell;
      double east = (extent.getMaxX() - grid.west()) / cell;
      double top = (grid.north() - extent.getMaxY()) / cell;
      double bottom = (grid.north() - extent.getMinY()) / cell;
      if (west < -slack
          || top < -slack
          || east > grid.columns() + slack
          || bottom > grid.rows() + slack) {
        throw new IllegalArgumentException(
            "the polygon reaches beyond the grid: " + extent + " against " + grid);
      }
      this.firstColumn = within(west, grid.columns());
      this.firstRow = within(top, grid.rows());
      this.columns = within(east, grid.columns()) - firstColumn + 1;
      this.rows = within(bottom, grid.rows()) - firstRow + 1;
      int n = rows * (columns + 1);
      this.area = new double[n];
      this.momentU = new double[n];
      this.momentV = new double[n];
      this.cover = new double[n];
      this.coverV = new double[n];
      this.passed = new boolean[n];
    }

    private static int within(double position, int count) {
      return (int) Math.min(count - 1, Math.max(0, Math.floor(position)));
    }

    /** Shells count counter-clockwise, holes clockwise, however they are drawn. */
    void add(LinearRing ring, boolean shell) {
      CoordinateSequence points = ring.getCoordinateSequence();
      boolean clockwise = Area.ofRingSigned(points) > 0;
      double sign = clockwise == shell ? -1 : 1;
      double u = u(points.getX(0));
      double v = v(points.getY(0));
      for (int i = 1; i < points.size(); i++) {
        double nextU = u(points.getX(i));
        double nextV = v(points.getY(i));
        addSegment(u, v, nextU, nextV, sign);
        u = nextU;
        v = nextV;
      }
    }

    private double u(double x) {
      double u = (x - grid.west()) / grid.cell() - firstColumn;
      return Math.min(columns, Math.max(0, u));
    }

    private double v(double y) {
      double v = (grid.north() - y) / grid.cell() - firstRow;
      return Math.min(rows, Math.max(0, v));
    }

    private void addSegment(double u0, double v0, double u1, double v1, double sign) {
      int first = within(Math.min(v0, v1), rows);
      int last = within(Math.max(v0, v1), rows);
      double slope = v1 == v0 ? 0 : (u1 - u0) / (v1 - v0);
      boolean down = v1 >= v0;
      for (int r = first; r <= last; r++) {
        double enter = down ? Math.max(v0, r) : Math.min(v0, r + 1);
        double leave = down ? Math.min(v1, r + 1) : Math.max(v1, r);
        double from = enter == v0 ? u0 : u0 + (enter - v0) * slope;
        double to = leave == v1 ? u1 : u0 + (leave - v0) * slope;
        addInRow(r, from, enter - r, to, leave - r, sign);
      }
    }

    private void addInRow(int r, double u0, double v0, double u1, double v1, double sign) {
      int first = within(Math.min(u0, u1), columns);
      int last = within(Math.max(u0, u1), columns);
      double slope = u1 == u0 ? 0 : (v1 - v0) / (u1 - u0);
      boolean east = u1 >= u0;
      for (int c = first; c <= last; c++) {
        double enter = east ? Math.max(u0, c) : Math.min(u0, c + 1);
        double leave = east ? Math.min(u1, c + 1) : Math.max(u1, c);
        double from = enter == u0 ? v0 : v0 + (enter - u0) * slope;
        double to = leave == u1 ? v1 : v0 + (leave - u0) * slope;
        if (first == last) {
          from = v0;
          to = v1;
        }
        addInCell(r * (columns + 1) + c, enter - c, from, leave - c, to, sign);
      }
    }

    private void addInCell(int at, double a, double p, double b, double q, double sign) {
      double height = sign * (q - p);
      double middle = 0.5 * (p + q);
      passed[at] = true;
      area[at] += height * (1 - 0.5 * (a + b));
      momentU[at] += height * 0.5 * (1 - (a * a + a * b + b * b) / 3);
      momentV[at] += height * (middle - (2 * p * a + p * b + q * a + 2 * q * b) / 6);
      cover[at + 1] += height;
      coverV[at + 1] += height * middle;
    }
  }
}
