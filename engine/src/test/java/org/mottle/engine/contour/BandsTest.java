package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

class BandsTest {
  private static final double[] LIMITS = {16, 20};
  private static final double X = 500_000;
  private static final double Y = 5_316_300;

  private static List<Band> checked(
      String what, Geometry outline, double cell, DoubleBinaryOperator values, double... limits) {
    Raster surface = InventedGround.raster(GreenCells.of(outline, cell), values);
    List<Band> bands = Bands.tile(outline, surface, limits);
    BandLaws.check(what, outline, surface, limits, bands);
    return bands;
  }

  @ParameterizedTest
  @CsvSource({
    "500000, 5316300, 13, 0.25, 10",
    "500000, 5316300, 13, 0.5, 15",
    "200000, 5600000, 13, 0.3, 15",
    "200000, 5600000, 13, 1, 15",
    "200000, 5600000, 1260, 20, 6"
  })
  void tileSmoothGround(double x, double y, double radius, double cell, int seeds) {
    for (int seed = 0; seed < seeds; seed++) {
      Random random = new Random(seed);
      Geometry outline =
          InventedGround.green(random, x + seed * 0.37, y, radius, 72, seed % 2 == 1);
      DoubleBinaryOperator values = InventedGround.smooth(random, radius);
      String what = "seed " + seed + ", cell " + cell;
      List<Band> bands = checked(what, outline, cell, values, LIMITS);
      BandLaws.validatorFindsNothing(what, bands);
      assertThat(BandLaws.brokenInDegrees(bands)).as(what).isZero();
      assertThat(BandLaws.shortestSegment(bands)).as(what).isGreaterThan(0.9e-3);
    }
  }

  @ParameterizedTest
  @CsvSource({"13, 0.25, 2", "13, 0.5, 8", "13, 1, 12", "1260, 20, 1"})
  void tileRoughGround(double radius, double cell, int seeds) {
    for (int seed = 0; seed < seeds; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, radius, 72, seed % 2 == 1);
      DoubleBinaryOperator trend = InventedGround.smooth(random, radius);
      String what = "seed " + seed + ", cell " + cell;
      List<Band> bands =
          checked(
              what,
              outline,
              cell,
              (px, py) -> trend.applyAsDouble(px, py) + 2 * random.nextGaussian(),
              LIMITS);
      BandLaws.validatorFindsNothing(what, bands);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 0.3})
  void tileGroundWhoseValuesAreLimitsExactly(double cell) {
    for (int seed = 0; seed < 10; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      checked(
          "whole numbers, seed " + seed,
          outline,
          cell,
          (x, y) -> Math.rint(values.applyAsDouble(x, y)),
          LIMITS);
      Geometry box =
          InventedGround.rectangle(X + cell / 2, Y + cell / 2, X + 20.5 * cell, Y + 14.5 * cell);
      checked("0 to 4 at random, seed " + seed, box, cell, (x, y) -> random.nextInt(5), 1, 3);
      checked("0 to 2 at random, seed " + seed, box, cell, (x, y) -> random.nextInt(3), 1);
    }
  }

  @Test
  void tileManyBandsOnSteepGround() {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, false);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      checked("12 limits, seed " + seed, outline, 0.5, values, 12, 13, 14, 15, 16, 17, 18, 19, 20);
      checked(
          "limits a millimetre apart, seed " + seed,
          outline,
          0.5,
          (x, y) -> 1000 * (values.applyAsDouble(x, y) - 18),
          LIMITS);
      checked(
          "spikes, seed " + seed,
          outline,
          0.5,
          (x, y) -> random.nextInt(20) == 0 ? 1e6 : 15 + random.nextDouble(),
          LIMITS);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.0003, 0.05, 0.6, 3})
  void tileNarrowNecks(double width) {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.dumbbell(X + random.nextDouble(), Y, width);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      checked("neck of " + width + " m, seed " + seed, outline, 0.5, values, LIMITS);
    }
  }

  @Test
  void tileMultipolygonsAndFineOutlines() {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry pair = InventedGround.pair(random, X, Y, 10);
      DoubleBinaryOperator values = InventedGround.smooth(random, 10);
      checked("two greens, seed " + seed, pair, 0.5, values, LIMITS);
      Geometry fine = InventedGround.green(random, X, Y, 3, 5000, true);
      checked("a vertex every 4 mm, seed " + seed, fine, 0.25, values, LIMITS);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "POLYGON ((0 0, 20 0, 20 20, 0 20, 0 0), (20 10, 10 13, 10 7, 20 10))",
        "POLYGON ((0 0, 20 0.01, 20.003 20, 0 20, 0 0), (13.37 0.006685, 15 5, 11 5, 13.37 0.006685))",
        "MULTIPOLYGON (((0 0, 10 0, 10 10, 0 10, 0 0)), ((10 10, 20 10, 20 20, 10 20, 10 10)))",
        "POLYGON ((0 0, 20 0, 20 0, 20 20, 0 20, 0 20, 0 0))"
      })
  void tileOutlinesThatTouchThemselvesOrRepeatAVertex(String wkt) throws ParseException {
    Geometry outline = new WKTReader().read(wkt);
    for (int seed = 0; seed < 10; seed++) {
      DoubleBinaryOperator values = InventedGround.smooth(new Random(seed), 10);
      checked(wkt + ", seed " + seed, outline, 0.5, values, LIMITS);
    }
  }

  @Test
  void groundWithoutValuesIsABandOfItsOwn() {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, false);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      List<Band> bands =
          checked(
              "missing values, seed " + seed,
              outline,
              0.5,
              (x, y) -> random.nextInt(30) == 0 ? Double.NaN : values.applyAsDouble(x, y),
              LIMITS);
      assertThat(bands.get(0).index()).isEqualTo(Band.NO_VALUE);
    }
  }

  @Test
  void anOutlineBeyondTheRasterIsGroundWithoutValues() {
    Geometry outline = InventedGround.rectangle(0, 0, 10, 10);
    Raster near = new Raster(new CellGrid(4, 6, 1, 2, 2), new double[] {1, 1, 1, 1});
    List<Band> bands = Bands.tile(outline, near, new double[] {0});
    BandLaws.tile("a raster of 2 x 2 cells", outline, bands);
    assertThat(bands).extracting(Band::index).containsExactly(Band.NO_VALUE, 1);
    assertThat((Object) bands.get(1).geometry().getEnvelopeInternal())
        .isEqualTo(new Envelope(4.5, 5.5, 4.5, 5.5));
    Raster far = new Raster(new CellGrid(90, 95, 1, 1, 1), new double[] {1});
    assertThat(Bands.tile(outline, far, LIMITS))
        .extracting(Band::index)
        .containsExactly(Band.NO_VALUE);
  }

  @ParameterizedTest
  @CsvSource({
    "15.99, 0",
    "16, 1",
    "18, 1",
    "20, 1",
    "20.01, 2",
  })
  void limitsBelongToTheBandBetweenThem(double value, int index) {
    Geometry outline = InventedGround.green(new Random(1), X, Y, 13, 72, true);
    List<Band> bands = checked("flat at " + value, outline, 0.5, (x, y) -> value, LIMITS);
    assertThat(bands).extracting(Band::index).containsExactly(index);
    assertThat(bands.get(0).geometry().getNumPoints()).isEqualTo(outline.getNumPoints());
  }

  @Test
  void roundingOfAFlatSurfaceDrawsNoIslands() {
    Random random = new Random(3);
    Geometry outline = InventedGround.green(random, X, Y, 13, 72, false);
    for (double limit : LIMITS) {
      List<Band> bands =
          checked("flat", outline, 0.5, (x, y) -> limit + 1e-12 * random.nextGaussian(), LIMITS);
      assertThat(bands).extracting(Band::index).containsExactly(1);
    }
  }

  @Test
  void limitsBeyondTheDataDrawNothing() {
    Random random = new Random(4);
    Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
    DoubleBinaryOperator values = InventedGround.smooth(random, 13);
    List<Band> bands = checked("limits beyond", outline, 0.5, values, -50, 90);
    assertThat(bands).extracting(Band::index).containsExactly(1);
    assertThat(checked("no limits", outline, 0.5, values))
        .extracting(Band::index)
        .containsExactly(0);
  }

  @Test
  void aPlaneIsCutStraight() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 20, Y + 10);
    List<Band> bands = checked("plane", outline, 0.5, (x, y) -> x - X, 5, 12.5);
    assertThat(bands.get(0).geometry().getArea()).isCloseTo(50, within(1e-9));
    assertThat(bands.get(1).geometry().getArea()).isCloseTo(75, within(1e-9));
    assertThat(bands.get(1).geometry().getNumPoints()).isEqualTo(5);
  }

  @Test
  void limitsAlongTheOutlineCutNothingOff() {
    Geometry outline = InventedGround.rectangle(X + 0.25, Y + 0.25, X + 20.25, Y + 10.25);
    List<Band> bands = checked("plane", outline, 0.5, (x, y) -> x - X, 0.25, 20.25);
    assertThat(bands).extracting(Band::index).containsExactly(1);
  }

  @Test
  void theSameInputGivesTheSameBytes() {
    for (int seed = 0; seed < 3; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
      Raster surface =
          InventedGround.raster(GreenCells.of(outline, 0.5), (x, y) -> random.nextInt(40));
      List<Band> once = Bands.tile(outline, surface, LIMITS);
      List<Band> again = Bands.tile(outline, surface, LIMITS);
      for (int b = 0; b < once.size(); b++) {
        assertThat(new WKBWriter().write(again.get(b).geometry()))
            .isEqualTo(new WKBWriter().write(once.get(b).geometry()));
      }
    }
  }

  @Test
  void refuseWhatCannotBeCut() {
    Geometry outline = InventedGround.rectangle(0, 0, 4, 4);
    Raster surface = InventedGround.raster(GreenCells.of(outline, 1), (x, y) -> x);
    assertThatThrownBy(() -> Bands.tile(outline, surface, new double[] {3, 2}))
        .hasMessage("limits must ascend, were 3.0 then 2.0");
    assertThatThrownBy(() -> Bands.tile(outline, surface, new double[] {Double.NaN}))
        .hasMessageContaining("NaN");
    assertThatThrownBy(() -> Bands.tile(outline.getBoundary(), surface, LIMITS))
        .hasMessage("an outline must be a non-empty polygon, was LinearRing");
  }
}
