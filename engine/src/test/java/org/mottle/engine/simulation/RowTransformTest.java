package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RowTransformTest {

  static IntStream smoothLengths() {
    return IntStream.rangeClosed(1, 130).filter(n -> RowTransform.smoothAtLeast(n) == n);
  }

  @ParameterizedTest
  @MethodSource("smoothLengths")
  void equals_the_defining_sum(int n) {
    int width = 3;
    double[][] re = random(n, width, n);
    double[][] im = random(n, width, n + 1000);
    double[][] gotRe = copy(re);
    double[][] gotIm = copy(im);
    RowTransform transform = new RowTransform(n);
    transform.forward(gotRe, gotIm, width);
    for (int k = 0; k < n; k++) {
      for (int q = 0; q < width; q++) {
        double sumRe = 0;
        double sumIm = 0;
        for (int j = 0; j < n; j++) {
          double angle = -2 * Math.PI * ((long) j * k % n) / n;
          sumRe += re[j][q] * Math.cos(angle) - im[j][q] * Math.sin(angle);
          sumIm += re[j][q] * Math.sin(angle) + im[j][q] * Math.cos(angle);
        }
        assertThat(gotRe[transform.place(k)][q]).as("re %d", k).isCloseTo(sumRe, within(1e-12 * n));
        assertThat(gotIm[transform.place(k)][q]).as("im %d", k).isCloseTo(sumIm, within(1e-12 * n));
      }
    }
  }

  /** Parseval: the sum of squares grows by N. */
  @Test
  void keeps_the_energy_of_a_long_row() {
    int n = 1500;
    double[][] re = random(n, 2, 5);
    double[][] im = random(n, 2, 6);
    double before = energy(re) + energy(im);
    new RowTransform(n).forward(re, im, 2);
    assertThat(energy(re) + energy(im)).isCloseTo(n * before, within(1e-12 * n * before));
  }

  @Test
  void leaves_the_columns_beyond_the_width_alone() {
    double[][] re = random(60, 4, 7);
    double[][] im = random(60, 4, 8);
    double[][] before = copy(re);
    new RowTransform(60).forward(re, im, 3);
    for (int i = 0; i < 60; i++) {
      assertThat(re[i][3]).isEqualTo(before[i][3]);
    }
  }

  @Test
  void smooth_numbers() {
    assertThat(IntStream.of(1, 7, 11, 97, 121, 241, 1025).map(RowTransform::smoothAtLeast))
        .containsExactly(1, 8, 12, 100, 125, 243, 1080);
    assertThat(IntStream.of(1, 121, 100).map(RowTransform::cheapestAtLeast))
        .containsExactly(1, 128, 100);
    assertThatThrownBy(() -> new RowTransform(14))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("14");
  }

  private static double[][] random(int rows, int width, long seed) {
    Random random = new Random(seed);
    double[][] m = new double[rows][];
    for (int i = 0; i < rows; i++) {
      m[i] = random.doubles(width, -1, 1).toArray();
    }
    return m;
  }

  private static double[][] copy(double[][] m) {
    double[][] c = m.clone();
    for (int i = 0; i < c.length; i++) {
      c[i] = m[i].clone();
    }
    return c;
  }

  private static double energy(double[][] m) {
    double sum = 0;
    for (double[] row : m) {
      for (double v : row) {
        sum += v * v;
      }
    }
    return sum;
  }
}
