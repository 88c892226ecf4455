package org.mottle.engine.position;

/**
 * exp(-x) I0(x), I0 the modified Bessel function of the first kind, for x >= 0; within 1e-10.
 *
 * <p>Polynomials on [0, 1), [1, 2), [2, 4), [4, 8) and [8, 16), and beyond that one in 16/x over
 * sqrt(x), all made once from the integral 1/pi times that of exp(x (cos t - 1)), t from 0 to pi
 * (NIST Digital Library of Mathematical Functions, 10.32.1), by the trapezoidal rule, which
 * converges exponentially on a periodic integrand.
 */
final class ScaledBesselI0 {
  private static final double FAR = 16;
  private static final double[] MIDDLE = {0.5, 1.5, 3, 6, 12};
  private static final double[] PER_HALF = {2, 2, 1, 0.5, 0.25};
  private static final int TAIL = MIDDLE.length * ChebyshevPiece.NODES;
  private static final double[] COEFFICIENTS = coefficients();

  private ScaledBesselI0() {}

  static double at(double x) {
    if (x >= FAR) {
      return ChebyshevPiece.at(COEFFICIENTS, TAIL, 2 * FAR / x - 1) / Math.sqrt(x);
    }
    // the exponent of a number in [1, 16) is its piece less one
    int piece = x < 1 ? 0 : Math.getExponent(x) + 1;
    return ChebyshevPiece.at(
        COEFFICIENTS, piece * ChebyshevPiece.NODES, (x - MIDDLE[piece]) * PER_HALF[piece]);
  }

  private static double[] coefficients() {
    double[] all = new double[TAIL + ChebyshevPiece.NODES];
    for (int piece = 0; piece < MIDDLE.length; piece++) {
      int from = piece * ChebyshevPiece.NODES;
      for (int k = 0; k < ChebyshevPiece.NODES; k++) {
        all[from + k] = integral(ChebyshevPiece.node(k, MIDDLE[piece], 1 / PER_HALF[piece]));
      }
      ChebyshevPiece.fit(all, from, all);
    }
    for (int k = 0; k < ChebyshevPiece.NODES; k++) {
      double x = FAR / ChebyshevPiece.node(k, 0.5, 0.5);
      all[TAIL + k] = Math.sqrt(x) * integral(x);
    }
    ChebyshevPiece.fit(all, TAIL, all);
    return all;
  }

  /** Steps in proportion to the width of the peak at t = 0, 1/sqrt(x). */
  static double integral(double x) {
    int steps = 24 + (int) Math.ceil(12 * Math.sqrt(x));
    double sum = 0.5 * (1 + Math.exp(-2 * x));
    for (int k = 1; k < steps; k++) {
      sum += Math.exp(x * (Math.cos(Math.PI * k / steps) - 1));
    }
    return sum / steps;
  }
}
