package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;

class EvennessTest {
  private static final CellGrid GRID = CellGrid.covering(new Envelope(0, 3, 0, 3), 1);

  @Test
  void byHand() {
    // eight cells 10, 12, ... 24 of mean 17: driest quarter 10 and 12, mean deviation 4
    double[] values = {24, 10, 12, 14, Double.NaN, 16, 18, 20, 22};
    Evenness evenness = Evenness.of(new Raster(GRID, values));
    assertThat(evenness.lowQuarter()).isCloseTo(11.0 / 17, within(1e-12));
    assertThat(evenness.uniformityPct()).isCloseTo(100 * (1 - 4.0 / 17), within(1e-10));
  }

  @Test
  void aFlatSurfaceIsEven() {
    double[] values = new double[9];
    java.util.Arrays.fill(values, 21.5);
    Evenness evenness = Evenness.of(new Raster(GRID, values));
    assertThat(evenness.lowQuarter()).isEqualTo(1);
    assertThat(evenness.uniformityPct()).isEqualTo(100);
  }

  @Test
  void noCellNoFigure() {
    double[] values = new double[9];
    java.util.Arrays.fill(values, Double.NaN);
    Evenness evenness = Evenness.of(new Raster(GRID, values));
    assertThat(evenness.lowQuarter()).isNaN();
    assertThat(evenness.uniformityPct()).isNaN();
  }
}
