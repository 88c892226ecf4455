package org.mottle.engine.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CheckTest {

  @Test
  void aRefusalNamesThingRuleUnitAndValue() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Check.above("range", -4, 0, "m"))
        .withMessage("range must be > 0.0 m, was -4.0");
  }

  @Test
  void aNumberWithoutUnitLeavesNoGap() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Check.above("kappa", 0, 0, ""))
        .withMessage("kappa must be > 0.0, was 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Check.within("ratio", 2, 0, 1, ""))
        .withMessage("ratio must be between 0.0 and 1.0, was 2.0");
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void whatIsNoNumberIsRefusedByEveryRule(double value) {
    assertThatIllegalArgumentException().isThrownBy(() -> Check.above("x", value, 0, "m"));
    assertThatIllegalArgumentException().isThrownBy(() -> Check.atLeast("x", value, 0, "m"));
    assertThatIllegalArgumentException().isThrownBy(() -> Check.within("x", value, 0, 1, "m"));
    assertThatIllegalArgumentException().isThrownBy(() -> Check.finite("x", value, "m"));
  }

  @Test
  void whatPassesIsReturned() {
    assertThat(Check.atLeast("x", 0, 0, "m")).isZero();
    assertThat(Check.within("x", 1, 0, 1, "m")).isEqualTo(1);
  }
}
