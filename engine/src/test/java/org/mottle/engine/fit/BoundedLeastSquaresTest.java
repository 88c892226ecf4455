package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class BoundedLeastSquaresTest {
  private static final long SEED = 77;

  /** At the solution no feasible direction goes down (Karush-Kuhn-Tucker). */
  @Test
  void obeysTheConditionsOfAMinimum() {
    Random random = new Random(SEED);
    for (int trial = 0; trial < 500; trial++) {
      int p = 1 + random.nextInt(4);
      int n = 6;
      double[][] a = new double[p][n];
      double[] t = new double[n];
      double[] lower = new double[p];
      double[] upper = new double[p];
      for (int k = 0; k < p; k++) {
        lower[k] = random.nextInt(3) * 0.2;
        upper[k] = random.nextBoolean() ? Double.POSITIVE_INFINITY : lower[k] + random.nextDouble();
        for (int j = 0; j < n; j++) {
          a[k][j] = random.nextGaussian();
        }
      }
      for (int j = 0; j < n; j++) {
        t[j] = 2 * random.nextGaussian();
      }
      double[] b = new BoundedLeastSquares(a, t, lower, upper).solve();
      for (int k = 0; k < p; k++) {
        double slope = 0;
        for (int j = 0; j < n; j++) {
          double rest = t[j];
          for (int i = 0; i < p; i++) {
            rest -= b[i] * a[i][j];
          }
          slope += a[k][j] * rest;
        }
        String as = "seed " + SEED + ", trial " + trial + ", unknown " + k;
        assertThat(b[k]).as(as).isBetween(lower[k], upper[k]);
        if (b[k] > lower[k]) {
          assertThat(slope).as(as).isGreaterThan(-1e-9);
        }
        if (b[k] < upper[k]) {
          assertThat(slope).as(as).isLessThan(1e-9);
        }
      }
    }
  }
}
