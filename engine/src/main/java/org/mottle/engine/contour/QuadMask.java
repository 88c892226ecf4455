package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CellGrid;

/**
 * The squares between four cell centres that an outline reaches into, and which of them have values
 * at all four. Only these are traced. Row and column are those of the north-western centre; they
 * are negative, or beyond the raster, where the outline reaches beyond it.
 */
final class QuadMask {
  private final LinearSurface surface;
  private final CellGrid quads;
  private final int margin;
  private final CellCoverage coverage;
  private final boolean[] active;
  private final int[] squares;
  private final double[] least;
  private final double[] most;
  private int count;

  QuadMask(Geometry outline, LinearSurface surface) {
    this.surface = surface;
    CellGrid grid = surface.grid();
    double cell = grid.cell();
    Envelope extent = outline.getEnvelopeInternal();
    double beyond =
        Math.max(
            Math.max(
                grid.west() + cell / 2 - extent.getMinX(),
                extent.getMaxX() - grid.east() + cell / 2),
            Math.max(
                extent.getMaxY() - grid.north() + cell / 2,
                grid.south() + cell / 2 - extent.getMinY()));
    this.margin = (int) Math.max(1, Math.ceil(beyond / cell) + 1);
    CellGrid shifted =
        new CellGrid(
            grid.west() + cell / 2, grid.north() - cell / 2, cell, grid.columns(), grid.rows());
    this.quads = shifted.grown(margin);
    this.coverage = CellCoverage.of(outline, quads);
    this.active = new boolean[grid.size()];
    this.squares = new int[coverage.touchedCount()];
    this.least = new double[squares.length];
    this.most = new double[squares.length];
    for (int i = 0; i < squares.length; i++) {
      int row = coverage.touchedCell(i) / quads.columns() - margin;
      int column = coverage.touchedCell(i) % quads.columns() - margin;
      if (surface.known(row, column)) {
        add(grid.index(row, column));
      }
    }
  }

  private void add(int at) {
    double a = surface.centre(at);
    double b = surface.centre(at + 1);
    double c = surface.centre(at + surface.grid().columns());
    double d = surface.centre(at + surface.grid().columns() + 1);
    active[at] = true;
    squares[count] = at;
    least[count] = Math.min(Math.min(a, b), Math.min(c, d));
    most[count++] = Math.max(Math.max(a, b), Math.max(c, d));
  }

  /** The squares between whose values there are some of [from, to], by index. */
  int[] between(double from, double to) {
    int[] found = new int[count];
    int n = 0;
    for (int i = 0; i < count; i++) {
      if (least[i] <= to && most[i] >= from) {
        found[n++] = squares[i];
      }
    }
    return Arrays.copyOf(found, n);
  }

  LinearSurface surface() {
    return surface;
  }

  /** Whether a square, by the index of its north-western centre, is touched and has values. */
  boolean active(int at) {
    return at >= 0 && at < active.length && active[at];
  }

  private boolean touched(int row, int column) {
    int r = row + margin;
    int c = column + margin;
    return r >= 0
        && c >= 0
        && r < quads.rows()
        && c < quads.columns()
        && coverage.touches(quads.index(r, c));
  }

  /** Edges between squares with and without values, as straight lines in local coordinates. */
  List<Chain> seams(Frame frame) {
    if (count == squares.length) {
      return List.of();
    }
    List<Chain> seams = new ArrayList<>();
    int lastRow = quads.rows() - margin;
    int lastColumn = quads.columns() - margin;
    for (int row = -margin; row < lastRow; row++) {
      int from = Integer.MIN_VALUE;
      for (int column = -margin; column <= lastColumn; column++) {
        boolean seam = seam(row - 1, column, row, column);
        if (seam && from == Integer.MIN_VALUE) {
          from = column;
        } else if (!seam && from != Integer.MIN_VALUE) {
          seams.add(line(frame, row, from, row, column));
          from = Integer.MIN_VALUE;
        }
      }
    }
    for (int column = -margin; column < lastColumn; column++) {
      int from = Integer.MIN_VALUE;
      for (int row = -margin; row <= lastRow; row++) {
        boolean seam = seam(row, column - 1, row, column);
        if (seam && from == Integer.MIN_VALUE) {
          from = row;
        } else if (!seam && from != Integer.MIN_VALUE) {
          seams.add(line(frame, from, column, row, column));
          from = Integer.MIN_VALUE;
        }
      }
    }
    return seams;
  }

  private boolean seam(int row, int column, int otherRow, int otherColumn) {
    return touched(row, column)
        && touched(otherRow, otherColumn)
        && surface.known(row, column) != surface.known(otherRow, otherColumn);
  }

  private Chain line(Frame frame, int row, int column, int toRow, int toColumn) {
    return new Chain(
        new double[] {Frame.fine(localX(frame, column)), Frame.fine(localX(frame, toColumn))},
        new double[] {Frame.fine(localY(frame, row)), Frame.fine(localY(frame, toRow))},
        false);
  }

  /** Local x of a column of centres; fractions lie between columns. */
  double localX(Frame frame, double column) {
    return frame.localX(surface.grid().west()) + (column + 0.5) * surface.grid().cell();
  }

  /** Local y of a row of centres. */
  double localY(Frame frame, double row) {
    return frame.localY(surface.grid().north()) - (row + 0.5) * surface.grid().cell();
  }
}
