package org.mottle.engine.simulation;

/**
 * A torus of nodes in which a lattice of columns x rows is embedded, with the square roots of the
 * eigenvalues of a covariance on it.
 *
 * <p>The eigenvalues of the block circulant covariance matrix are the discrete Fourier transform of
 * its first row, and white complex noise times their roots, transformed, is a complex field whose
 * real and imaginary parts are two independent fields of that covariance (Dietrich & Newsam 1997;
 * Chan & Wood 1994). Negative eigenvalues are set to 0; the covariance then is too large by at most
 * their sum over the number of nodes, which it is at lag 0: {@link #clamped}.
 *
 * <p>The first transform goes along x for all rows of the torus, the second along y for the columns
 * of the lattice only. Immutable, shared by threads.
 */
final class Torus {
  private final int columns;
  private final int rows;
  private final RowTransform alongX;
  private final RowTransform alongY;

  /** [nodes along x][nodes along y] sqrt(eigenvalue / nodes). */
  private final double[][] amplitude;

  private final double clamped;

  /** The covariance of the nodes with node (0, 0). */
  @FunctionalInterface
  interface FirstRow {
    /** Covariances [nodes along y] at {@code i} nodes along x. */
    void fill(int i, double[] covariance);
  }

  /** Two rooms of complex rows; scratch memory of one thread. */
  static final class Scratch {
    private final double[][][] first;
    private final double[][][] second;

    Scratch(Torus torus) {
      first = new double[2][torus.alongX.length()][torus.alongY.length()];
      second = new double[2][torus.alongY.length()][torus.columns];
    }
  }

  /**
   * @param columns of the lattice
   * @param rows of the lattice
   * @param nodesX of the torus, a product of 2, 3 and 5
   * @param nodesY of the torus, a product of 2, 3 and 5
   * @param mirrored whether the covariance is the same for i and nodesX - i, which saves half of it
   */
  Torus(int columns, int rows, int nodesX, int nodesY, boolean mirrored, FirstRow covariance) {
    this.columns = columns;
    this.rows = rows;
    this.alongX = new RowTransform(nodesX);
    this.alongY = new RowTransform(nodesY);
    this.amplitude = new double[nodesX][nodesY];
    this.clamped = eigenvalues(mirrored, covariance);
  }

  /** Sum of the negative eigenvalues over the number of nodes, value²: the largest error. */
  double clamped() {
    return clamped;
  }

  int nodesX() {
    return alongX.length();
  }

  int nodesY() {
    return alongY.length();
  }

  int nodes() {
    return alongX.length() * alongY.length();
  }

  /** Fills the amplitudes; returns what was clamped. */
  private double eigenvalues(boolean mirrored, FirstRow covariance) {
    int nx = alongX.length();
    int ny = alongY.length();
    double[][] re = new double[nx][ny];
    double[][] im = new double[nx][ny];
    for (int i = 0; i < nx; i++) {
      if (mirrored && 2 * i > nx) {
        System.arraycopy(re[nx - i], 0, re[i], 0, ny);
      } else {
        covariance.fill(i, re[i]);
      }
    }
    alongX.forward(re, im, ny);
    double[][] turnedRe = new double[ny][nx];
    double[][] turnedIm = new double[ny][nx];
    transpose(re, alongX, nx, ny, turnedRe);
    transpose(im, alongX, nx, ny, turnedIm);
    alongY.forward(turnedRe, turnedIm, nx);
    double negative = 0;
    double perNode = 1.0 / nodes();
    for (int j = 0; j < ny; j++) {
      double[] row = turnedRe[alongY.place(j)];
      for (int i = 0; i < nx; i++) {
        negative -= Math.min(0, row[i]);
        amplitude[i][j] = Math.sqrt(Math.max(0, row[i]) * perNode);
      }
    }
    return negative * perNode;
  }

  /** Two independent fields on the lattice, row by row. */
  void drawPair(NormalStream normals, Scratch scratch, double[] one, double[] other) {
    int nx = alongX.length();
    int ny = alongY.length();
    double[][] re = scratch.first[0];
    double[][] im = scratch.first[1];
    for (int i = 0; i < nx; i++) {
      normals.fill(amplitude[i], ny, re[i]);
      normals.fill(amplitude[i], ny, im[i]);
    }
    alongX.forward(re, im, ny);
    double[][] turnedRe = scratch.second[0];
    double[][] turnedIm = scratch.second[1];
    transpose(re, alongX, columns, ny, turnedRe);
    transpose(im, alongX, columns, ny, turnedIm);
    alongY.forward(turnedRe, turnedIm, columns);
    for (int row = 0; row < rows; row++) {
      int from = alongY.place(row);
      System.arraycopy(turnedRe[from], 0, one, row * columns, columns);
      System.arraycopy(turnedIm[from], 0, other, row * columns, columns);
    }
  }

  private static final int TILE = 16;

  /** into[j][i] = from[place(i)][j] for the first {@code outputs} outputs. */
  private static void transpose(
      double[][] from, RowTransform transform, int outputs, int width, double[][] into) {
    for (int first = 0; first < outputs; first += TILE) {
      int end = Math.min(first + TILE, outputs);
      for (int left = 0; left < width; left += TILE) {
        int right = Math.min(left + TILE, width);
        for (int i = first; i < end; i++) {
          double[] row = from[transform.place(i)];
          for (int j = left; j < right; j++) {
            into[j][i] = row[j];
          }
        }
      }
    }
  }
}
