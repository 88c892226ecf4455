package org.mottle.engine.evenness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.survey.TargetBand;

class EvennessTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final double NO_WILT = Double.NaN;

  private static Geometry square(double side) {
    return FACTORY.toGeometry(new Envelope(0, side, 0, side));
  }

  private static Geometry disc() {
    return FACTORY.createPoint(new Coordinate(0, 0)).buffer(9.3, 16);
  }

  private static EvennessFigures of(CoveredGround ground, double wilt, double[] values) {
    return new EvennessMeter(ground, wilt, Optional.empty()).of(values);
  }

  /**
   * Merriam & Keller 1978, Farm Irrigation System Evaluation, pp. 41-43: sixteen cans, in inches;
   * published DU 55 %, coefficient of uniformity 75 %, mean 0.575. The forms are the same, so
   * sixteen cells of equal area must give them.
   */
  @Test
  void publishedCanTestComesOutOfSixteenCells() {
    double[] cans = {
      .57, .69, .83, .65, .61, .38, .27, .64, .51, .26, .36, .52, .79, .65, .61, .86
    };
    GreenCells cells = GreenCells.of(square(4), 1);
    CoveredGround ground = CoveredGround.of(cells, square(4));
    double[] values = new double[cells.neededCount()];
    for (int i = 0; i < ground.size(); i++) {
      values[ground.place(i)] = cans[i];
    }
    EvennessFigures even = of(ground, NO_WILT, values);
    assertThat(ground.size()).isEqualTo(16);
    assertThat(even.mean()).isCloseTo(0.575, within(1e-12));
    assertThat(even.lowQuarter()).isCloseTo(0.552173913, within(1e-9));
    assertThat(even.uniformityPct()).isCloseTo(74.8913043, within(1e-7));
    assertThat(even.lowQuarterAvailable()).isNaN();
  }

  @Test
  void everyPlaceCountsByItsAreaHoweverTheCellsLie() {
    // a plane over a disc: mean at the centre, variance slope² r² / 4
    for (double cell : new double[] {0.5, 0.2}) {
      GreenCells cells = GreenCells.of(disc(), cell);
      CoveredGround ground = CoveredGround.of(cells, disc());
      double[] x = cells.neededX();
      double[] values = Arrays.stream(x).map(v -> 20 + 0.3 * v).toArray();
      EvennessFigures even = of(ground, NO_WILT, values);
      double radius = Math.sqrt(disc().getArea() / Math.PI);
      assertThat(even.mean()).isCloseTo(20, within(0.01 * cell));
      assertThat(even.sd()).isCloseTo(0.3 * radius / 2, within(0.02 * cell));
    }
  }

  @Test
  void theLowQuarterAgreesWithSorting() {
    GreenCells cells = GreenCells.of(disc(), 0.5);
    CoveredGround ground = CoveredGround.of(cells, disc());
    SplittableRandom random = new SplittableRandom(4);
    for (int t = 0; t < 50; t++) {
      // coarse steps in half of the trials: many cells are equal
      int step = t % 2 == 0 ? 1 : 1000;
      double[] values =
          IntStream.range(0, cells.neededCount())
              .mapToDouble(i -> Math.rint(random.nextDouble(5, 30) * step) / step)
              .toArray();
      assertThat(new LowQuarter(ground).mean(values))
          .isCloseTo(bySorting(ground, values), within(1e-9));
    }
  }

  private static double bySorting(CoveredGround ground, double[] values) {
    int[] order =
        IntStream.range(0, ground.size())
            .boxed()
            .sorted((a, b) -> Double.compare(values[ground.place(a)], values[ground.place(b)]))
            .mapToInt(i -> i)
            .toArray();
    double wanted = ground.areaM2() / 4;
    double left = wanted;
    double sum = 0;
    for (int i : order) {
      double part = Math.min(left, ground.areaM2(i));
      sum += part * values[ground.place(i)];
      left -= part;
    }
    return sum / wanted;
  }

  @Test
  void scaleChangesNoShareAndAFloorOfBoundWaterFlatters() {
    GreenCells cells = GreenCells.of(disc(), 0.5);
    CoveredGround ground = CoveredGround.of(cells, disc());
    SplittableRandom random = new SplittableRandom(5);
    double[] values = random.doubles(cells.neededCount(), 14, 26).toArray();
    EvennessFigures one = of(ground, 10, values);
    EvennessFigures two = of(ground, 20, Arrays.stream(values).map(v -> 2 * v).toArray());
    assertThat(two.lowQuarter()).isCloseTo(one.lowQuarter(), within(1e-12));
    assertThat(two.lowQuarterAvailable()).isCloseTo(one.lowQuarterAvailable(), within(1e-12));
    assertThat(two.uniformityPct()).isCloseTo(one.uniformityPct(), within(1e-9));
    assertThat(two.variationPct()).isCloseTo(one.variationPct(), within(1e-9));
    assertThat(two.sd()).isCloseTo(2 * one.sd(), within(1e-9));
    assertThat(one.lowQuarterAvailable()).isLessThan(one.lowQuarter());
    double[] even = new double[cells.neededCount()];
    Arrays.fill(even, 17);
    EvennessFigures flat = of(ground, 10, even);
    assertThat(flat.lowQuarter()).isCloseTo(1, within(1e-12));
    assertThat(flat.uniformityPct()).isCloseTo(100, within(1e-9));
    assertThat(flat.sd()).isCloseTo(0, within(1e-9));
  }

  @Test
  void sharesOfTheBandSumToOneAndLimitsBelongToIt() {
    GreenCells cells = GreenCells.of(square(4), 1);
    CoveredGround ground = CoveredGround.of(cells, square(4));
    double[] values = new double[cells.neededCount()];
    for (int i = 0; i < 16; i++) {
      values[ground.place(i)] = 10 + i;
    }
    EvennessFigures f =
        new EvennessMeter(ground, NO_WILT, Optional.of(TargetBand.of(14, 20))).of(values);
    assertThat(f.dryShare()).isEqualTo(4 / 16.0);
    assertThat(f.wetShare()).isEqualTo(5 / 16.0);
    assertThat(f.bandShare()).isEqualTo(7 / 16.0);
    assertThat(of(ground, NO_WILT, values).dryShare()).isNaN();
  }

  @Test
  void intervalsComeFromTheRealisationsAndTheSdFromTheirSquares() {
    EvennessFigures[] figures = new EvennessFigures[101];
    for (int i = 0; i <= 100; i++) {
      figures[i] =
          new EvennessFigures(i, i, 0.5, i < 60 ? Double.NaN : 0.2, 90, Double.NaN, Double.NaN);
    }
    Evenness even = Evenness.of(figures);
    assertThat(even.mean().low()).isEqualTo(5);
    assertThat(even.mean().best()).isEqualTo(50);
    assertThat(even.mean().high()).isEqualTo(95);
    // Σ i² / 101 = 100 · 201 / 6
    assertThat(even.sd().best()).isCloseTo(Math.sqrt(100 * 201 / 6.0), within(1e-9));
    assertThat(even.lowQuarterAvailable().known()).isFalse();
    assertThat(even.dryShare().known()).isFalse();
    assertThat(even.lowQuarter().holds(0.5)).isTrue();
  }
}
