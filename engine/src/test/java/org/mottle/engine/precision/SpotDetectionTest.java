package org.mottle.engine.precision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

class SpotDetectionTest {
  private static final long SEED = 20;
  private static final Geometry GREEN = Plans.round(516);
  private static final double[] DIAMETERS = {2, 3, 5, 8};

  /** Three standard errors of the difference of two shares of 500. */
  private static final double CHANCE = 3 * Math.sqrt(0.5 / 500);

  private static List<SpotDetection> usual(int stations, double jitterM) {
    Prediction plan = Plans.grid(GREEN, stations, Prediction.borrowed(2.5), jitterM);
    return SpotDetection.of(plan, DIAMETERS, SpotDetection.usualContrastPct(plan), SEED);
  }

  @Test
  void largerSpotsAreFoundMoreOften() {
    for (int n : new int[] {9, 18, 36}) {
      List<SpotDetection> spots = usual(n, 0.7);
      for (int d = 1; d < spots.size(); d++) {
        assertThat(spots.get(d).found())
            .as("seed %d, %d stations, %s m", SEED, n, DIAMETERS[d])
            .isGreaterThan(spots.get(d - 1).found());
      }
    }
  }

  @Test
  void moreStationsFindNoFewer() {
    List<SpotDetection> few = usual(9, 0);
    for (int n : new int[] {18, 36}) {
      List<SpotDetection> more = usual(n, 0);
      for (int d = 0; d < DIAMETERS.length; d++) {
        assertThat(more.get(d).found())
            .as("seed %d, %d stations, %s m", SEED, n, DIAMETERS[d])
            .isGreaterThan(few.get(d).found() - CHANCE);
      }
      few = more;
    }
    assertThat(few.get(2).found()).isGreaterThan(usual(9, 0).get(2).found() + CHANCE);
  }

  /**
   * Exact stations without a nugget are honoured, so that a spot of any contrast beyond all pattern
   * is found where a station lies in it; where each metre has one, that is everywhere.
   */
  @Test
  void boundlessContrastOverAStationIsAlwaysFound() {
    List<Coordinate> every = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      every.add(new Coordinate(0.5 + i % 10, 0.5 + i / 10));
    }
    Geometry square = new GeometryFactory().toGeometry(new Envelope(0, 10, 0, 10));
    Prediction plan = Plans.at(square, every, NestedModel.of(0, new Spherical(4, 10)), 0);
    SpotDetection spot = SpotDetection.of(plan, new double[] {2}, 1e6, SEED).get(0);
    assertThat(spot.found()).isEqualTo(1);
    assertThat(spot.missed()).isZero();
    assertThat(spot.wrongly()).isZero();
  }

  /**
   * One station at the centre of a 20 m square gives the map its value everywhere: a spot of
   * diameter 8 m and boundless contrast is found when centred within 4 m of it, which is pi 16 /
   * 400 of the ground.
   */
  @Test
  void foundAsOftenAsItCoversTheOnlyStation() {
    Geometry square = new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20));
    Prediction plan = Plans.at(square, List.of(new Coordinate(10, 10)), Prediction.borrowed(2), 0);
    double found = SpotDetection.of(plan, new double[] {8}, 1e6, SEED).get(0).found();
    double expected = Math.PI * 16 / 400;
    assertThat(found)
        .as("seed %d", SEED)
        .isCloseTo(expected, within(3 * Math.sqrt(expected * (1 - expected) / 500)));
  }

  /**
   * Spots centred in a green of 1 m x 1 m, its station planned in the middle and read 3 m off per
   * axis, by an error of its own or one of the visit: the probe is within 3 m of the centre of the
   * spot with 1 - exp(-9 / (2 (9 + 1/12))), the Rayleigh distribution, the centre's own variance
   * being 1/12.
   */
  @ParameterizedTest
  @CsvSource({"3, 0", "0, 3"})
  void probeIsMissedAsOftenAsTheRayleighLawSays(double jitterM, double shiftM) {
    Geometry piece = new GeometryFactory().toGeometry(new Envelope(0, 1, 0, 1));
    double[] middle = {0.5};
    Prediction plan =
        Prediction.of(
            piece,
            middle,
            middle,
            new double[] {1},
            Prediction.borrowed(2),
            new PositionError(new double[] {jitterM}, shiftM));
    double found = SpotDetection.of(plan, new double[] {6}, 1e6, SEED).get(0).found();
    double expected = 1 - Math.exp(-9 / (2 * (9 + 1 / 12.0)));
    assertThat(found)
        .as("seed %d", SEED)
        .isCloseTo(expected, within(3 * Math.sqrt(expected * (1 - expected) / 500)));
  }

  /**
   * One reading of variance 3 nugget + 1 is the map everywhere: called as often as a normal number
   * falls below the limit. At two standard deviations of contrast the limit is one below: 0.1587
   * (standard normal table).
   */
  @Test
  void soundGreensAreCalledAsOftenAsTheNormalLawSays() {
    Geometry square = new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20));
    Prediction plan =
        Plans.at(
            square, List.of(new Coordinate(10, 10)), NestedModel.of(3, new Spherical(1, 10)), 0);
    double called = SpotDetection.of(plan, new double[] {5}, 4, SEED).get(0).wrongly();
    assertThat(called)
        .as("seed %d", SEED)
        .isCloseTo(0.1587, within(3 * Math.sqrt(0.1587 * 0.8413 / 500)));
  }

  /** What the usual contrast promises of sound greens, and what a contrast of half that does. */
  @Test
  void usualContrastSeldomCallsSoundGreens() {
    assertThat(usual(24, 0.7).get(0).wrongly()).isBetween(0.05, 0.17);
    Prediction plan = Plans.grid(GREEN, 24, Prediction.borrowed(2.5), 0.7);
    List<SpotDetection> faint = SpotDetection.of(plan, DIAMETERS, 2 * plan.structuredSd(), SEED);
    assertThat(faint.get(0).wrongly()).isGreaterThan(0.6);
  }

  @Test
  void wetAndDryAreFoundAlike() {
    Prediction plan = Plans.grid(GREEN, 18, Prediction.borrowed(2.5), 0.7);
    List<SpotDetection> dry = SpotDetection.of(plan, DIAMETERS, 6, SEED);
    List<SpotDetection> wet = SpotDetection.of(plan, DIAMETERS, -6, SEED);
    for (int d = 0; d < DIAMETERS.length; d++) {
      assertThat(wet.get(d).found())
          .as("seed %d, %s m", SEED, DIAMETERS[d])
          .isCloseTo(dry.get(d).found(), within(CHANCE));
      assertThat(wet.get(d).words()).contains("wet spot", "6 % wetter");
    }
  }

  /** The scale of the values cancels: everything twice as large finds the same spots. */
  @Test
  void onlyTheRatioOfContrastAndSpreadCounts() {
    Prediction one = Plans.grid(GREEN, 18, Prediction.borrowed(2), 0);
    Prediction two = Plans.grid(GREEN, 18, Prediction.borrowed(4), 0);
    List<SpotDetection> small = SpotDetection.of(one, DIAMETERS, 5, SEED);
    List<SpotDetection> large = SpotDetection.of(two, DIAMETERS, 10, SEED);
    for (int d = 0; d < DIAMETERS.length; d++) {
      assertThat(large.get(d).found()).isCloseTo(small.get(d).found(), within(0.004));
    }
  }

  @Test
  void sameSeedSameAnswerAndNoDiameterChangesAnother() {
    Prediction plan = Plans.grid(GREEN, 18, Prediction.borrowed(2.5), 0.7);
    List<SpotDetection> all = SpotDetection.of(plan, DIAMETERS, 6, SEED);
    assertThat(SpotDetection.of(plan, DIAMETERS, 6, SEED)).isEqualTo(all);
    assertThat(SpotDetection.of(plan, new double[] {5}, 6, SEED)).containsExactly(all.get(2));
    assertThat(SpotDetection.of(plan, DIAMETERS, 6, SEED + 1)).isNotEqualTo(all);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5   | 4    | 0.8   | a round dry spot of 5 m, 4 % drier: 8 in 10",
        "2.5 | 4.25 | 0.19  | a round dry spot of 2.5 m, 4.3 % drier: 2 in 10, mostly missed",
        "8   | -6   | 0.99  | a round wet spot of 8 m, 6 % wetter: more than 9 in 10",
        "8   | 6    | 1     | a round dry spot of 8 m, 6 % drier: 10 in 10",
        "2   | 6    | 0.002 | a round dry spot of 2 m, 6 % drier: fewer than 1 in 10, mostly missed",
        "2   | 6    | 0     | a round dry spot of 2 m, 6 % drier: 0 in 10, mostly missed"
      })
  void words(double diameter, double contrast, double found, String words) {
    assertThat(new SpotDetection(diameter, contrast, found, 0.1).words()).isEqualTo(words);
  }

  @Test
  void nonsenseIsRefused() {
    Prediction plan = Plans.grid(GREEN, 9, Prediction.borrowed(2), 0);
    assertThatThrownBy(() -> SpotDetection.of(plan, DIAMETERS, 0, SEED))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("contrast");
    assertThatThrownBy(() -> SpotDetection.of(plan, DIAMETERS, Double.NaN, SEED))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("contrast");
    assertThatThrownBy(() -> SpotDetection.of(plan, new double[] {2, -1}, 4, SEED))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("diameter")
        .hasMessageContaining("-1");
  }
}
