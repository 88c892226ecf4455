package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/** Agreement of a printed number with a published one. */
final class Close {
  /** Variances at a datum are 0 but for rounding: no relative tolerance holds there. */
  private static final double ROUNDING = 1e-12;

  private Close() {}

  static void relative(String what, double actual, double published, double tolerance) {
    assertThat(actual)
        .as(what)
        .isCloseTo(published, within(Math.max(ROUNDING, tolerance * Math.abs(published))));
  }
}
