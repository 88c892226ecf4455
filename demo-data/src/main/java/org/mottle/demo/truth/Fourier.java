package org.mottle.demo.truth;

/**
 * The discrete Fourier transform of an n × n complex array, n a power of two, by radix-2
 * Cooley-Tukey, forward sign, not scaled. O(n² log n). One instance serves many transforms; not for
 * several threads at once.
 */
final class Fourier {

  private final int n;
  private final double[] cos;
  private final double[] sin;
  private final double[] re;
  private final double[] im;

  Fourier(int n) {
    if (Integer.bitCount(n) != 1) {
      throw new IllegalArgumentException("n must be a power of two, was " + n);
    }
    this.n = n;
    cos = new double[n / 2];
    sin = new double[n / 2];
    for (int i = 0; i < n / 2; i++) {
      cos[i] = StrictMath.cos(2 * Math.PI * i / n);
      sin[i] = -StrictMath.sin(2 * Math.PI * i / n);
    }
    re = new double[n];
    im = new double[n];
  }

  /** In place; row-major arrays of n². */
  void transform(double[] real, double[] imaginary) {
    for (int line = 0; line < n; line++) {
      along(real, imaginary, line * n, 1);
    }
    for (int line = 0; line < n; line++) {
      along(real, imaginary, line, n);
    }
  }

  private void along(double[] real, double[] imaginary, int start, int step) {
    int shift = Integer.numberOfLeadingZeros(n) + 1; // keeps the log2 n reversed bits
    for (int i = 0; i < n; i++) {
      int from = Integer.reverse(i) >>> shift;
      re[i] = real[start + from * step];
      im[i] = imaginary[start + from * step];
    }
    for (int half = 1; half < n; half *= 2) {
      butterflies(half);
    }
    for (int i = 0; i < n; i++) {
      real[start + i * step] = re[i];
      imaginary[start + i * step] = im[i];
    }
  }

  private void butterflies(int half) {
    int stride = n / (2 * half);
    for (int block = 0; block < n; block += 2 * half) {
      for (int k = 0; k < half; k++) {
        int a = block + k;
        int b = a + half;
        double c = cos[k * stride];
        double s = sin[k * stride];
        double tr = re[b] * c - im[b] * s;
        double ti = re[b] * s + im[b] * c;
        re[b] = re[a] - tr;
        im[b] = im[a] - ti;
        re[a] += tr;
        im[a] += ti;
      }
    }
  }
}
