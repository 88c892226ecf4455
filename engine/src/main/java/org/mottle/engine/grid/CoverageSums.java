package org.mottle.engine.grid;

import org.locationtech.jts.algorithm.Area;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.LinearRing;

/**
 * The integrals, in cell units within the bounding box of the polygon. A piece of boundary adds the
 * trapezoid between itself and the eastern edge of its cell, and its height to every cell east of
 * it in the row: the latter by a running sum.
 */
final class CoverageSums {
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

  CoverageSums(CellGrid grid, Envelope extent) {
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
