package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.special.Erf;
import org.junit.jupiter.api.Test;

class NormalStreamTest {

  /** Recorded from this implementation: they must never change, on any machine or Java. */
  @Test
  void first_values_are_fixed() {
    NormalStream stream = new NormalStream(42, 3);
    double[] first = {stream.next(), stream.next(), stream.next(), stream.next()};
    assertThat(first).containsExactly(FIRST);
  }

  private static final double[] FIRST = {
    0.0088975572170892, -1.8731172089651367, 0.04317702978939114, 1.810314323150272
  };

  @Test
  void filling_gives_the_same_numbers_as_asking_one_by_one() {
    NormalStream one = new NormalStream(7, 0);
    NormalStream other = new NormalStream(7, 0);
    double[] scale = new double[5000];
    Arrays.fill(scale, 2);
    double[] filled = new double[5000];
    for (int round = 0; round < 4; round++) {
      one.fill(scale, 5000, filled);
      for (double v : filled) {
        assertThat(v).isEqualTo(2 * other.next());
      }
    }
  }

  /** Moments of 4 million numbers within 4.5 standard errors of those of the normal. */
  @Test
  void moments() {
    int n = 4_000_000;
    NormalStream stream = new NormalStream(1, 1);
    double[] power = new double[7];
    for (int i = 0; i < n; i++) {
      double x = stream.next();
      double p = 1;
      for (int k = 1; k <= 6; k++) {
        p *= x;
        power[k] += p / n;
      }
    }
    double[] expected = {1, 0, 1, 0, 3, 0, 15};
    // E x^2k: 1, 3, 15, 105, 945, 10395
    double[] variance = {0, 1, 2, 15, 96, 945, 10170};
    for (int k = 1; k <= 6; k++) {
      assertThat(power[k])
          .as("moment %d", k)
          .isCloseTo(expected[k], within(4.5 * Math.sqrt(variance[k] / n)));
    }
  }

  /** Counts between many limits, the tail beyond the last layer included, seed 2. */
  @Test
  void counts_in_classes_are_those_of_the_normal() {
    int n = 8_000_000;
    NormalStream stream = new NormalStream(2, 9);
    double[] limit = {
      -4.5, -4, -3.66, -3, -2, -1, -0.5, -0.2, 0, 0.3, 0.9, 1.7, 2.6, 3.66, 3.9, 4.4
    };
    int[] below = new int[limit.length];
    for (int i = 0; i < n; i++) {
      double x = stream.next();
      for (int k = limit.length - 1; k >= 0 && x < limit[k]; k--) {
        below[k]++;
      }
    }
    for (int k = 0; k < limit.length; k++) {
      double p = 0.5 * Erf.erfc(-limit[k] / Math.sqrt(2));
      double se = Math.sqrt(n * p * (1 - p));
      assertThat((double) below[k]).as("below %s", limit[k]).isCloseTo(n * p, within(4.5 * se));
    }
  }

  @Test
  void neighbouring_streams_and_lags_are_uncorrelated() {
    int n = 200_000;
    double[] products = new double[4];
    NormalStream a = new NormalStream(5, 0);
    NormalStream b = new NormalStream(5, 1);
    NormalStream c = new NormalStream(6, 0);
    double before = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double x = a.next();
      double y = b.next();
      double z = c.next();
      products[0] += x * y;
      products[1] += x * z;
      products[2] += x * before;
      products[3] += (x * x - 1) * (squares - 1) / 2;
      before = x;
      squares = x * x;
    }
    for (double p : products) {
      assertThat(p / Math.sqrt(n)).isBetween(-4.5, 4.5);
    }
  }
}
