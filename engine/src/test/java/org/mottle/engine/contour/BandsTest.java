package org.mottle.engine.contour;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

class BandsTest {
  private static final double[] LIMITS = {16, 20};

  @ParameterizedTest
  @CsvSource({
    "500000, 5316300, 13, 0.25, false",
    "500000, 5316300, 13, 0.5, true",
    "200000, 5600000, 13, 1, true",
    "200000, 5600000, 1260, 20, true"
  })
  void tileSmoothAndRoughGround(double x, double y, double radius, double cell, boolean holes) {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, x + seed * 0.37, y, radius, 72, holes);
      GreenCells cells = GreenCells.of(outline, cell);
      for (boolean rough : new boolean[] {false, true}) {
        DoubleBinaryOperator trend = InventedGround.smooth(random, radius);
        Raster surface =
            InventedGround.raster(
                cells,
                (px, py) -> trend.applyAsDouble(px, py) + (rough ? 2 * random.nextGaussian() : 0));
        List<Band> bands = Bands.tile(outline, surface, LIMITS);
        BandLaws.check(
            "seed " + seed + " cell " + cell + (rough ? " rough" : " smooth"),
            outline,
            surface,
            LIMITS,
            bands);
      }
    }
  }
}
