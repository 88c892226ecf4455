package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.interval.Interval;

class ExcursionsTest {

  @Test
  void areasAreThoseCountedCellByCell() {
    for (int seed = 0; seed < 5; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, 0, 0, 9, 60, true);
      GreenCells cells = GreenCells.of(outline, 0.7);
      int n = cells.neededCount();
      double[][] values = new double[20][n];
      Excursions.Builder builder = Excursions.builder(20, n);
      for (double[] one : values) {
        for (int i = 0; i < n; i++) {
          one[i] = i % 97 == 0 ? Double.NaN : random.nextGaussian();
        }
      }
      IntStream.range(0, 20).parallel().forEach(r -> builder.set(r, values[r], -0.5, 0.8));
      Excursions excursions = builder.build();
      Geometry part = InventedGround.green(random, 1, 0, 4, 40, false).intersection(outline);
      CellCoverage coverage = CellCoverage.of(part, cells.surfaceGrid());
      CellWeights weights = CellWeights.of(cells, part);
      for (int r = 0; r < 20; r++) {
        double dry = 0;
        double wet = 0;
        for (int k = 0; k < coverage.size(); k++) {
          int at = CoveredGround.places(cells)[coverage.cell(k)];
          assertThat(excursions.below(r, at)).isEqualTo(values[r][at] < -0.5);
          assertThat(excursions.above(r, at)).isEqualTo(values[r][at] > 0.8);
          dry += values[r][at] < -0.5 ? coverage.areaM2(k) : 0;
          wet += values[r][at] > 0.8 ? coverage.areaM2(k) : 0;
        }
        assertThat(excursions.areas(ZoneClass.DRY, weights)[r]).isCloseTo(dry, within(1e-9));
        assertThat(excursions.areas(ZoneClass.WET, weights)[r]).isCloseTo(wet, within(1e-9));
        assertThat(excursions.areas(ZoneClass.IN_BAND, weights)[r])
            .isCloseTo(part.getArea() - dry - wet, within(1e-6));
      }
    }
  }

  @Test
  void cellsMarkedOneByOneAreThoseOfTheValues() {
    double[] values = {1, 5, 9, Double.NaN, 5};
    Excursions set = Excursions.builder(1, 5).set(0, values, 3, 7).build();
    Excursions marked = Excursions.builder(1, 5).markBelow(0, 0).markAbove(0, 2).build();
    for (int i = 0; i < 5; i++) {
      assertThat(marked.below(0, i)).isEqualTo(set.below(0, i)).isEqualTo(i == 0);
      assertThat(marked.above(0, i)).isEqualTo(set.above(0, i)).isEqualTo(i == 2);
    }
  }

  @Test
  void refuseWhatDoesNotFit() {
    assertThatThrownBy(() -> Excursions.builder(1, 3).set(0, new double[2], 0, 1))
        .hasMessage("a realisation has 3 values, was 2");
    assertThatThrownBy(() -> Excursions.none(1).words(ZoneClass.IN_BAND, 0))
        .hasMessageContaining("IN_BAND");
  }

  @Test
  void intervalsOfASampleLieBetweenItsOrderStatistics() {
    double[] sample = IntStream.rangeClosed(0, 100).mapToDouble(i -> 100 - i).toArray();
    assertThat(Interval.of(sample)).isEqualTo(new Interval(5, 50, 95));
    assertThat(Interval.of(new double[] {7})).isEqualTo(new Interval(7, 7, 7));
    assertThat(Interval.of(new double[0]).low()).isNaN();
  }
}
