package org.mottle.engine.terrain;

import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

/** Invented ground for the tests. */
final class Grounds {
  private Grounds() {}

  /** Heights of a formula at the cell centres; west and south edges at 0. */
  static ElevationModel of(int columns, int rows, double cell, DoubleBinaryOperator height) {
    CellGrid grid = new CellGrid(0, rows * cell, cell, columns, rows);
    double[] z = new double[grid.size()];
    for (int i = 0; i < z.length; i++) {
      z[i] = height.applyAsDouble(grid.x(i % columns), grid.y(i / columns));
    }
    return ElevationModel.of(new Raster(grid, z));
  }

  static ElevationModel rows(double cell, double[]... rows) {
    CellGrid grid = new CellGrid(0, rows.length * cell, cell, rows[0].length, rows.length);
    double[] z = new double[grid.size()];
    for (int i = 0; i < z.length; i++) {
      z[i] = rows[i / grid.columns()][i % grid.columns()];
    }
    return ElevationModel.of(new Raster(grid, z));
  }

  /** Waves, a slope and noise; many hollows. */
  static ElevationModel rough(int columns, int rows, double cell, long seed) {
    Random random = new Random(seed);
    return of(
        columns,
        rows,
        cell,
        (x, y) ->
            20
                + 0.02 * x
                - 0.013 * y
                + 0.3 * Math.sin(x / 3)
                + 0.25 * Math.cos(y / 4)
                + 0.02 * random.nextGaussian());
  }

  static ElevationModel map(ElevationModel model, java.util.function.IntToDoubleFunction height) {
    double[] z = new double[model.grid().size()];
    for (int i = 0; i < z.length; i++) {
      z[i] = height.applyAsDouble(i);
    }
    return ElevationModel.of(new Raster(model.grid(), z));
  }

  /** The index a cell of a square model has after a quarter turn clockwise. */
  static int turned(int index, int n) {
    int row = index / n;
    int column = index % n;
    return column * n + (n - 1 - row);
  }

  /** The square model turned by 90 degrees clockwise. */
  static ElevationModel turned(ElevationModel model) {
    int n = model.grid().columns();
    double[] z = new double[n * n];
    for (int i = 0; i < z.length; i++) {
      z[turned(i, n)] = model.height(i);
    }
    return ElevationModel.of(new Raster(model.grid(), z));
  }
}
