package org.mottle.engine.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DuplicatesTest {

  /** Rows 1 and 4 at one place, rows 2, 3 and 6 in a chain of 0.4 m steps, row 5 alone. */
  private static Observations survey() {
    return Observations.of(
            new double[] {500123.4, 10, 10.4, 500123.4, 50, 10.8},
            new double[] {5412876.1, 20, 20, 5412876.1, 50, 20},
            new double[] {21.2, 30, 33, 30.5, 7, 36})
        .withMeasurementVariance(new double[] {1, 3, 3, 3, 2, 3})
        .withCovariates(List.of(new double[] {1, 2, 3, 5, 8, 13}));
  }

  @Test
  void rejectingNamesRowsPlaceAndValues() {
    Duplicates.Outcome outcome = Duplicates.resolve(survey(), 0.5, DuplicatePolicy.REJECT);
    assertThat(outcome).isInstanceOf(Duplicates.Rejected.class);
    Duplicates.Rejected rejected = (Duplicates.Rejected) outcome;
    assertThat(rejected.groups()).containsExactly(new int[] {0, 3}, new int[] {1, 2, 5});
    assertThat(rejected.lines()).hasSize(2);
    assertThat(rejected.lines().get(0))
        .isEqualTo(
            "observations 1, 4 share a place, E 500123.40 N 5412876.10, values 21.2, 30.5: average"
                + " them, keep the first, or correct the coordinates");
  }

  @Test
  void averagingGivesTheVarianceOfTheMean() {
    Duplicates.Resolved resolved =
        (Duplicates.Resolved) Duplicates.resolve(survey(), 0.5, DuplicatePolicy.AVERAGE);
    Observations left = resolved.observations();
    assertThat(resolved.merged()).isEqualTo(3);
    assertThat(left.size()).isEqualTo(3);
    assertThat(left.value(0)).isCloseTo(25.85, within(1e-12));
    assertThat(left.measurementVariance(0)).isCloseTo((1 + 3) / 4.0, within(1e-12));
    assertThat(left.covariate(0, 0)).isEqualTo(3);
    assertThat(left.x(0)).isEqualTo(500123.4);
    assertThat(left.value(1)).isCloseTo(33, within(1e-12));
    assertThat(left.x(1)).isCloseTo(10.4, within(1e-12));
    assertThat(left.measurementVariance(1)).isCloseTo(1, within(1e-12));
    assertThat(left.covariate(0, 1)).isCloseTo(6, within(1e-12));
    assertThat(left.value(2)).isEqualTo(7);
    assertThat(left.measurementVariance(2)).isEqualTo(2);
  }

  @Test
  void keepingTheFirstTouchesNothingElse() {
    Duplicates.Resolved resolved =
        (Duplicates.Resolved) Duplicates.resolve(survey(), 0.5, DuplicatePolicy.KEEP_FIRST);
    Observations left = resolved.observations();
    assertThat(left.values()).containsExactly(21.2, 30, 7);
    assertThat(left.xs()).containsExactly(500123.4, 10, 50);
    assertThat(left.measurementVariance(1)).isEqualTo(3);
    assertThat(left.covariate(0, 2)).isEqualTo(8);
  }

  @Test
  void aToleranceOfNothingMeansEqualToTheLastDigit() {
    Duplicates.Resolved resolved =
        (Duplicates.Resolved) Duplicates.resolve(survey(), 0, DuplicatePolicy.AVERAGE);
    assertThat(resolved.merged()).isEqualTo(1);
    assertThat(resolved.groups()).containsExactly(new int[] {0, 3});
  }

  @ParameterizedTest
  @EnumSource(DuplicatePolicy.class)
  void observationsOfTheirOwnPlacesStayAsTheyAre(DuplicatePolicy policy) {
    Random random = new Random(8);
    Observations all =
        Observations.of(
            random.doubles(500, -40, 40).toArray(),
            random.doubles(500, -40, 40).toArray(),
            random.doubles(500).toArray());
    Duplicates.Resolved resolved = (Duplicates.Resolved) Duplicates.resolve(all, 1e-7, policy);
    assertThat(resolved.observations()).isSameAs(all);
    assertThat(resolved.merged()).isZero();
    assertThat(resolved.groups()).isEmpty();
  }

  @Test
  void refusesANegativeTolerance() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Duplicates.resolve(survey(), -1, DuplicatePolicy.AVERAGE))
        .withMessageContaining("tolerance of a shared place must be >= 0.0 m, was -1.0");
  }
}
