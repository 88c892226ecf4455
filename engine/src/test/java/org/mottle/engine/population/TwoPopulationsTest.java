package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The rules, the laws and the share of the ground. */
class TwoPopulationsTest {
  private static final long SEED = 21;

  private static CannotTell.Rule firstRule(PopulationOutcome outcome) {
    assertThat(outcome).isInstanceOf(CannotTell.class);
    return ((CannotTell) outcome).failures().get(0).rule();
  }

  @Test
  void clearSpotsAreFoundWithTheirDepthAndStations() {
    double[] value = new InventedGreens(SEED).two(30, 6, 9, 1.2);
    TwoFound found = (TwoFound) InventedGreens.test(value);
    assertThat(found.lowStations(0)).containsExactly(0, 1, 2, 3, 4, 5);
    assertThat(found.otherStations(0)).hasSize(24).doesNotContain(0, 5);
    assertThat(found.depth(0).low()).isLessThan(9);
    assertThat(found.depth(0).high()).isGreaterThan(9);
    assertThat(found.groundShare().share().best()).isCloseTo(6.5 / 31, within(0.005));
    assertThat(found.lowIsException()).isTrue();
  }

  @Test
  void tooFewStationsAreRefusedWithTheNumberThatIsMissing() {
    CannotTell refused =
        (CannotTell) InventedGreens.test(new InventedGreens(SEED).two(12, 4, 12, 1));
    assertThat(firstRule(refused)).isEqualTo(CannotTell.Rule.STATIONS);
    assertThat(refused.why().reason()).contains("12 stations where at least 16 are needed");
    assertThat(refused.why().remedy()).contains("read 4 more stations");
    assertThat(InventedGreens.test()).isInstanceOf(CannotTell.class);
  }

  @Test
  void valuesWithoutSpreadAreRefused() {
    double[] same = new double[20];
    Arrays.fill(same, 21);
    assertThat(firstRule(InventedGreens.test(same))).isEqualTo(CannotTell.Rule.SPREAD);
    double[] two = same.clone();
    Arrays.fill(two, 0, 5, 9);
    assertThat(firstRule(InventedGreens.test(two))).isEqualTo(CannotTell.Rule.SPREAD);
  }

  @Test
  void oneNormalIsRefusedByTheCriterion() {
    CannotTell refused =
        (CannotTell) InventedGreens.test(new InventedGreens(SEED).normal(24, 20, 2));
    assertThat(firstRule(refused)).isEqualTo(CannotTell.Rule.DELTA_BIC);
    assertThat(refused.failures().get(0).figure()).isLessThan(6);
    assertThat(refused.why().reason()).contains("BIC differs by").contains("more than 6 wanted");
    assertThat(refused.why().remedy()).contains("pool surveys");
  }

  @Test
  void twoReadingsAmongManyAreTooSmallAShare() {
    CannotTell refused =
        (CannotTell) InventedGreens.test(new InventedGreens(SEED).two(40, 2, 15, 1));
    assertThat(firstRule(refused)).isEqualTo(CannotTell.Rule.SHARE);
    assertThat(refused.failures().get(0).figure()).isCloseTo(0.05, within(1e-6));
    assertThat(refused.why().reason()).contains("5 % of the stations, at least 10 % wanted");
  }

  @Test
  void meansThatAreNearAreRefusedHoweverManyReadings() {
    double[] value = new InventedGreens(SEED).two(3000, 600, 5.5, 3);
    PopulationOutcome outcome = InventedGreens.test(value);
    assertThat(firstRule(outcome)).isEqualTo(CannotTell.Rule.SEPARATION);
    assertThat(outcome.evidence().deltaBic()).isGreaterThan(6);
  }

  @Test
  void pooledSurveysTellWhatEachAloneCannot() {
    InventedGreens greens = new InventedGreens(5);
    double[][] surveys = {
      greens.two(18, 4, 7, 2), greens.two(18, 4, 7, 2), greens.two(18, 4, 7, 2)
    };
    for (int s = 0; s < surveys.length; s++) {
      double shift = 5 * s;
      surveys[s] = Arrays.stream(surveys[s]).map(v -> v - shift).toArray();
      assertThat(InventedGreens.test(surveys[s]))
          .as("seed 5, S%d", s)
          .isInstanceOf(CannotTell.class);
    }
    assertThat(InventedGreens.test(surveys)).as("seed 5").isInstanceOf(TwoFound.class);
  }

  @Test
  void depthsThatDifferBySurveyAreFoundBySurvey() {
    InventedGreens greens = new InventedGreens(SEED);
    TwoFound found =
        (TwoFound)
            InventedGreens.test(
                greens.two(24, 6, 5, 1), greens.two(24, 6, 8, 1), greens.two(24, 6, 12, 1));
    assertThat(found.mixture().kind()).isEqualTo(Mixture.Depth.BY_SURVEY);
    double[] truth = {5, 8, 12};
    for (int s = 0; s < 3; s++) {
      assertThat(truth[s]).isBetween(found.depth(s).low(), found.depth(s).high());
      assertThat(found.lowStations(s)).containsExactly(0, 1, 2, 3, 4, 5);
    }
  }

  /** Ninety per cent by design; 120 samples bound it between 0.80 and 0.97. */
  @Test
  void theIntervalOfTheDepthHoldsTheTruthAboutNinetyTimesInAHundred() {
    InventedGreens greens = new InventedGreens(8);
    int held = 0;
    int samples = 120;
    for (int i = 0; i < samples; i++) {
      TwoFound found = (TwoFound) InventedGreens.test(greens.two(40, 10, 10, 1.5));
      held += found.depth(0).low() <= 10 && 10 <= found.depth(0).high() ? 1 : 0;
    }
    assertThat(held / (double) samples).as("seed 8").isBetween(0.80, 0.97);
  }

  @Test
  void unitsAndLevelOfTheValuesDoNotMatter() {
    double[] value = new InventedGreens(SEED).two(24, 5, 9, 2);
    TwoFound found = (TwoFound) InventedGreens.test(value);
    TwoFound other =
        (TwoFound) InventedGreens.test(Arrays.stream(value).map(v -> 3 * v + 100).toArray());
    assertThat(other.evidence().deltaBic()).isCloseTo(found.evidence().deltaBic(), within(1e-6));
    assertThat(other.depth(0).best()).isCloseTo(3 * found.depth(0).best(), within(1e-4));
    assertThat(other.depth(0).high()).isCloseTo(3 * found.depth(0).high(), within(1e-3));
    for (int i = 0; i < value.length; i++) {
      assertThat(other.membership(0, i)).isCloseTo(found.membership(0, i), within(1e-6));
    }
  }

  @Test
  void theOrderOfStationsAndSurveysDoesNotMatter() {
    InventedGreens greens = new InventedGreens(SEED);
    double[] a = greens.two(20, 5, 9, 2);
    double[] b = greens.two(22, 4, 7, 2);
    TwoFound found = (TwoFound) InventedGreens.test(a, b);
    double[] reversed = new double[a.length];
    Arrays.setAll(reversed, i -> a[a.length - 1 - i]);
    TwoFound other = (TwoFound) InventedGreens.test(b, reversed);
    assertThat(other.evidence().deltaBic()).isCloseTo(found.evidence().deltaBic(), within(1e-7));
    assertThat(other.membership(1, a.length - 1)).isCloseTo(found.membership(0, 0), within(1e-6));
  }

  /** Points of interest are low because they were chosen so; the ground is not. */
  @Test
  void theShareOfTheGroundComesFromStationsThatWereNotChosen() {
    double[] value = new InventedGreens(SEED).two(24, 7, 10, 1.5);
    boolean[] chosen = new boolean[24];
    Arrays.fill(chosen, 0, 6, true);
    TwoFound found = InventedGreens.found(withChosen(value, chosen));
    assertThat(found.mixture().share()).isCloseTo(7 / 24.0, within(0.01));
    GroundShare share = found.groundShare();
    assertThat(share.share().best()).isCloseTo(1.5 / 19, within(0.005));
    assertThat(share.share().low()).isLessThan(1 / 18.0);
    assertThat(share.share().high()).isBetween(0.15, 0.30);
    assertThat(share.stations()).isEqualTo(18);
    assertThat(share.fromChosen()).isFalse();
    assertThat(found.lowStations(0)).hasSize(7);
  }

  @Test
  void withChosenStationsOnlyTheShareIsSaidToBeTheirs() {
    double[] value = new InventedGreens(SEED).two(24, 7, 10, 1.5);
    boolean[] chosen = new boolean[24];
    Arrays.fill(chosen, true);
    assertThat(InventedGreens.found(withChosen(value, chosen)).groundShare().fromChosen()).isTrue();
  }

  @Test
  void aLowMajorityIsNotTakenForSpots() {
    TwoFound found = (TwoFound) InventedGreens.test(new InventedGreens(SEED).two(30, 24, 10, 1.5));
    assertThat(found.lowIsException()).isFalse();
  }

  private static StationValues withChosen(double[] value, boolean[] chosen) {
    double[] x = new double[value.length];
    Arrays.setAll(x, i -> 5.0 * i);
    return StationValues.of("S4", value, x, new double[value.length], chosen);
  }
}
