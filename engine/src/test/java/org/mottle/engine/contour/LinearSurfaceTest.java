package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

class LinearSurfaceTest {
  private static final CellGrid GRID = new CellGrid(200_000, 5_600_010, 0.5, 7, 5);

  private static Raster random(long seed) {
    Random random = new Random(seed);
    return new Raster(GRID, random.doubles(GRID.size(), 10, 20).toArray());
  }

  @Test
  void goesThroughTheCentres() {
    Raster raster = random(1);
    LinearSurface surface = new LinearSurface(raster);
    for (int row = 0; row < GRID.rows(); row++) {
      for (int column = 0; column < GRID.columns(); column++) {
        assertThat(surface.value(GRID.x(column), GRID.y(row)))
            .isCloseTo(raster.value(row, column), within(1e-9));
      }
    }
  }

  @Test
  void isAPlaneWhereTheCentresAre() {
    double[] values = new double[GRID.size()];
    for (int i = 0; i < values.length; i++) {
      int row = i / GRID.columns();
      int column = i % GRID.columns();
      values[i] = 3 * (GRID.x(column) - GRID.west()) - 2 * (GRID.y(row) - GRID.north());
    }
    LinearSurface surface = new LinearSurface(new Raster(GRID, values));
    Random random = new Random(2);
    for (int k = 0; k < 500; k++) {
      double x = GRID.x(0) + random.nextDouble() * (GRID.x(6) - GRID.x(0));
      double y = GRID.y(4) + random.nextDouble() * (GRID.y(0) - GRID.y(4));
      assertThat(surface.value(x, y))
          .isCloseTo(3 * (x - GRID.west()) - 2 * (y - GRID.north()), within(1e-8));
    }
  }

  @Test
  void isContinuousAndEqualsBilinearInTheMiddle() {
    LinearSurface surface = new LinearSurface(random(3));
    Random random = new Random(4);
    for (int k = 0; k < 500; k++) {
      double x = GRID.x(0) + random.nextDouble() * 2.9;
      double y = GRID.y(4) + random.nextDouble() * 1.9;
      double step = 1e-6;
      assertThat(surface.value(x + step, y + step))
          .isCloseTo(surface.value(x, y), within(80 * step));
    }
    Raster raster = random(3);
    double mean =
        (raster.value(1, 2) + raster.value(1, 3) + raster.value(2, 2) + raster.value(2, 3)) / 4;
    assertThat(surface.value(GRID.x(2) + 0.25, GRID.y(1) - 0.25)).isCloseTo(mean, within(1e-8));
  }

  @Test
  void hasNoValueBeyondTheCentresOrBesideAMissingOne() {
    double[] values = random(5).values();
    values[GRID.index(2, 3)] = Double.NaN;
    LinearSurface surface = new LinearSurface(new Raster(GRID, values));
    assertThat(surface.value(GRID.x(0) - 0.01, GRID.y(1))).isNaN();
    assertThat(surface.value(GRID.x(3) + 0.2, GRID.y(2) + 0.2)).isNaN();
    assertThat(surface.value(GRID.x(4) + 0.2, GRID.y(2) + 0.2)).isFinite();
  }
}
