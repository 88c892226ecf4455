package org.mottle.engine.adjust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The slope of drying against figures by hand and by R. */
class DryingTest {
  /** Invented readings of two control stations. */
  private static final double[] HOUR = {0, 1, 2, 3, 4, 0.5, 1.5, 2.5, 3.5, 4.5};

  private static final double[] PCT = {24.1, 23.6, 23.5, 22.7, 22.4, 19.8, 19.7, 18.9, 18.8, 18.1};

  private static final int[] STATION = {0, 0, 0, 0, 0, 1, 1, 1, 1, 1};

  /**
   * By hand: hours 0..3, values 20, 19, 19, 18; Σ(t-t̄)² = 5, Σ(t-t̄)(v-v̄) = -3, Σ(v-v̄)² = 2, so
   * the slope is -0.6, the residual 2 - 1.8 = 0.2 over 2 degrees of freedom, the error √(0.1 / 5).
   */
  @Test
  void oneStationByHand() {
    Drying drying =
        Drying.of(new double[] {0, 1, 2, 3}, new double[] {20, 19, 19, 18}, new int[4], 3);

    assertThat(drying.slopePctH()).isCloseTo(-0.6, within(1e-12));
    assertThat(drying.standardError()).isCloseTo(Math.sqrt(0.02), within(1e-12));
    assertThat(drying.readings()).isEqualTo(4);
    assertThat(drying.stations()).isEqualTo(1);
  }

  /** Computed with lm(v ~ h + factor(s)), R 4.2.2: summary and confint. */
  @Test
  void twoStationsAgreeWithR() {
    Drying drying = Drying.of(HOUR, PCT, STATION, 4.5);

    assertThat(drying.slopePctH()).isCloseTo(-0.430, within(1e-12));
    assertThat(drying.standardError()).isCloseTo(0.0383592045203, within(1e-11));
    assertThat(drying.slopePctH() + drying.halfWidth()).isCloseTo(-0.33929489472, within(1e-8));
    assertThat(drying.slopePctH() - drying.halfWidth()).isCloseTo(-0.52070510528, within(1e-8));
    assertThat(drying.words())
        .isEqualTo("-0.43 % an hour (standard error 0.04), from 10 readings of 2 control stations");
  }

  @Test
  void levelOfAStationDoesNotMatter() {
    double[] raised = PCT.clone();
    for (int i = 0; i < raised.length; i++) {
      raised[i] += STATION[i] == 1 ? 15 : -3;
    }
    Drying drying = Drying.of(HOUR, PCT, STATION, 4.5);
    Drying other = Drying.of(HOUR, raised, STATION, 4.5);

    assertThat(other.slopePctH()).isCloseTo(drying.slopePctH(), within(1e-10));
    assertThat(other.standardError()).isCloseTo(drying.standardError(), within(1e-10));
  }

  @Test
  void aClearSlopeIsCorrectedAndItsErrorIsLeft() {
    Drying drying = Drying.of(HOUR, PCT, STATION, 4.5);

    assertThat(drying.corrected()).isTrue();
    assertThat(drying.correction(0)).isZero();
    assertThat(drying.correction(2)).isCloseTo(-0.86, within(1e-12));
    assertThat(drying.leftAtEndPct()).isCloseTo(0.0383592045203 * 4.5, within(1e-10));
  }

  @Test
  void aSmallChangeIsNotCorrectedButCarriedAsError() {
    Drying drying = Drying.of(HOUR, PCT, STATION, 1);

    assertThat(drying.corrected()).as("0.43 %% over the survey is below 0.5 %%").isFalse();
    assertThat(drying.correction(1)).isZero();
    assertThat(drying.leftAtEndPct()).isCloseTo(Math.hypot(0.43, 0.0383592045203), within(1e-10));
  }

  @Test
  void theLeastChangeItselfIsNotCorrected() {
    assertThat(new Drying(-0.25, 0.01, 2, 12, 2).corrected()).isFalse();
    assertThat(new Drying(-0.2501, 0.01, 2, 12, 2).corrected()).isTrue();
    assertThat(new Drying(0.2501, 0.01, 2, 12, 2).corrected()).as("wetting counts too").isTrue();
  }

  @Test
  void aSlopeWithinTwoStandardErrorsIsNotCorrected() {
    Drying drying = new Drying(-0.4, 0.2, 5, 12, 2);

    assertThat(drying.corrected()).isFalse();
    assertThat(drying.correction(5)).isZero();
    assertThat(drying.leftAtEndPct()).isCloseTo(5 * Math.sqrt(0.16 + 0.04), within(1e-12));
    assertThat(new Drying(-0.4, 0.199, 5, 12, 2).corrected()).isTrue();
  }

  @Test
  void tooFewReadingsShowNoSlope() {
    Drying three = Drying.of(new double[] {0, 1, 2}, new double[] {20, 19, 18}, new int[3], 3);
    Drying none = Drying.of(new double[0], new double[0], new int[0], 3);
    Drying atOnce = Drying.of(new double[6], new double[] {9, 8, 9, 8, 9, 8}, new int[6], 3);

    for (Drying drying : new Drying[] {three, none, atOnce}) {
      assertThat(drying.known()).isFalse();
      assertThat(drying.corrected()).isFalse();
      assertThat(drying.correction(3)).isZero();
    }
  }

  /** A line without scatter has no error, however the sums round. */
  @Test
  void anExactLineHasNoError() {
    double[] hour = {0.1, 0.7, 1.3, 2.9, 3.1};
    double[] pct = new double[5];
    for (int i = 0; i < 5; i++) {
      pct[i] = 21.7 - 0.3 * hour[i];
    }
    Drying drying = Drying.of(hour, pct, new int[5], 3);

    assertThat(drying.slopePctH()).isCloseTo(-0.3, within(1e-12));
    assertThat(drying.standardError()).isNotNaN().isLessThan(1e-6);
  }

  /** The 95 % limits hold the true slope in 95 % of trials. */
  @Test
  void limitsHoldTheTruth() {
    long seed = 5;
    Random random = new Random(seed);
    int trials = 2000;
    int held = 0;
    for (int k = 0; k < trials; k++) {
      double[] pct = new double[HOUR.length];
      for (int i = 0; i < pct.length; i++) {
        pct[i] = 20 + 3 * STATION[i] - 0.35 * HOUR[i] + 0.5 * random.nextGaussian();
      }
      Drying drying = Drying.of(HOUR, pct, STATION, 4.5);
      held += Math.abs(drying.slopePctH() + 0.35) <= drying.halfWidth() ? 1 : 0;
    }
    assertThat(held / (double) trials).as("seed %d", seed).isBetween(0.93, 0.97);
  }
}
