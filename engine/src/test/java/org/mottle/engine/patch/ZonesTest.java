package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Contours;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.survey.TargetBand;

class ZonesTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;

  private static TargetBand band(double low, double high) {
    return new TargetBand("ball roll", low, high, "", "");
  }

  @Test
  void meansLieInTheirBandAndAverageToTheGreen() {
    for (int seed = 0; seed < 10; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, X, Y, 13, 72, seed % 2 == 0);
      Raster surface =
          InventedGround.raster(GreenCells.of(outline, 0.5), InventedGround.smooth(random, 13));
      Contours contours = Contours.of(outline, surface);
      double area = 0;
      double sum = 0;
      for (Zone zone : Zones.of(contours, surface, band(16, 20), RegionMean.UNKNOWN)) {
        double low = zone.cls() == ZoneClass.DRY ? 0 : zone.cls() == ZoneClass.WET ? 20 : 16;
        double high = zone.cls() == ZoneClass.DRY ? 16 : zone.cls() == ZoneClass.WET ? 99 : 20;
        assertThat(zone.mean()).as("seed %d, %s", seed, zone.cls()).isBetween(low, high);
        assertThat(zone.sd()).isNaN();
        area += zone.areaM2();
        sum += zone.areaM2() * zone.mean();
      }
      double whole = Ground.of(outline, surface).mean(contours.surface());
      assertThat(area).isCloseTo(outline.getArea(), within(1e-3));
      assertThat(sum / area).as("seed %d", seed).isCloseTo(whole, within(0.005));
    }
  }

  @Test
  void aPlaneHasTheMeansOfGeometry() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 20, Y + 10);
    Raster surface = InventedGround.raster(GreenCells.of(outline, 0.3), (x, y) -> x - X);
    List<Zone> zones = Zones.of(outline, surface, band(5, 12), RegionMean.UNKNOWN);
    assertThat(zones)
        .extracting(Zone::cls)
        .containsExactly(ZoneClass.DRY, ZoneClass.IN_BAND, ZoneClass.WET);
    double[] area = {50, 70, 80};
    double[] mean = {2.5, 8.5, 16};
    for (int i = 0; i < 3; i++) {
      assertThat(zones.get(i).areaM2()).isCloseTo(area[i], within(0.01));
      assertThat(zones.get(i).mean()).isCloseTo(mean[i], within(1e-3));
    }
  }

  @Test
  void theEstimatorIsAskedForAtMost400PointsThatStandForTheWholeZone() {
    Random random = new Random(8);
    Geometry outline = InventedGround.green(random, X, Y, 13, 72, true);
    Raster surface =
        InventedGround.raster(GreenCells.of(outline, 0.25), InventedGround.smooth(random, 13));
    List<Double> asked = new ArrayList<>();
    RegionMean estimator =
        (x, y, weight) -> {
          assertThat(x).hasSameSizeAs(weight).hasSizeLessThanOrEqualTo(400);
          assertThat(y).hasSameSizeAs(weight);
          asked.add(Arrays.stream(weight).sum());
          return new RegionMean.MeanAndSd(0, asked.size());
        };
    List<Zone> zones = Zones.of(outline, surface, band(16, 20), estimator);
    assertThat(zones).hasSize(3).extracting(Zone::sd).containsExactly(1.0, 2.0, 3.0);
    for (int i = 0; i < 3; i++) {
      assertThat(asked.get(i)).isCloseTo(zones.get(i).areaM2(), within(1e-6));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.05, 0.1, 0.4, 0.7, 3})
  void thinningKeepsWeightAndCentroid(double cell) {
    Geometry outline = InventedGround.green(new Random(5), X, Y, 13, 72, true);
    Ground all =
        Ground.of(outline, InventedGround.raster(GreenCells.of(outline, cell), (x, y) -> 0));
    Ground few = all.thinned(cell);
    assertThat(few.x().length).isLessThanOrEqualTo(144).isLessThanOrEqualTo(all.x().length);
    assertThat(few.x().length).isGreaterThan(Math.min(all.x().length, 72) - 1);
    assertThat(Arrays.stream(few.weight()).sum()).isCloseTo(outline.getArea(), within(1e-6));
    assertThat(mean(few.x(), few.weight())).isCloseTo(outline.getCentroid().getX(), within(1e-6));
    assertThat(mean(few.y(), few.weight())).isCloseTo(outline.getCentroid().getY(), within(1e-6));
  }

  private static double mean(double[] values, double[] weight) {
    double sum = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weight[i] * values[i];
    }
    return sum / Arrays.stream(weight).sum();
  }

  @Test
  void groundWithoutValuesIsAZoneWithoutMean() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 10, Y + 10);
    Raster surface =
        InventedGround.raster(GreenCells.of(outline, 1), (x, y) -> x > X + 5 ? Double.NaN : 18);
    List<Zone> zones = Zones.of(outline, surface, band(16, 20), RegionMean.UNKNOWN);
    assertThat(zones.get(0).cls()).isEqualTo(ZoneClass.NO_VALUE);
    assertThat(zones.get(0).mean()).isNaN();
    assertThat(zones.get(0).areaM2()).isCloseTo(55, within(0.01));
  }
}
