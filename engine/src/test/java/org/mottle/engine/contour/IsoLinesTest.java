package org.mottle.engine.contour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

class IsoLinesTest {
  private static final double X = 200_000;
  private static final double Y = 5_600_000;

  @Test
  void linesAtLimitsRunAlongTheEdgesOfBands() {
    for (int seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, seed % 2 == 0);
      Raster surface =
          InventedGround.raster(
              GreenCells.of(outline, seed % 3 == 0 ? 0.25 : 0.5),
              InventedGround.smooth(random, 13));
      BandLaws.isoLinesLieOnEdges(
          "seed " + seed, Contours.of(outline, surface), new double[] {16, 20});
    }
  }

  @Test
  void theSurfaceHasTheLevelAllAlongALine() {
    for (int seed = 0; seed < 10; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
      Raster surface =
          InventedGround.raster(GreenCells.of(outline, 0.5), InventedGround.smooth(random, 13));
      LinearSurface linear = new LinearSurface(surface);
      Geometry around = outline.buffer(1e-6);
      for (IsoLine line : IsoLines.of(outline, surface, 1)) {
        assertThat(around.covers(line.geometry())).as("seed %d", seed).isTrue();
        for (Coordinate c : line.geometry().getCoordinates()) {
          assertThat(linear.value(c.x, c.y))
              .as("seed %d, level %s at %s", seed, line.level(), c)
              .isCloseTo(line.level(), within(BandLaws.changeNearby(linear, c) + 1e-6));
        }
      }
    }
  }

  @Test
  void aPlaneHasStraightLinesAtEveryStep() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 20, Y + 10);
    Raster surface = InventedGround.raster(GreenCells.of(outline, 0.5), (x, y) -> (x - X) / 10);
    List<IsoLine> lines = IsoLines.of(outline, surface, 0.1);
    assertThat(lines).extracting(IsoLine::level).startsWith(0.1, 0.2, 0.3).endsWith(1.8, 1.9);
    for (IsoLine line : lines) {
      double x = X + 10 * line.level();
      assertThat(line.geometry().getNumPoints()).isEqualTo(2);
      assertThat(line.geometry().getEnvelopeInternal().getHeight()).isEqualTo(10);
      assertThat(line.geometry().getEnvelopeInternal().centre().x).isCloseTo(x, within(1e-3));
    }
  }

  @Test
  void flatGroundAtALimitIsRoundedOnTheSideOfItsBand() {
    Geometry outline = InventedGround.rectangle(0, 0, 10, 4);
    Raster surface =
        InventedGround.raster(GreenCells.of(outline, 1), (x, y) -> x < 3 ? x : Math.max(3, x - 3));
    double[] limits = {1, 3};
    Envelope lower = IsoLines.of(outline, surface, 3).get(0).geometry().getEnvelopeInternal();
    Envelope upper =
        IsoLines.of(outline, surface, 3, limits).get(0).geometry().getEnvelopeInternal();
    assertThat(lower.getMinX()).isCloseTo(3.5, within(1e-3));
    assertThat(upper.getMinX()).isCloseTo(5.5, within(1e-3));
    BandLaws.isoLinesLieOnEdges("plateau", Contours.of(outline, surface), limits);
  }

  @Test
  void noValuesNoLines() {
    Geometry outline = InventedGround.rectangle(0, 0, 10, 4);
    Raster surface = InventedGround.raster(GreenCells.of(outline, 1), (x, y) -> Double.NaN);
    assertThat(IsoLines.of(outline, surface, 1)).isEmpty();
  }

  @Test
  void refuseStepsThatMakeNoSense() {
    Geometry outline = InventedGround.rectangle(0, 0, 10, 4);
    Raster surface = InventedGround.raster(GreenCells.of(outline, 1), (x, y) -> x);
    assertThatThrownBy(() -> IsoLines.of(outline, surface, 0))
        .hasMessageStartingWith("step must be > 0.0");
    assertThatThrownBy(() -> IsoLines.of(outline, surface, 1e-6))
        .hasMessageContaining("use a larger step");
  }
}
