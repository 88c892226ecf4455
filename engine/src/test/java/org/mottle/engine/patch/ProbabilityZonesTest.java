package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.GreenCells;

class ProbabilityZonesTest {
  private static final double X = 500_000;
  private static final double Y = 5_316_300;

  private static List<Zone> zones(InventedChances c, ClassRule rule) {
    return Zones.of(
        c.outline, c.probabilities(), rule, c.cells.surface(c.mean), RegionMean.UNKNOWN);
  }

  @Test
  void tileTheGreenWithStatementsThatHold() {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      InventedChances c =
          new InventedChances(
              InventedGround.green(random, X, Y, 13, 72, seed % 2 == 0), 0.5, 200, random, 0.6, 9);
      double area = 0;
      for (Zone zone : zones(c, ClassRule.defaults().withLeastPart(0.25))) {
        String what = "seed " + seed + ", " + zone.cls();
        assertThat(zone.geometry().isValid()).as(what).isTrue();
        area += zone.areaM2();
        switch (zone.cls()) {
          case DRY, WET -> assertThat(zone.probability()).as(what).isBetween(0.79, 1.0);
          case PROBABLY_DRY, PROBABLY_WET ->
              assertThat(zone.probability()).as(what).isBetween(0.49, 0.81);
          case IN_BAND -> assertThat(zone.probability()).as(what).isBetween(0.44, 1.0);
          default -> assertThat(zone.probability()).as(what).isNaN();
        }
        if (zone.cls() != ZoneClass.CANNOT_TELL) {
          double expected = zone.probability() * zone.areaM2();
          assertThat(zone.areaHigh()).as(what).isLessThanOrEqualTo(zone.areaM2() + 1e-6);
          assertThat(expected)
              .as(what)
              .isBetween(
                  zone.areaLow() - 0.02 * zone.areaM2(), zone.areaHigh() + 0.02 * zone.areaM2());
        }
      }
      assertThat(area).as("seed %d", seed).isCloseTo(c.outline.getArea(), within(0.01));
    }
  }

  /** p_dry falls along a line from 1 to 0, p_wet is a twentieth: borders are where it says. */
  @Test
  void bordersLieWhereTheProbabilitiesSay() {
    Geometry outline = InventedGround.rectangle(X, Y, X + 40, Y + 10);
    GreenCells cells = GreenCells.of(outline, 0.5);
    int n = cells.neededCount();
    double[] dry = Arrays.stream(cells.neededX()).map(x -> 0.95 * (1 - (x - X) / 40)).toArray();
    double[] wet = new double[n];
    double[] sd = Arrays.stream(cells.neededY()).map(y -> y - Y).toArray();
    Arrays.fill(wet, 0.05);
    Probabilities p = Probabilities.of(cells, dry, wet, sd, Excursions.none(n));
    ClassRule rule = ClassRule.defaults();
    double sure = 40 * (1 - 0.8 / 0.95);
    double likely = 40 * (1 - 0.5 / 0.95);
    assertThat(areas(Zones.of(outline, p, rule, cells.surface(sd), RegionMean.UNKNOWN)))
        .containsExactly(
            "DRY " + Math.round(10 * sure),
            "PROBABLY_DRY " + Math.round(10 * (likely - sure)),
            "IN_BAND " + Math.round(10 * (40 - likely)));
    List<Zone> limited =
        Zones.of(outline, p, rule.withSdLimit(6), cells.surface(sd), RegionMean.UNKNOWN);
    double sureBand = 40 * (1 - 0.15 / 0.95);
    assertThat(areas(limited))
        .containsExactly(
            "DRY " + Math.round(10 * sure),
            "PROBABLY_DRY " + Math.round(6 * (likely - sure)),
            "IN_BAND " + Math.round(6 * (40 - likely) + 4 * (40 - sureBand)),
            "CANNOT_TELL " + Math.round(4 * (sureBand - sure)));
    assertThat(limited.get(0).areaLow()).isNaN();
    assertThat(limited.get(0).probability()).isCloseTo((0.95 + 0.8) / 2, within(0.005));
  }

  private static List<String> areas(List<Zone> zones) {
    return zones.stream().map(z -> z.cls().name() + " " + Math.round(z.areaM2())).toList();
  }

  /** With sd and parts of any size the class on the map is that of the rule, cell by cell. */
  @Test
  void cellsHaveTheClassOfTheirZone() {
    for (int seed = 0; seed < 4; seed++) {
      Random random = new Random(seed);
      InventedChances c =
          new InventedChances(
              InventedGround.green(random, X, Y, 13, 72, false), 0.5, 200, random, 0.8, 9);
      for (int i = 0; i < c.sd.length; i++) {
        c.sd[i] = c.cells.neededX()[i] - X;
      }
      ClassRule rule = ClassRule.defaults().withSdLimit(3);
      double[] byCells = new double[ZoneClass.values().length];
      CellWeights whole = CellWeights.of(c.cells, c.outline);
      for (int i = 0; i < c.sd.length; i++) {
        long[] one = new long[(c.sd.length + 63) / 64];
        one[i >> 6] |= 1L << i;
        byCells[rule.of(c.dry[i], c.wet[i], c.sd[i]).ordinal()] += whole.area(one);
      }
      for (Zone zone : zones(c, rule)) {
        assertThat(zone.areaM2())
            .as("seed %d, %s", seed, zone.cls())
            .isCloseTo(byCells[zone.cls().ordinal()], within(0.03 * c.outline.getArea()));
      }
    }
  }
}
