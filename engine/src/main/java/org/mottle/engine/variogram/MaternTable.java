package org.mottle.engine.variogram;

import java.util.function.DoubleUnaryOperator;

/**
 * The Matérn of one kappa with sill and range 1 as polynomials of the squared lag, for inner loops:
 * each power of two of the squared lag is cut into four pieces, and each piece interpolated in its
 * Chebyshev nodes. The function is analytic away from 0, so twelve nodes a piece leave an error
 * below 1e-13 of the sill. Squared lags below 2^-24 or from 2^13 on are computed directly. Costs
 * some 1,800 evaluations to make, about twelve multiplications to use. Immutable.
 */
final class MaternTable {
  private static final int LOWEST = -24;
  private static final int HIGHEST = 13;
  private static final int CUT_BITS = 2;
  private static final int NODES = 12;
  private static final int MANTISSA = 52;
  private static final long FIRST = (long) (1023 + LOWEST) << CUT_BITS;
  private static final int PIECES = (HIGHEST - LOWEST) << CUT_BITS;

  private final double[] coefficients = new double[PIECES * NODES];
  private final DoubleUnaryOperator exact;

  /**
   * @param exact share of the sill at a lag
   */
  MaternTable(DoubleUnaryOperator exact) {
    this.exact = exact;
    for (int piece = 0; piece < PIECES; piece++) {
      double from = start(piece);
      double width = start(piece + 1) - from;
      double[] node = new double[NODES];
      double[] value = new double[NODES];
      for (int k = 0; k < NODES; k++) {
        node[k] = Math.cos(Math.PI * (k + 0.5) / NODES);
        value[k] = exact.applyAsDouble(Math.sqrt(from + width * (1 + node[k]) / 2));
      }
      System.arraycopy(monomials(node, value), 0, coefficients, piece * NODES, NODES);
    }
  }

  /** Share of the sill at a squared lag (the lag in ranges). */
  double at(double squared) {
    long bits = Double.doubleToRawLongBits(squared);
    long piece = (bits >>> (MANTISSA - CUT_BITS)) - FIRST;
    if (piece < 0 || piece >= PIECES) {
      return exact.applyAsDouble(Math.sqrt(squared));
    }
    // the bits below the piece's make a number in [1, 2), and that one in [-1, 1)
    long rest = (bits << (64 - MANTISSA + CUT_BITS)) >>> (64 - MANTISSA);
    double t = 2 * Double.longBitsToDouble((1023L << MANTISSA) | rest) - 3;
    int c = (int) piece * NODES;
    double sum = coefficients[c];
    for (int k = 1; k < NODES; k++) {
      sum = sum * t + coefficients[c + k];
    }
    return sum;
  }

  private static double start(int piece) {
    return Double.longBitsToDouble((FIRST + piece) << (MANTISSA - CUT_BITS));
  }

  /** Coefficients, highest power first, of the polynomial through the nodes. */
  private static double[] monomials(double[] node, double[] value) {
    double[] divided = value.clone();
    for (int level = 1; level < NODES; level++) {
      for (int k = NODES - 1; k >= level; k--) {
        divided[k] = (divided[k] - divided[k - 1]) / (node[k] - node[k - level]);
      }
    }
    double[] ascending = new double[NODES];
    for (int k = NODES - 1; k >= 0; k--) {
      for (int p = NODES - 1; p > 0; p--) {
        ascending[p] = ascending[p - 1] - node[k] * ascending[p];
      }
      ascending[0] = divided[k] - node[k] * ascending[0];
    }
    double[] descending = new double[NODES];
    for (int p = 0; p < NODES; p++) {
      descending[p] = ascending[NODES - 1 - p];
    }
    return descending;
  }
}
