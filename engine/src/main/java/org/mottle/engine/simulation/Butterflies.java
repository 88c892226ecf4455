package org.mottle.engine.simulation;

/**
 * The inner loops of {@link RowTransform}, over rows of real or imaginary parts. No loop writes
 * more than four rows: longer bodies are not unrolled by the compiler of Java 17 and stay scalar,
 * at a third of the speed.
 */
final class Butterflies {
  private static final double HALF_ROOT_3 = 0.86602540378443864676;

  /** Cosines and sines of 72 and 144 degrees. */
  private static final double COS_1 = 0.30901699437494742410;

  private static final double COS_2 = -0.80901699437494742410;
  private static final double SIN_1 = 0.95105651629515357212;
  private static final double SIN_2 = 0.58778525229247312917;

  private Butterflies() {}

  /** (a, b) becomes (a + b, (a - b) (c + is)). */
  static void two(
      double[] ar, double[] ai, double[] br, double[] bi, double c, double s, int width) {
    for (int q = 0; q < width; q++) {
      double pr = ar[q];
      double pi = ai[q];
      double qr = br[q];
      double qi = bi[q];
      double dr = pr - qr;
      double di = pi - qi;
      ar[q] = pr + qr;
      ai[q] = pi + qi;
      br[q] = dr * c - di * s;
      bi[q] = dr * s + di * c;
    }
  }

  /** (b, d) becomes ((b - i d) (c1 + i s1), (b + i d) (c2 + i s2)). */
  static void cross(
      double[] br,
      double[] bi,
      double[] dr,
      double[] di,
      double c1,
      double s1,
      double c2,
      double s2,
      int width) {
    for (int q = 0; q < width; q++) {
      double pr = br[q];
      double pi = bi[q];
      double qr = dr[q];
      double qi = di[q];
      double yr = pr + qi;
      double yi = pi - qr;
      double zr = pr - qi;
      double zi = pi + qr;
      br[q] = yr * c1 - yi * s1;
      bi[q] = yr * s1 + yi * c1;
      dr[q] = zr * c2 - zi * s2;
      di[q] = zr * s2 + zi * c2;
    }
  }

  /** a becomes a (c + is). */
  static void turn(double[] ar, double[] ai, double c, double s, int width) {
    for (int q = 0; q < width; q++) {
      double pr = ar[q];
      double pi = ai[q];
      ar[q] = pr * c - pi * s;
      ai[q] = pr * s + pi * c;
    }
  }

  /** (a, b, c, d) becomes (a + c + b + d, a - c, a + c - b - d, b - d). */
  static void fourSums(double[] a, double[] b, double[] c, double[] d, int width) {
    for (int q = 0; q < width; q++) {
      double w = a[q];
      double x = b[q];
      double y = c[q];
      double z = d[q];
      double even = w + y;
      double odd = x + z;
      a[q] = even + odd;
      b[q] = w - y;
      c[q] = even - odd;
      d[q] = x - z;
    }
  }

  /** (a, b, c) becomes (a + b + c, a - (b + c) / 2, (b - c) sqrt(3) / 2). */
  static void threeSums(double[] a, double[] b, double[] c, int width) {
    for (int q = 0; q < width; q++) {
      double w = a[q];
      double x = b[q];
      double y = c[q];
      double sum = x + y;
      a[q] = w + sum;
      b[q] = w - 0.5 * sum;
      c[q] = HALF_ROOT_3 * (x - y);
    }
  }

  /** Sums for five rows: a, then the even parts of outputs 1 and 2 in b and c, the odd in e, d. */
  static void fiveSums(double[] a, double[] b, double[] c, double[] d, double[] e, int width) {
    sumAndDifference(b, e, c, d, width);
    fiveEven(a, b, c, width);
    fiveOdd(e, d, width);
  }

  private static void sumAndDifference(double[] b, double[] e, double[] c, double[] d, int width) {
    for (int q = 0; q < width; q++) {
      double w = b[q];
      double x = e[q];
      double y = c[q];
      double z = d[q];
      b[q] = w + x;
      e[q] = w - x;
      c[q] = y + z;
      d[q] = y - z;
    }
  }

  private static void fiveEven(double[] a, double[] b, double[] c, int width) {
    for (int q = 0; q < width; q++) {
      double w = a[q];
      double x = b[q];
      double y = c[q];
      a[q] = w + (x + y);
      b[q] = w + (COS_1 * x + COS_2 * y);
      c[q] = w + (COS_2 * x + COS_1 * y);
    }
  }

  private static void fiveOdd(double[] e, double[] d, int width) {
    for (int q = 0; q < width; q++) {
      double x = e[q];
      double y = d[q];
      e[q] = SIN_1 * x + SIN_2 * y;
      d[q] = SIN_2 * x - SIN_1 * y;
    }
  }
}
