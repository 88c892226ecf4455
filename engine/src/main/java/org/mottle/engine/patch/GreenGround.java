package org.mottle.engine.patch;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;

/**
 * The covered cells of a green, numbered north first, west to east, with their eight neighbours and
 * their places among the cells at which the surface is wanted. Eight, because a surface that is
 * linear between centres joins cells that meet in a corner as often as it parts them. Immutable.
 */
final class GreenGround {
  static final int NONE = -1;
  private static final int NEIGHBOURS = 8;

  private final GreenCells cells;
  private final CellCoverage coverage;
  private final int[] numberOf;
  private final int[] position;
  private final int[] neighbours;

  GreenGround(Geometry outline, GreenCells cells) {
    CellGrid grid = cells.surfaceGrid();
    this.cells = cells;
    this.coverage = CellCoverage.of(outline, grid);
    this.numberOf = new int[grid.size()];
    this.position = new int[coverage.size()];
    this.neighbours = new int[NEIGHBOURS * coverage.size()];
    Arrays.fill(numberOf, NONE);
    int[] positions = CoveredGround.places(cells);
    for (int i = 0; i < coverage.size(); i++) {
      numberOf[coverage.cell(i)] = i;
      position[i] = positions[coverage.cell(i)];
    }
    for (int i = 0; i < coverage.size(); i++) {
      addNeighbours(i, grid);
    }
  }

  private void addNeighbours(int i, CellGrid grid) {
    int row = coverage.cell(i) / grid.columns();
    int column = coverage.cell(i) % grid.columns();
    int at = NEIGHBOURS * i;
    for (int r = row - 1; r <= row + 1; r++) {
      for (int c = column - 1; c <= column + 1; c++) {
        if (r != row || c != column) {
          boolean on = r >= 0 && c >= 0 && r < grid.rows() && c < grid.columns();
          neighbours[at++] = on ? numberOf[grid.index(r, c)] : NONE;
        }
      }
    }
  }

  GreenCells cells() {
    return cells;
  }

  CellCoverage coverage() {
    return coverage;
  }

  int size() {
    return position.length;
  }

  /** Index on the surface grid. */
  int cell(int i) {
    return coverage.cell(i);
  }

  double areaM2(int i) {
    return coverage.areaM2(i);
  }

  double x(int i) {
    return coverage.x(i);
  }

  double y(int i) {
    return coverage.y(i);
  }

  /** Number of the cell at an index of the surface grid, or NONE. */
  int number(int cell) {
    return numberOf[cell];
  }

  /** Place of a cell among those at which the surface is wanted. */
  int position(int i) {
    return position[i];
  }

  /** The k-th of eight neighbours, or NONE. */
  int neighbour(int i, int k) {
    return neighbours[NEIGHBOURS * i + k];
  }

  CellWeights weights(int[] numbers) {
    int[] at = new int[numbers.length];
    double[] areaM2 = new double[numbers.length];
    for (int i = 0; i < numbers.length; i++) {
      at[i] = position[numbers[i]];
      areaM2[i] = coverage.areaM2(numbers[i]);
    }
    double cell = coverage.grid().cell();
    return new CellWeights(at, areaM2, cell * cell, cells.neededCount());
  }
}
