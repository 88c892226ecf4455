package org.mottle.engine.terrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;

/** A sloping green with a bowl in it, read with noise of 8 mm on cells of 0.25 m. */
class GreenTerrainTest {
  private static final int SIDE = 360;
  private static final CellGrid GRID = new CellGrid(-45, 45, 0.25, SIDE, SIDE);
  private static final Geometry GREEN =
      new GeometryFactory().createPoint(new Coordinate(0, 0)).buffer(12, 16);

  private static GreenTerrain terrain(double noiseM) {
    Well19937c random = new Well19937c(3);
    double[] z = new double[GRID.size()];
    for (int i = 0; i < z.length; i++) {
      double x = GRID.x(i % SIDE);
      double y = GRID.y(i / SIDE);
      double r2 = (x - 2) * (x - 2) + (y + 1) * (y + 1);
      z[i] = 40 + 0.012 * x - 0.15 * Math.exp(-r2 / (2 * 9)) + noiseM * random.nextGaussian();
    }
    return GreenTerrain.of(new Raster(GRID, z), GREEN, Progress.NONE);
  }

  @Test
  void heightsAreSmoothedToTheirNoiseAndNoMore() {
    GreenTerrain exact = terrain(0);
    assertThat(exact.smoothedM()).isZero();
    GreenTerrain noisy = terrain(0.008);
    assertThat(noisy.noiseSdM()).isCloseTo(0.008, within(0.0008));
    assertThat(noisy.smoothedM()).isBetween(0.1, 1.0);
    assertThat(noisy.leftSdM()).isLessThanOrEqualTo(0.0021);
  }

  @Test
  void theBowlIsTheOnlyHollowWithNoiseOrWithout() {
    double deep = terrain(0).hollowsOn(GREEN).get(0).deepestM();
    for (double noise : new double[] {0, 0.008}) {
      GreenTerrain t = terrain(noise);
      assertThat(t.hollowsOn(GREEN)).hasSize(1);
      assertThat(t.hollowsOn(GREEN).get(0).deepestM()).isCloseTo(deep, within(0.006));
      assertThat(t.surrounds().enough()).isTrue();
    }
  }

  @Test
  void waterFromUphillOfTheBowlEndsInIt() {
    FlowLine way = FlowLine.from(terrain(0.008).flow(), 6, -1, 0.01, GREEN.getFactory());
    assertThat(way.end()).isEqualTo(FlowLine.End.HOLLOW);
    assertThat(way.dropM()).isPositive();
    FlowLine past = FlowLine.from(terrain(0.008).flow(), 6, 14, 0.01, GREEN.getFactory());
    assertThat(past.end()).isNotEqualTo(FlowLine.End.HOLLOW);
  }
}
