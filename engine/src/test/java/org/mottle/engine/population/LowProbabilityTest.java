package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Laws of the map of the low population, and the sum of both populations. */
class LowProbabilityTest {
  private static final TwoFound FOUND = Spots.atPointsOfInterest();
  private static final LowProbability MAP = LowProbability.of(FOUND, 0);

  @Test
  void atAStationItIsTheMembership() {
    StationValues values = FOUND.surveys().get(0);
    for (int i = 0; i < values.size(); i++) {
      assertThat(MAP.at(values.x(i), values.y(i))).isCloseTo(FOUND.membership(0, i), within(1e-9));
    }
  }

  @Test
  void farFromEveryStationItIsTheShareOfTheGround() {
    assertThat(MAP.at(500, 500)).isEqualTo(FOUND.groundShare().share().best());
    double justBeyond = MAP.range().metres() + 1e-9;
    assertThat(MAP.at(25 + justBeyond, 10)).isCloseTo(MAP.share(), within(1e-12));
  }

  @Test
  void everywhereItIsAProbability() {
    for (double x = -3; x < 30; x += 0.25) {
      for (double y = -3; y < 14; y += 0.25) {
        assertThat(MAP.at(x, y)).isBetween(0.0, 1.0);
      }
    }
  }

  @Test
  void thePlannedStationAmongLowPointsDecidesTheRange() {
    assertThat(MAP.range().longest()).isEqualTo(5);
    assertThat(MAP.range().metres()).isBetween(SpotRange.SHORTEST, 5.0);
    assertThat(MAP.range().known()).isTrue();
    assertThat(MAP.range().note()).contains("by the readings");
  }

  @Test
  void withoutCloseStationsTheRangeIsAssumedAndSaidToBe() {
    TwoFound found = (TwoFound) InventedGreens.test(new InventedGreens(51).two(24, 5, 12, 1.5));
    SpotRange range = LowProbability.of(found, 0).range();
    assertThat(range.known()).isFalse();
    assertThat(range.metres()).isEqualTo(SpotRange.USUAL);
    assertThat(range.note()).contains("cannot be known").contains("2.0 m is assumed");
  }

  @Test
  void stationsThatShareAPlaceCountOnce() {
    double[] value = new InventedGreens(52).two(24, 5, 12, 1.5);
    double[] x = new double[24];
    Arrays.setAll(x, i -> 5.0 * i);
    x[23] = x[0];
    TwoFound found =
        InventedGreens.found(InventedGreens.planned(value, new double[][] {x, new double[24]}));
    assertThat(LowProbability.of(found, 0).at(0, 0))
        .isCloseTo((found.membership(0, 0) + found.membership(0, 23)) / 2, within(1e-9));
  }

  @Test
  void placesThatAreNotKnownWellLeaveNoPlaceSure() {
    StationValues sure = FOUND.surveys().get(0);
    TwoFound unsure = InventedGreens.found(sure.withPositionError(new PositionError(0.6, 1)));
    LowProbability map = LowProbability.of(unsure, 0);
    for (int i = 18; i < 24; i++) {
      assertThat(map.at(sure.x(i), sure.y(i)))
          .isBetween(map.share(), FOUND.membership(0, i) - 0.05);
    }
  }

  @Test
  void bothPopulationsTogether() {
    assertThat(LowProbability.dry(0, 0.3, 8, 2, 15)).isEqualTo(0.3);
    assertThat(LowProbability.dry(1, 0.3, 8, 0.5, 15)).isCloseTo(1, within(1e-12));
    assertThat(LowProbability.dry(0.4, 0.3, 8, 0.5, 15)).isCloseTo(0.4 + 0.6 * 0.3, within(1e-12));
    assertThat(LowProbability.dry(0.4, 0.3, 15, 2, 15)).isCloseTo(0.2 + 0.18, within(1e-12));
    // Phi(-1) = 0.158655253931457 (Abramowitz & Stegun 1964, table 26.1)
    assertThat(LowProbability.dry(1, 0, 17, 2, 15)).isCloseTo(0.158655253931457, within(1e-12));
  }

  @Test
  void whatIsNoProbabilityIsRefused() {
    assertThatThrownBy(() -> LowProbability.dry(1.2, 0, 10, 2, 15)).hasMessageContaining("1.2");
  }
}
