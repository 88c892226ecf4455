package org.mottle.engine.position;

/**
 * Interpolation of a smooth function on one interval through its values in Chebyshev nodes: the
 * values become the coefficients of a polynomial in t, t from -1 to 1 over the interval. Twelve
 * nodes leave an error of about rho^-12 for a function that is analytic within the ellipse of
 * semi-axes adding up to rho half-widths (Trefethen 2013, Approximation Theory and Approximation
 * Practice, ch. 8).
 */
final class ChebyshevPiece {
  static final int NODES = 12;

  private static final double[] NODE = nodes();

  /** [k][p]: what the value in node k adds to the coefficient of power p. */
  private static final double[][] POWERS = powers();

  private ChebyshevPiece() {}

  /** Node {@code k} of the interval with this middle and half-width. */
  static double node(int k, double middle, double half) {
    return middle + half * NODE[k];
  }

  /**
   * @param value the values in the nodes are at [from, from + NODES)
   * @param coefficient lowest power first, written at [from, from + NODES)
   */
  static void fit(double[] value, int from, double[] coefficient) {
    double[] fitted = new double[NODES];
    for (int k = 0; k < NODES; k++) {
      double v = value[from + k];
      for (int p = 0; p < NODES; p++) {
        fitted[p] += v * POWERS[k][p];
      }
    }
    System.arraycopy(fitted, 0, coefficient, from, NODES);
  }

  /** The polynomial at t; even and odd powers apart, so that the two chains overlap. */
  static double at(double[] c, int from, double t) {
    double q = t * t;
    double even = c[from + NODES - 2];
    double odd = c[from + NODES - 1];
    for (int p = NODES - 4; p >= 0; p -= 2) {
      even = even * q + c[from + p];
      odd = odd * q + c[from + p + 1];
    }
    return even + t * odd;
  }

  private static double[] nodes() {
    double[] node = new double[NODES];
    for (int k = 0; k < NODES; k++) {
      node[k] = Math.cos(Math.PI * (k + 0.5) / NODES);
    }
    return node;
  }

  /** The Lagrange polynomial of node k is 1/N + 2/N sum of T_m(node) T_m(t), m from 1. */
  private static double[][] powers() {
    double[][] powers = new double[NODES][NODES];
    double[] before = new double[NODES + 1];
    double[] polynomial = new double[NODES + 1];
    before[1] = 1;
    polynomial[0] = 1;
    for (int m = 0; m < NODES; m++) {
      for (int k = 0; k < NODES; k++) {
        double factor = (m == 0 ? 1.0 : 2.0) / NODES * Math.cos(m * Math.PI * (k + 0.5) / NODES);
        for (int p = 0; p < NODES; p++) {
          powers[k][p] += factor * polynomial[p];
        }
      }
      double[] next = new double[NODES + 1];
      for (int p = 0; p <= NODES; p++) {
        next[p] = (p > 0 ? 2 * polynomial[p - 1] : 0) - before[p];
      }
      before = polynomial;
      polynomial = next;
    }
    return powers;
  }
}
