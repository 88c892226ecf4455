package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.survey.TargetBand;

class PatchesTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;

  private static List<Patch> patches(
      Geometry outline, Raster surface, double low, double high, List<Coordinate> readings) {
    TargetBand band = new TargetBand("", low, high, "", "");
    return Patches.of(
        Zones.of(outline, surface, band, RegionMean.UNKNOWN),
        surface,
        readings,
        RegionMean.UNKNOWN);
  }

  private static DoubleBinaryOperator hill(double x, double y, double height) {
    return (px, py) -> height * Math.max(0, 1 - Math.hypot(px - X - x, py - Y - y) / 4);
  }

  /** Cones on flat ground are cut in circles whose size is known. */
  @Test
  void circlesHaveTheAreaWidthAndReadingsOfCircles() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 20);
    DoubleBinaryOperator large = hill(10, 10, 8);
    DoubleBinaryOperator small = hill(25, 5, 6);
    DoubleBinaryOperator dry = hill(33, 12, -8);
    Raster surface =
        InventedGround.raster(
            GreenCells.of(outline, 0.1),
            (x, y) ->
                18
                    + large.applyAsDouble(x, y)
                    + small.applyAsDouble(x, y)
                    + dry.applyAsDouble(x, y));
    List<Coordinate> readings =
        List.of(
            new Coordinate(X + 10, Y + 10),
            new Coordinate(X + 12.5, Y + 10),
            new Coordinate(X + 13.5, Y + 10),
            new Coordinate(X + 33, Y + 12));
    List<Patch> patches = patches(outline, surface, 16, 20, readings);
    assertThat(patches)
        .extracting(Patch::kind)
        .containsExactly(ZoneClass.DRY, ZoneClass.WET, ZoneClass.WET);
    assertThat(patches).extracting(Patch::number).containsExactly(1, 2, 3);
    assertThat(patches).extracting(Patch::readings).containsExactly(1, 2, 0);
    double[] radius = {3, 3, 4 * (1 - 2.0 / 6)};
    double[] mean = {18 - (8 - 8.0 * 2 * 3 / 12), 18 + 4, 18 + 6 - 6 * 2 * radius[2] / 12};
    for (int i = 0; i < 3; i++) {
      Patch patch = patches.get(i);
      double area = Math.PI * radius[i] * radius[i];
      assertThat(patch.areaM2()).as("patch %d", i + 1).isCloseTo(area, within(0.01 * area));
      assertThat(patch.widthM()).as("patch %d", i + 1).isCloseTo(2 * radius[i], within(0.02));
      assertThat(patch.mean()).as("patch %d", i + 1).isCloseTo(mean[i], within(0.02));
    }
  }

  @Test
  void equalPatchesAreNumberedFromTheNorthWest() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 40);
    double[][] places = {{30, 10}, {10, 10}, {30, 30}, {10, 30}};
    Raster surface =
        InventedGround.raster(
            GreenCells.of(outline, 0.5),
            (x, y) -> {
              double sum = 18;
              for (double[] place : places) {
                sum += hill(place[0], place[1], 8).applyAsDouble(x, y);
              }
              return sum;
            });
    List<Patch> patches = patches(outline, surface, 16, 20, List.of());
    assertThat(patches)
        .extracting(p -> Math.round(p.geometry().getCentroid().getX() - X))
        .containsExactly(10L, 30L, 10L, 30L);
    assertThat(patches)
        .extracting(p -> Math.round(p.geometry().getCentroid().getY() - Y))
        .containsExactly(30L, 30L, 10L, 10L);
  }

  @Test
  void everyPatchIsAConnectedPartOfItsZoneAndNoneIsLost() {
    for (int seed = 0; seed < 6; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
      DoubleBinaryOperator trend = InventedGround.smooth(random, 13);
      Raster surface =
          InventedGround.raster(
              GreenCells.of(outline, 1),
              (x, y) -> trend.applyAsDouble(x, y) + random.nextGaussian());
      List<Zone> zones =
          Zones.of(outline, surface, new TargetBand("", 16, 20, "", ""), RegionMean.UNKNOWN);
      List<Patch> patches = Patches.of(zones, surface, List.of(), RegionMean.UNKNOWN);
      for (Zone zone : zones) {
        double area =
            patches.stream().filter(p -> p.kind() == zone.cls()).mapToDouble(Patch::areaM2).sum();
        double wanted = zone.cls() == ZoneClass.IN_BAND ? 0 : zone.areaM2();
        assertThat(area).as("seed %d, %s", seed, zone.cls()).isCloseTo(wanted, within(1e-9));
      }
      for (int i = 1; i < patches.size(); i++) {
        boolean sameKind = patches.get(i).kind() == patches.get(i - 1).kind();
        assertThat(!sameKind || patches.get(i).areaM2() <= patches.get(i - 1).areaM2()).isTrue();
      }
    }
  }

  /**
   * Where two cells meet in a corner the surface is half way between them: a lower level joins
   * them, a higher one parts them. Counts of the mask computed with SciPy (ndimage.label), by edges
   * and corners 4, by edges 6.
   */
  @ParameterizedTest
  @CsvSource({"0.49, 4", "0.51, 6"})
  void cornersJoinBelowHalfAndPartAbove(double level, int count) throws IOException {
    Raster mask = mask();
    CellGrid grid = mask.grid();
    Geometry outline =
        InventedGround.rectangle(
            grid.x(0), grid.y(grid.rows() - 1), grid.x(grid.columns() - 1), grid.y(0));
    assertThat(patches(outline, mask, -1, level, List.of())).hasSize(count);
  }

  private static Raster mask() throws IOException {
    try (InputStream in = PatchesTest.class.getResourceAsStream("/validation/patch_mask.csv")) {
      List<String> rows =
          new String(in.readAllBytes(), StandardCharsets.US_ASCII)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .toList();
      CellGrid grid = new CellGrid(0, 0, 1, rows.get(0).split(",").length + 2, rows.size() + 2);
      double[] values = new double[grid.size()];
      for (int r = 0; r < rows.size(); r++) {
        String[] cells = rows.get(r).split(",");
        for (int c = 0; c < cells.length; c++) {
          values[grid.index(r + 1, c + 1)] = Double.parseDouble(cells[c]);
        }
      }
      return new Raster(grid, values);
    }
  }
}
