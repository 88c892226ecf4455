package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mottle.engine.population.SpotPattern.Verdict;

/** Twenty-four stations, six low by far: scattered, in a patch, at points of interest. */
class SpotPatternTest {
  private static final int GREENS = 60;

  private interface Order {
    double[][] of(InventedGreens greens, double[][] place);
  }

  private static Map<Verdict, Integer> verdicts(long seed, Order order) {
    InventedGreens greens = new InventedGreens(seed);
    Map<Verdict, Integer> count = new EnumMap<>(Verdict.class);
    for (int i = 0; i < GREENS; i++) {
      double[][] place = order.of(greens, greens.places(24));
      TwoFound found =
          InventedGreens.found(InventedGreens.planned(greens.two(24, 6, 12, 1.5), place));
      count.merge(SpotPattern.of(found, seed).verdict(), 1, Integer::sum);
    }
    return count;
  }

  @Test
  void scatteredReadingsAreSeldomCalledAPatch() {
    Map<Verdict, Integer> count = verdicts(31, InventedGreens::shuffled);
    assertThat(count.getOrDefault(Verdict.SCATTERED, 0)).as("seed 31: %s", count).isGreaterThan(48);
    assertThat(count.getOrDefault(Verdict.TOGETHER, 0)).as("seed 31: %s", count).isLessThan(8);
  }

  @Test
  void aPatchIsNeverCalledScattered() {
    Map<Verdict, Integer> count = verdicts(32, InventedGreens::patchFirst);
    assertThat(count.getOrDefault(Verdict.TOGETHER, 0)).as("seed 32: %s", count).isGreaterThan(48);
    assertThat(count.getOrDefault(Verdict.SCATTERED, 0)).as("seed 32: %s", count).isLessThan(4);
  }

  @Test
  void lowReadingsAtPointsOfInterestAloneAreSmall() {
    SpotPattern pattern = SpotPattern.of(Spots.atPointsOfInterest(), 1);
    assertThat(pattern.verdict()).isEqualTo(Verdict.SMALL);
    assertThat(pattern.lowPlanned()).isEqualTo(1);
    assertThat(pattern.planned()).isEqualTo(18);
    assertThat(pattern.spotLike()).isTrue();
  }

  @Test
  void theSameSeedGivesTheSameAnswer() {
    InventedGreens greens = new InventedGreens(33);
    TwoFound found =
        InventedGreens.found(InventedGreens.planned(greens.two(24, 5, 12, 1.5), greens.places(24)));
    assertThat(SpotPattern.of(found, 9)).isEqualTo(SpotPattern.of(found, 9));
  }
}
