package org.mottle.engine.simulation;

import java.util.Arrays;

/**
 * Discrete Fourier transform along the rows of a panel: X[k] = sum over j of x[j] exp(-2 pi i j k /
 * N), x[j] and X[k] whole rows of complex numbers, for N a product of 2, 3 and 5.
 *
 * <p>Decimation in frequency, radix 4 first, in place (Cooley & Tukey 1965; Van Loan 1992, ch. 2).
 * Rows are separate arrays and every butterfly runs along them with unit stride and one twiddle a
 * row, so that the compiler makes vector instructions of it. Rows are not moved: {@link #place}
 * tells where an output is. O(N log N) a column; immutable, shared by threads.
 */
final class RowTransform {
  private final int length;
  private final int[] radices;
  private final int[] place;

  /** exp(-2 pi i k / N). */
  private final double[] cos;

  private final double[] sin;

  /**
   * @param length N, a product of 2, 3 and 5
   */
  RowTransform(int length) {
    this.length = length;
    this.radices = radices(length);
    this.place = new int[length];
    this.cos = new double[length];
    this.sin = new double[length];
    for (int k = 0; k < length; k++) {
      double angle = -2 * Math.PI * k / length;
      cos[k] = StrictMath.cos(angle);
      sin[k] = StrictMath.sin(angle);
      place[k] = placeOf(k);
    }
  }

  /** The smallest product of 2, 3 and 5 not below {@code least}. */
  static int smoothAtLeast(int least) {
    int n = Math.max(1, least);
    while (withoutSmallFactors(n) != 1) {
      n++;
    }
    return n;
  }

  /**
   * The length from {@code least} on that is cheapest for a field: powers of 2 take fewer
   * operations than 3 and 5, and every node takes its random numbers, which cost about as much as
   * ten stages.
   */
  static int cheapestAtLeast(int least) {
    int cheapest = smoothAtLeast(least);
    for (int n = cheapest; n <= 1.25 * least; n = smoothAtLeast(n + 1)) {
      if (cost(n) < cost(cheapest)) {
        cheapest = n;
      }
    }
    return cheapest;
  }

  /** Rows touched a node of a whole field, roughly. */
  private static double cost(int length) {
    double stages = 10;
    for (int radix : radices(length)) {
      stages += radix == 2 ? 1 : radix == 5 ? 2.6 : 1.7;
    }
    return length * stages;
  }

  private static int withoutSmallFactors(int n) {
    int rest = n;
    for (int factor : new int[] {2, 3, 5}) {
      while (rest % factor == 0) {
        rest /= factor;
      }
    }
    return rest;
  }

  private static int[] radices(int length) {
    if (length < 1 || withoutSmallFactors(length) != 1) {
      throw new IllegalArgumentException(
          "a transform needs a length that is a product of 2, 3 and 5, was " + length);
    }
    int[] found = new int[32];
    int count = 0;
    int rest = length;
    for (int radix : new int[] {4, 2, 3, 5}) {
      while (rest % radix == 0) {
        found[count++] = radix;
        rest /= radix;
      }
    }
    return Arrays.copyOf(found, count);
  }

  private int placeOf(int k) {
    int at = 0;
    int block = length;
    int rest = k;
    for (int radix : radices) {
      block /= radix;
      at += rest % radix * block;
      rest /= radix;
    }
    return at;
  }

  int length() {
    return length;
  }

  /** The row that holds output {@code k} after {@link #forward}. */
  int place(int k) {
    return place[k];
  }

  /**
   * Transforms the columns [0, width) in place.
   *
   * @param re [N][at least width] real parts
   * @param im [N][at least width] imaginary parts
   */
  void forward(double[][] re, double[][] im, int width) {
    int block = length;
    for (int radix : radices) {
      int step = block / radix;
      int turn = length / block;
      for (int p = 0; p < step; p++) {
        for (int base = p; base < length; base += block) {
          switch (radix) {
            case 4 -> four(re, im, base, step, p * turn, width);
            case 2 -> two(re, im, base, step, p * turn, width);
            case 3 -> three(re, im, base, step, p * turn, width);
            default -> five(re, im, base, step, p * turn, width);
          }
        }
      }
      block = step;
    }
  }

  private void two(double[][] re, double[][] im, int a, int step, int turn, int width) {
    int b = a + step;
    Butterflies.two(re[a], im[a], re[b], im[b], cos[turn], sin[turn], width);
  }

  private void four(double[][] re, double[][] im, int a, int step, int turn, int width) {
    int b = a + step;
    int c = b + step;
    int d = c + step;
    Butterflies.fourSums(re[a], re[b], re[c], re[d], width);
    Butterflies.fourSums(im[a], im[b], im[c], im[d], width);
    cross(re, im, b, d, turn, 3 * turn, width);
    if (turn != 0) {
      Butterflies.turn(re[c], im[c], cos[2 * turn], sin[2 * turn], width);
    }
  }

  private void three(double[][] re, double[][] im, int a, int step, int turn, int width) {
    int b = a + step;
    int c = b + step;
    Butterflies.threeSums(re[a], re[b], re[c], width);
    Butterflies.threeSums(im[a], im[b], im[c], width);
    cross(re, im, b, c, turn, 2 * turn, width);
  }

  private void five(double[][] re, double[][] im, int a, int step, int turn, int width) {
    int b = a + step;
    int c = b + step;
    int d = c + step;
    int e = d + step;
    Butterflies.fiveSums(re[a], re[b], re[c], re[d], re[e], width);
    Butterflies.fiveSums(im[a], im[b], im[c], im[d], im[e], width);
    cross(re, im, b, e, turn, 4 * turn, width);
    cross(re, im, c, d, 2 * turn, 3 * turn, width);
  }

  private void cross(double[][] re, double[][] im, int b, int d, int turnB, int turnD, int width) {
    Butterflies.cross(
        re[b], im[b], re[d], im[d], cos[turnB], sin[turnB], cos[turnD], sin[turnD], width);
  }
}
