package org.mottle.engine.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Designs by chance: every place as likely as any other, and spread. */
class ChanceTest {
  private static final int DRAWS = 500;
  private static final int N = 8;

  private interface Draw {
    List<Coordinate> places(Ground ground, RandomGenerator random);
  }

  private static Ground rectangle() {
    return new Ground(OddGround.FACTORY.toGeometry(new Envelope(0, 24, 0, 16)));
  }

  @Test
  void balanced_places_are_equally_likely_everywhere() {
    assertEquallyLikely(
        (ground, random) -> Pivotal.places(ground, N, random), "local pivotal method");
  }

  @Test
  void stratified_places_are_equally_likely_everywhere() {
    Strata[] strata = new Strata[1];
    assertEquallyLikely(
        (ground, random) -> {
          strata[0] = strata[0] == null ? new Strata(ground, N, random) : strata[0];
          return strata[0].places(random);
        },
        "strata");
  }

  /** 24 blocks of 4 m: expected N DRAWS / 24 each, binomial or less, so 4.5 deviations. */
  private static void assertEquallyLikely(Draw draw, String what) {
    Ground ground = rectangle();
    RandomGenerator random = new Well19937c(11);
    int[] hits = new int[24];
    for (int k = 0; k < DRAWS; k++) {
      List<Coordinate> places = draw.places(ground, random);
      assertThat(places).as("%s, draw %d", what, k).hasSize(N).doesNotHaveDuplicates();
      places.forEach(c -> hits[(int) (c.x / 4) + 6 * (int) (c.y / 4)]++);
    }
    double expected = N * DRAWS / 24.0;
    for (int block = 0; block < 24; block++) {
      assertThat((double) hits[block])
          .as("%s, seed 11, block %d", what, block)
          .isCloseTo(expected, within(4.5 * Math.sqrt(expected)));
    }
  }

  @Test
  void balanced_and_stratified_places_are_more_spread_than_places_at_random() {
    Ground ground = rectangle();
    Coverage coverage = new Coverage(ground, List.of());
    RandomGenerator random = new Well19937c(12);
    Strata strata = new Strata(ground, N, random);
    double balanced = 0;
    double stratified = 0;
    double simple = 0;
    for (int k = 0; k < 100; k++) {
      balanced += coverage.meanSquaredDistance(Pivotal.places(ground, N, random));
      stratified += coverage.meanSquaredDistance(strata.places(random));
      simple += coverage.meanSquaredDistance(ground.random(N, random));
    }
    assertThat(balanced).isLessThan(0.75 * simple);
    assertThat(stratified).isLessThan(0.75 * simple);
  }

  @Test
  void strata_are_equal_and_compact_on_odd_ground() {
    for (long seed = 1; seed <= 6; seed++) {
      Ground ground = new Ground(OddGround.green(seed).outline().buffer(-1));
      Strata strata = new Strata(ground, 12, new Well19937c((int) seed));
      double target = ground.areaM2() / 12;
      double[] found = new double[12];
      double[][] sums = new double[12][4];
      int points = 20_000;
      RandomGenerator random = new Well19937c(99);
      for (Coordinate c : ground.random(points, random)) {
        int j = strata.of(c.x, c.y);
        found[j] += ground.areaM2() / points;
        double[] s = sums[j];
        s[0]++;
        s[1] += c.x - 1000;
        s[2] += c.y - 2000;
        s[3] += (c.x - 1000) * (c.x - 1000) + (c.y - 2000) * (c.y - 2000);
      }
      double spread = 0;
      for (int j = 0; j < 12; j++) {
        // 2 % and 4.5 deviations of the count
        assertThat(found[j])
            .as("seed %d, stratum %d", seed, j)
            .isCloseTo(target, within((0.02 + 4.5 * Math.sqrt(12.0 / points)) * target));
        spread +=
            (sums[j][3] - (sums[j][1] * sums[j][1] + sums[j][2] * sums[j][2]) / sums[j][0])
                / points;
      }
      // a square of area A has a mean squared distance from its middle of A / 6
      assertThat(spread).as("seed %d, m²", seed).isLessThan(1.25 * target / 6);
      for (double area : strata.areasM2()) {
        assertThat(area).as("seed %d", seed).isCloseTo(target, within(0.02 * target));
      }
    }
  }

  @Test
  void coverage_of_odd_ground_is_close_to_a_long_run() {
    for (long seed = 1; seed <= 4; seed++) {
      Ground ground = new Ground(OddGround.green(seed).outline().buffer(-1));
      Coverage coverage = new Coverage(ground, List.of());
      double longRun =
          coverage.meanSquaredDistance(coverage.places(16, 150, new Well19937c((int) seed + 50)));
      double usual = coverage.meanSquaredDistance(coverage.places(16, new Well19937c((int) seed)));
      assertThat(usual).as("seed %d, m²", seed).isLessThanOrEqualTo(1.03 * longRun);
    }
  }
}
