package org.mottle.demo.truth;

import org.mottle.demo.random.Stream;

/**
 * Gaussian random fields of mean 0 and sill 1 with spherical covariance, drawn exactly on the
 * lattice by circulant embedding (Dietrich and Newsam 1997; Wood and Chan 1994). The spherical
 * covariance is 0 beyond its range, so it fits on a torus of 64 m twice its range wide; the
 * eigenvalues are then samples of a spectral density and cannot be negative. Two places at most 64
 * m less one range apart have the covariance of the model, not of the torus. O(N² log N) a pair of
 * fields.
 */
public final class SphericalField {

  private static final int N = Lattice.N;
  private final double rangeM;
  private final double[] root;
  private final Fourier fourier = new Fourier(N);

  public SphericalField(double rangeM) {
    if (!(rangeM > 0 && rangeM <= 20)) {
      throw new IllegalArgumentException(
          "the range must be above 0 and at most 20 m to fit on the torus, was " + rangeM);
    }
    this.rangeM = rangeM;
    double[] eigenvalues = new double[N * N];
    for (int row = 0; row < N; row++) {
      for (int column = 0; column < N; column++) {
        double u = Math.min(row, N - row) * Lattice.STEP_M;
        double v = Math.min(column, N - column) * Lattice.STEP_M;
        eigenvalues[row * N + column] = correlation(Math.sqrt(u * u + v * v));
      }
    }
    fourier.transform(eigenvalues, new double[N * N]);
    root = new double[N * N];
    for (int i = 0; i < root.length; i++) {
      if (eigenvalues[i] < -1e-9) {
        throw new IllegalStateException("negative eigenvalue " + eigenvalues[i] + " at " + i);
      }
      root[i] = Math.sqrt(Math.max(0, eigenvalues[i]) / (N * N));
    }
  }

  /** 1 − 1.5 h/a + 0.5 (h/a)³ within the range. */
  public double correlation(double lagM) {
    double r = lagM / rangeM;
    return r >= 1 ? 0 : 1 - 1.5 * r + 0.5 * r * r * r;
  }

  /** Two independent fields, row-major from the south-west node. */
  public double[][] pair(Stream stream) {
    double[] real = new double[N * N];
    double[] imaginary = new double[N * N];
    for (int i = 0; i < real.length; i++) {
      real[i] = root[i] * stream.gaussian();
      imaginary[i] = root[i] * stream.gaussian();
    }
    fourier.transform(real, imaginary);
    return new double[][] {real, imaginary};
  }
}
