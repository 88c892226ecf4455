package org.mottle.engine.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.plan.Positions;
import org.mottle.engine.plan.WalkOrder;

class WalkLengthTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void walk_is_within_five_per_cent_of_a_long_anneal(long seed) {
    Random random = new Random(seed);
    double[] x = random.doubles(25, 0, 28).toArray();
    double[] y = random.doubles(25, 0, 18).toArray();
    double walk = WalkOrder.anywhere(Positions.of(x, y)).lengthM();
    assertThat(walk).as("seed %d", seed).isLessThanOrEqualTo(1.05 * annealed(x, y, random));
  }

  /** Reversals of stretches at a temperature that falls from 10 m to 0.01 m. */
  private static double annealed(double[] x, double[] y, Random random) {
    double length = length(x, y);
    double least = length;
    int steps = 400_000;
    for (int k = 0; k < steps; k++) {
      double temperature = 10 * Math.pow(0.001, k / (double) steps);
      int a = random.nextInt(x.length);
      int b = random.nextInt(x.length);
      reverse(x, y, Math.min(a, b), Math.max(a, b));
      double now = length(x, y);
      if (now < length || random.nextDouble() < Math.exp((length - now) / temperature)) {
        length = now;
        least = Math.min(least, now);
      } else {
        reverse(x, y, Math.min(a, b), Math.max(a, b));
      }
    }
    return least;
  }

  private static void reverse(double[] x, double[] y, int from, int to) {
    for (int i = from, j = to; i < j; i++, j--) {
      double keepX = x[i];
      double keepY = y[i];
      x[i] = x[j];
      y[i] = y[j];
      x[j] = keepX;
      y[j] = keepY;
    }
  }

  private static double length(double[] x, double[] y) {
    double sum = 0;
    for (int i = 1; i < x.length; i++) {
      sum += Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
    }
    return sum;
  }
}
