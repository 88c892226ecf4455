package org.mottle.engine.terrain;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.mottle.engine.grid.CellGrid;

/**
 * The outline of a set of cells: their sides with the set on one side only, straight runs joined
 * and broken where cells meet at a corner alone, put together to polygons.
 */
final class CellOutline {
  private final CellGrid grid;
  private final GeometryFactory factory;
  private final List<LineString> sides = new ArrayList<>();
  private final int firstRow;
  private final int firstColumn;
  private final int rows;
  private final int columns;
  private final boolean[] in;

  private CellOutline(CellGrid grid, CellStack cells, GeometryFactory factory) {
    this.grid = grid;
    this.factory = factory;
    int top = Integer.MAX_VALUE;
    int left = Integer.MAX_VALUE;
    int bottom = 0;
    int right = 0;
    for (int i = 0; i < cells.size(); i++) {
      int row = cells.get(i) / grid.columns();
      int column = cells.get(i) % grid.columns();
      top = Math.min(top, row);
      bottom = Math.max(bottom, row);
      left = Math.min(left, column);
      right = Math.max(right, column);
    }
    // one empty row and column round the cells
    this.firstRow = top - 1;
    this.firstColumn = left - 1;
    this.rows = bottom - top + 3;
    this.columns = right - left + 3;
    this.in = new boolean[rows * columns];
    for (int i = 0; i < cells.size(); i++) {
      int row = cells.get(i) / grid.columns() - firstRow;
      int column = cells.get(i) % grid.columns() - firstColumn;
      in[row * columns + column] = true;
    }
  }

  static Geometry of(CellGrid grid, CellStack cells, GeometryFactory factory) {
    CellOutline outline = new CellOutline(grid, cells, factory);
    outline.addSides(true);
    outline.addSides(false);
    Polygonizer polygonizer = new Polygonizer(true);
    polygonizer.add(outline.sides);
    return polygonizer.getGeometry();
  }

  /** Runs of sides between two rows (or two columns) with the set on the same side of them. */
  private void addSides(boolean level) {
    int lines = level ? rows : columns;
    int length = level ? columns : rows;
    for (int line = 1; line < lines; line++) {
      int start = 0;
      int kind = 0;
      for (int at = 0; at <= length; at++) {
        int here = at == length ? 0 : kind(level, line, at);
        if (here != kind) {
          if (kind != 0) {
            sides.add(
                factory.createLineString(
                    new Coordinate[] {corner(level, line, start), corner(level, line, at)}));
          }
          start = at;
          kind = here;
        }
      }
    }
  }

  /** 0: no side; 1: the set lies beyond the line, -1: before it. */
  private int kind(boolean level, int line, int at) {
    boolean before = level ? in[(line - 1) * columns + at] : in[at * columns + line - 1];
    boolean beyond = level ? in[line * columns + at] : in[at * columns + line];
    return before == beyond ? 0 : beyond ? 1 : -1;
  }

  private Coordinate corner(boolean level, int line, int at) {
    int row = firstRow + (level ? line : at);
    int column = firstColumn + (level ? at : line);
    return new Coordinate(grid.west() + column * grid.cell(), grid.north() - row * grid.cell());
  }
}
