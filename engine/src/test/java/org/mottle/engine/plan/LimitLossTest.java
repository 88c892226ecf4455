package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class LimitLossTest {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  @Test
  void the_table_keeps_its_error_bound() {
    double worst = 0;
    for (double k = 0; k < 9; k += 0.037) {
      LimitLoss loss = new LimitLoss(k, 1, new double[] {0});
      for (double share = 0; share <= 1; share += 0.0043) {
        double a = Math.sqrt((1 - share) / (1 + share));
        worst = Math.max(worst, Math.abs(loss.expected(share) - 2 * OwensT.value(k, a)));
      }
    }
    assertThat(worst).isLessThanOrEqualTo(LimitLoss.ERROR_BOUND).isGreaterThan(1e-9);
  }

  /** E p'(1 - p') by the midpoints of 20,000 equal slices of the law of the future mean. */
  @Test
  void the_closed_form_is_the_mean_over_the_readings_to_come() {
    double[] limits = {19, 24};
    for (double mean : new double[] {17, 19, 20.5, 23, 27}) {
      for (double share : new double[] {0.02, 0.3, 0.75, 0.98}) {
        double variance = 3.2;
        double sum = 0;
        int slices = 20_000;
        for (int s = 0; s < slices; s++) {
          double z = NORMAL.inverseCumulativeProbability((s + 0.5) / slices);
          double later = mean + Math.sqrt(share * variance) * z;
          for (double limit : limits) {
            double p =
                NORMAL.cumulativeProbability((later - limit) / Math.sqrt((1 - share) * variance));
            sum += p * (1 - p) / slices;
          }
        }
        assertThat(new LimitLoss(mean, variance, limits).expected(share))
            .as("mean %s, share explained %s", mean, share)
            .isCloseTo(sum, within(1e-5));
      }
    }
  }

  @Test
  void falls_from_p_times_q_to_nothing_as_more_is_explained() {
    LimitLoss loss = new LimitLoss(21.3, 2, new double[] {20, 25});
    double p = NORMAL.cumulativeProbability(1.3 / Math.sqrt(2));
    double q = NORMAL.cumulativeProbability(3.7 / Math.sqrt(2));
    assertThat(loss.atPresent()).isCloseTo(p * (1 - p) + q * (1 - q), within(1e-11));
    assertThat(loss.expected(0)).isEqualTo(loss.atPresent());
    assertThat(loss.expected(1)).isZero();
    double before = loss.atPresent();
    for (double share = 0.001; share < 1; share += 0.001) {
      double now = loss.expected(share);
      assertThat(now).as("share %s", share).isLessThan(before);
      before = now;
    }
  }

  @Test
  void lies_between_half_and_the_whole_of_the_chance_of_a_wrong_call() {
    for (double k = 0; k < 5; k += 0.1) {
      double wrong = NORMAL.cumulativeProbability(-k);
      double loss = new LimitLoss(k, 1, new double[] {0}).atPresent();
      assertThat(loss).isBetween(0.5 * wrong - 1e-12, wrong);
    }
  }
}
