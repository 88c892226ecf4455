package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class NormalDistributionTest {

  @Test
  void agrees_with_the_error_function_of_commons_math() {
    for (double x = -12; x <= 12; x += 0.0137) {
      assertThat(NormalDistribution.below(x))
          .as("x %s", x)
          .isCloseTo(0.5 * Erf.erfc(-x / Math.sqrt(2)), within(1e-13));
    }
  }

  /** Abramowitz & Stegun 1964, table 26.1. */
  @Test
  void agrees_with_the_tables() {
    assertThat(NormalDistribution.below(1)).isCloseTo(0.841344746068543, within(1e-14));
    assertThat(NormalDistribution.below(2)).isCloseTo(0.977249868051821, within(1e-14));
    assertThat(NormalDistribution.below(-3)).isCloseTo(0.001349898031630, within(1e-14));
  }

  @Test
  void is_one_half_at_nought_and_ends_at_nought_and_one() {
    assertThat(NormalDistribution.below(0)).isCloseTo(0.5, within(1e-15));
    assertThat(NormalDistribution.below(-50)).isZero();
    assertThat(NormalDistribution.below(50)).isEqualTo(1);
    assertThat(NormalDistribution.below(Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(NormalDistribution.below(Double.NaN)).isNaN();
  }
}
