package org.mottle.engine.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Errors of places and errors in common stay with their observations. */
class ObservationErrorsTest {

  private static Observations plain() {
    return Observations.of(
        new double[] {0, 0, 5, 9}, new double[] {1, 1, 5, 9}, new double[] {20, 22, 24, 26});
  }

  private static Observations survey() {
    return plain()
        .withPositionError(new PositionError(new double[] {0.5, 0.7, 2, 0}, 1.5))
        .withCommonErrors(List.of(CommonError.of(new boolean[] {true, false, true, false}, 0.25)));
  }

  @Test
  void noneUnlessGiven() {
    assertThat(plain().positionError().exact()).isTrue();
    assertThat(plain().commonErrors()).isEmpty();
    assertThat(survey().positionError().exact()).isFalse();
    assertThat(new PositionError(new double[4], 1).exact()).isFalse();
    assertThat(new PositionError(new double[4], 1).jittered()).isFalse();
  }

  @Test
  void rowsAndOtherValuesKeepThem() {
    Observations some =
        survey()
            .withValues(new double[] {1, 2, 3, 4})
            .withMeasurementVariance(new double[4])
            .withCovariates(List.of(new double[4]))
            .rows(2, 1, 1);
    assertThat(some.positionError().jitterSdM()).containsExactly(2, 0.7, 0.7);
    assertThat(some.positionError().shiftSdM()).isEqualTo(1.5);
    assertThat(some.commonErrors()).hasSize(1);
    assertThat(some.commonErrors().get(0).share()).containsExactly(1, 0, 0);
    assertThat(some.commonErrors().get(0).variance()).isEqualTo(0.25);
  }

  @Test
  void aMeanOfASharedPlaceCarriesTheLargestJitterAndTheMeanShare() {
    Duplicates.Resolved resolved =
        (Duplicates.Resolved) Duplicates.resolve(survey(), 0, DuplicatePolicy.AVERAGE);
    Observations left = resolved.observations();
    assertThat(left.positionError().jitterSdM()).containsExactly(0.7, 2, 0);
    assertThat(left.positionError().shiftSdM()).isEqualTo(1.5);
    assertThat(left.commonErrors().get(0).share()).containsExactly(0.5, 1, 0);
  }

  @Test
  void whatIsGivenIsCopied() {
    double[] jitter = {1, 1, 1, 1};
    PositionError error = new PositionError(jitter, 0);
    jitter[0] = 9;
    error.jitterSdM()[1] = 9;
    assertThat(error.jitterSdM()).containsOnly(1);
  }

  @Test
  void refusalsNameTheValue() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new PositionError(new double[] {1, -2}, 0))
        .withMessage("position error of observation 2 must be >= 0.0 m, was -2.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new CommonError(new double[] {1, 1.5}, 1))
        .withMessageContaining("was 1.5");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plain().withPositionError(new PositionError(new double[3], 0)))
        .withMessage("position error has 3 entries where there are 4 observations");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> plain().withCommonErrors(List.of(CommonError.of(new boolean[2], 1))))
        .withMessage("common error 1 has 2 entries where there are 4 observations");
  }
}
