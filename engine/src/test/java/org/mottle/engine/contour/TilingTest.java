package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.function.ToIntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

class TilingTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;
  private static final ToIntFunction<int[]> EACH =
      passed -> passed[0] * 9 + passed[1] * 3 + passed[2];

  private static Geometry green(Random random, boolean holes) {
    return InventedGround.green(random, X, Y, 13, 72, holes);
  }

  private static Layer layer(GreenCells cells, DoubleBinaryOperator values, double... limits) {
    return Layer.atLeast(InventedGround.raster(cells, values), limits);
  }

  /** Points of a tile have, within what a line may be off, values that the rule puts there. */
  private static void classesAreThoseOfTheRule(
      String what,
      Geometry outline,
      List<Layer> layers,
      ToIntFunction<int[]> rule,
      List<Band> tiles) {
    Random random = new Random(11);
    List<LinearSurface> surfaces = LinearSurface.alike(layers.stream().map(Layer::raster).toList());
    Envelope extent = outline.getEnvelopeInternal();
    int asked = 0;
    for (int k = 0; k < 300; k++) {
      Coordinate p =
          new Coordinate(
              extent.getMinX() + random.nextDouble() * extent.getWidth(),
              extent.getMinY() + random.nextDouble() * extent.getHeight());
      int[] passed = new int[layers.size()];
      boolean clear = true;
      for (int i = 0; i < passed.length; i++) {
        double value = surfaces.get(i).value(p.x, p.y);
        double slack = BandLaws.changeNearby(surfaces.get(i), p) + 1e-7;
        passed[i] = Level.passed(layers.get(i).levels(), value);
        for (Level level : layers.get(i).levels()) {
          clear &= Math.abs(level.value() - value) > slack;
        }
      }
      for (Band tile : tiles) {
        if (clear && SimplePointInAreaLocator.locate(p, tile.geometry()) == Location.INTERIOR) {
          assertThat(tile.index())
              .as("%s: class at %s", what, p)
              .isEqualTo(rule.applyAsInt(passed));
          asked++;
        }
      }
    }
    assertThat(asked).as("%s: points asked", what).isGreaterThan(20);
  }

  @ParameterizedTest
  @CsvSource({"0.25, 4", "0.5, 12", "1, 12"})
  void severalSmoothSurfacesTileTheGround(double cell, int seeds) {
    for (int seed = 0; seed < seeds; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, seed % 2 == 0);
      GreenCells cells = GreenCells.of(outline, cell);
      List<Layer> layers =
          List.of(
              layer(cells, InventedGround.smooth(random, 13), 16, 20),
              layer(cells, InventedGround.smooth(random, 9), 17, 19),
              layer(cells, InventedGround.smooth(random, 13), 18));
      String what = "seed " + seed + ", cell " + cell;
      List<Band> tiles = Tiling.of(outline, layers).by(EACH, 0);
      BandLaws.tile(what, outline, tiles);
      BandLaws.validatorFindsNothing(what, tiles);
      assertThat(BandLaws.shortestSegment(tiles)).as(what).isGreaterThan(0.5e-3);
      classesAreThoseOfTheRule(what, outline, layers, EACH, tiles);
    }
  }

  /** Lines of two surfaces that are the same but for a little run along each other everywhere. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 1e-12, 1e-9, 1e-6, 1e-4, 1e-3, 1e-2})
  void linesThatNearlyCoincideBreakNothing(double apart) {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, seed % 2 == 0);
      GreenCells cells = GreenCells.of(outline, 0.5);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      DoubleBinaryOperator wobble = InventedGround.smooth(random, 3);
      List<Layer> layers =
          List.of(
              layer(cells, values, 16, 20),
              layer(
                  cells,
                  (x, y) -> values.applyAsDouble(x, y) + apart * (wobble.applyAsDouble(x, y) - 18),
                  16,
                  20),
              layer(cells, (x, y) -> 36 - values.applyAsDouble(x, y), 16, 20));
      String what = "seed " + seed + ", apart " + apart;
      List<Band> tiles = Tiling.of(outline, layers).by(EACH, 0);
      BandLaws.tile(what, outline, tiles);
      classesAreThoseOfTheRule(what, outline, layers, EACH, tiles);
    }
  }

  @Test
  void roughSurfacesAndWholeNumbersTileTheGround() {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, seed % 2 == 0);
      GreenCells cells = GreenCells.of(outline, 1);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      List<Layer> layers =
          List.of(
              layer(
                  cells, (x, y) -> values.applyAsDouble(x, y) + 2 * random.nextGaussian(), 16, 20),
              layer(cells, (x, y) -> Math.rint(values.applyAsDouble(x, y)), 16, 20),
              layer(cells, (x, y) -> random.nextInt(3), 1));
      BandLaws.tile("seed " + seed, outline, Tiling.of(outline, layers).by(EACH, 0));
      BandLaws.tile("merged, seed " + seed, outline, Tiling.of(outline, layers).by(EACH, 2));
    }
  }

  @Test
  void groundThatLacksAValueInOneSurfaceHasNoClass() {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, false);
      GreenCells cells = GreenCells.of(outline, 0.5);
      DoubleBinaryOperator values = InventedGround.smooth(random, 13);
      List<Layer> layers =
          List.of(
              layer(cells, values, 16, 20),
              layer(cells, (x, y) -> x > X + 5 ? Double.NaN : values.applyAsDouble(y, x), 17, 19),
              layer(cells, (x, y) -> random.nextInt(40) == 0 ? Double.NaN : y - Y, 0));
      List<Band> tiles = Tiling.of(outline, layers).by(EACH, 0.25);
      BandLaws.tile("seed " + seed, outline, tiles);
      assertThat(tiles.get(0).index()).isEqualTo(Band.NO_VALUE);
      assertThat(tiles.get(0).geometry().getArea()).isGreaterThan(50);
    }
  }

  @Test
  void smallPartsGoToANeighbourAndTheGroundStaysTiled() {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, seed % 2 == 0);
      GreenCells cells = GreenCells.of(outline, 0.5);
      List<Layer> layers =
          List.of(
              layer(cells, InventedGround.smooth(random, 5), 16, 20),
              layer(cells, InventedGround.smooth(random, 4), 17, 19),
              layer(cells, InventedGround.smooth(random, 6), 18));
      Tiling tiling = Tiling.of(outline, layers);
      List<Band> tiles = tiling.by(EACH, 1);
      BandLaws.tile("seed " + seed, outline, tiles);
      assertThat(parts(tiles)).as("seed %d", seed).isLessThan(parts(tiling.by(EACH, 0)));
      largePartsStay("seed " + seed, tiling.by(EACH, 0), tiles);
      for (Band tile : tiles) {
        for (int i = 0; i < tile.geometry().getNumGeometries(); i++) {
          assertThat(tile.geometry().getGeometryN(i).getArea())
              .as("seed %d, class %d", seed, tile.index())
              .isGreaterThan(0.9999);
        }
      }
    }
  }

  private static void largePartsStay(String what, List<Band> all, List<Band> merged) {
    for (Band tile : all) {
      for (int i = 0; i < tile.geometry().getNumGeometries(); i++) {
        Geometry part = tile.geometry().getGeometryN(i);
        if (part.getArea() > 1.0001) {
          Geometry after =
              merged.stream().filter(m -> m.index() == tile.index()).findFirst().get().geometry();
          assertThat(OverlayNGRobust.overlay(part, after, OverlayNG.DIFFERENCE).getArea())
              .as("%s: part of class %d lost", what, tile.index())
              .isLessThan(1e-6);
        }
      }
    }
  }

  private static int parts(List<Band> tiles) {
    return tiles.stream().mapToInt(t -> t.geometry().getNumGeometries()).sum();
  }

  @Test
  void whatIsPartByTheRuleIsPartOnTheMapExactly() {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      Geometry outline = green(random, true);
      GreenCells cells = GreenCells.of(outline, 0.5);
      Tiling tiling =
          Tiling.of(
              outline, List.of(layer(cells, InventedGround.smooth(random, 7), 16, 16.02, 18)));
      List<Geometry> sets = new ArrayList<>();
      for (int least = 1; least <= 3; least++) {
        int from = least;
        for (Band tile : tiling.by(passed -> passed[0] >= from ? 1 : 0, 0.25)) {
          if (tile.index() == 1) {
            sets.add(tile.geometry());
          }
        }
      }
      assertThat(sets).hasSize(3);
      for (int i = 1; i < 3; i++) {
        double beyond =
            OverlayNGRobust.overlay(sets.get(i), sets.get(i - 1), OverlayNG.DIFFERENCE).getArea();
        assertThat(beyond).as("seed %d, set %d beyond the larger", seed, i).isLessThan(1e-9);
        assertThat(sets.get(i).getArea()).isLessThan(sets.get(i - 1).getArea());
      }
    }
  }

  @Test
  void bandsAreTheTilesOfOneLayer() {
    Random random = new Random(2);
    Geometry outline = green(random, true);
    Raster surface =
        InventedGround.raster(GreenCells.of(outline, 0.5), InventedGround.smooth(random, 13));
    List<Band> tiles =
        Tiling.of(outline, List.of(Layer.atLeast(surface, 16, 20))).by(passed -> passed[0], 0);
    List<Band> bands = Bands.tile(outline, surface, new double[] {16, 20});
    assertThat(tiles).extracting(Band::index).containsExactly(0, 1, 2);
    for (int i = 0; i < 3; i++) {
      assertThat(new WKBWriter().write(tiles.get(i).geometry()))
          .isEqualTo(new WKBWriter().write(bands.get(i).geometry()));
    }
  }

  @Test
  void twoPlanesCutARectangleInFour() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 20, Y + 10);
    GreenCells cells = GreenCells.of(outline, 0.5);
    List<Layer> layers =
        List.of(layer(cells, (x, y) -> x - X, 5), layer(cells, (x, y) -> y - Y + 0.1 * (x - X), 4));
    List<Band> tiles = Tiling.of(outline, layers).by(passed -> passed[0] * 2 + passed[1], 0);
    double[] area = {5 * 3.75, 5 * 6.25, 15 * (4 - 1.25), 15 * (6 + 1.25)};
    for (int i = 0; i < 4; i++) {
      assertThat(tiles.get(i).geometry().getArea())
          .as("tile %d", i)
          .isCloseTo(area[i], within(0.1));
    }
    BandLaws.tile("two planes", outline, tiles);
    BandLaws.validatorFindsNothing("two planes", tiles);
  }

  @Test
  void limitsBelongToTheSideTheirLayerSays() {
    Geometry outline = green(new Random(1), false);
    GreenCells cells = GreenCells.of(outline, 0.5);
    Raster flat = InventedGround.raster(cells, (x, y) -> 0.5);
    assertThat(Tiling.of(outline, List.of(Layer.atLeast(flat, 0.5))).by(p -> p[0], 0))
        .extracting(Band::index)
        .containsExactly(1);
    assertThat(Tiling.of(outline, List.of(Layer.above(flat, 0.5))).by(p -> p[0], 0))
        .extracting(Band::index)
        .containsExactly(0);
  }

  @Test
  void refuseSurfacesOfDifferentGrids() {
    Geometry outline = InventedGround.rectangle(0, 0, 2, 2);
    Raster one = new Raster(new CellGrid(0, 2, 1, 2, 2), new double[4]);
    Raster other = new Raster(new CellGrid(0, 2, 2, 1, 1), new double[1]);
    List<Layer> layers = List.of(Layer.atLeast(one, 1), Layer.atLeast(other, 1));
    assertThatThrownBy(() -> Tiling.of(outline, layers))
        .hasMessageContaining("surfaces must lie on one grid")
        .hasMessageContaining("cell=2.0");
    assertThatThrownBy(() -> Layer.atLeast(one, 0.8, 0.5))
        .hasMessage("limits must ascend, were 0.8 then 0.5");
  }
}
