package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OwensTTest {

  /**
   * The first six are test points of Patefield & Tandy 2000, table 2; all values by adaptive
   * quadrature of the definition with 40 digits (mpmath 1.3.0).
   */
  @ParameterizedTest
  @CsvSource({
    "0.0625, 0.25, 0.038911930234701366897",
    "6.5, 0.4375, 2.000577304850831541e-11",
    "7, 0.96875, 6.3990627193898685308e-13",
    "4.78125, 0.0625, 1.0632974804687463806e-7",
    "2, 0.5, 0.0086250779855215071311",
    "1, 0.9999975, 0.066741808978228592292",
    "0, 0.3, 0.046386789538871170158",
    "0.5, 3, 0.15108404307601841107",
    "1.5, 20, 0.033403600634429033002",
    "3, 1, 0.00067403790346714786148",
    "8, 0.2, 2.7856990172210696863e-16",
    "-1.2, 0.7, 0.042797442603088491702",
    "0.8, -0.6, -0.060324514985809588643",
    "0.1, 50, 0.23008608093720961243",
    "12, 0.5, 8.8824105464208782227e-34",
  })
  void agrees_with_values_from_outside(double h, double a, double expected) {
    assertThat(OwensT.value(h, a)).isCloseTo(expected, withPercentage(1e-11));
  }

  @Test
  void obeys_the_identities_of_owen() {
    NormalDistribution normal = new NormalDistribution();
    Random random = new Random(11);
    for (int i = 0; i < 200; i++) {
      double h = 8 * random.nextDouble() - 4;
      double a = 4 * random.nextDouble();
      String what = "seed 11, h " + h + ", a " + a;
      double phi = normal.cumulativeProbability(h);
      assertThat(OwensT.value(-h, a)).as(what).isEqualTo(OwensT.value(h, a));
      assertThat(OwensT.value(h, -a)).as(what).isEqualTo(-OwensT.value(h, a));
      assertThat(OwensT.value(h, 1)).as(what).isCloseTo(phi * (1 - phi) / 2, within(1e-15));
      assertThat(OwensT.value(0, a)).as(what).isCloseTo(Math.atan(a) / 2 / Math.PI, within(1e-15));
      assertThat(OwensT.value(h, Double.POSITIVE_INFINITY))
          .as(what)
          .isCloseTo(Math.min(phi, 1 - phi) / 2, within(1e-15));
    }
    assertThat(OwensT.value(Double.POSITIVE_INFINITY, 0.5)).isZero();
  }
}
