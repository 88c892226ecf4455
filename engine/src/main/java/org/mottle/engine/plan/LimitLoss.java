package org.mottle.engine.plan;

/**
 * Expected loss of calling a place above or below its limits, as a function of how much of its
 * variance further readings explain.
 *
 * <p>A place has error variance v and, for a limit t, the probability p = Φ((m - t) / √v) of lying
 * above it; the loss is p (1 - p), summed over the limits: the variance of what is to be called,
 * between a half and the whole of the chance min(p, 1 - p) that the better call is wrong. A reading
 * not yet taken will move the mean to m' ~ N(m, ρ v) and leave the variance (1 - ρ) v, so that p'
 * is random with E p' = p. Given m', two places of the same law are independent; before it their
 * standardised errors have correlation ρ. Hence E p'² = Φ₂(k, k; ρ) with k = (m - t) / √v, and
 * since Φ₂(k, k; ρ) = Φ(k) - 2 T(k, a) with a = √((1 - ρ) / (1 + ρ)) (Owen 1956, eq. 3.7 at equal
 * arguments), E p'(1 - p') = 2 T(k, a). It is p (1 - p) at ρ = 0, 0 at ρ = 1, and falls between.
 *
 * <p>Held as cubic Hermite pieces in a, nodes 1/16 apart, with exact derivatives; 2 T(k, ·) has
 * fourth derivatives below {@value #FOURTH_DERIVATIVE}, so a limit costs at most (1/16)⁴ / 384
 * times that: {@value #ERROR_BOUND} of probability. The pieces at the nodes are integrated by
 * four-point Gauss-Legendre quadrature, good to 1e-15.
 *
 * <p>A hundred and thirty exponentials a limit to make, 4 ns to read. Immutable.
 */
final class LimitLoss {
  static final int PIECES = 16;

  /** Of 2 T(k, a) in a, over all k and 0 ≤ a ≤ 1; 1.49 at k = 0, a = 0.33. */
  static final double FOURTH_DERIVATIVE = 1.5;

  /** Largest error of one limit, in probability. */
  static final double ERROR_BOUND = 6e-8;

  private static final double[] NODE = {-0.8611363115940526, -0.3399810435848563};
  private static final double[] WEIGHT = {0.3478548451374538, 0.6521451548625461};

  /** Four coefficients a piece, lowest power first, of the place within the piece, 0 to 1. */
  private final double[] coefficients = new double[4 * (PIECES + 1)];

  /**
   * @param value mean of the place
   * @param variance of its error, above 0
   * @param limits any number of them
   */
  LimitLoss(double value, double variance, double[] limits) {
    for (double limit : limits) {
      add((value - limit) * (value - limit) / variance / 2);
    }
  }

  private void add(double halfSquare) {
    double step = 1.0 / PIECES;
    double below = 0;
    double slopeBelow = step * slope(halfSquare, 0);
    for (int piece = 0; piece < PIECES; piece++) {
      double rise = rise(halfSquare, piece * step, step);
      double slopeAbove = step * slope(halfSquare, (piece + 1) * step);
      int at = 4 * piece;
      coefficients[at] += below;
      coefficients[at + 1] += slopeBelow;
      coefficients[at + 2] += 3 * rise - 2 * slopeBelow - slopeAbove;
      coefficients[at + 3] += slopeBelow + slopeAbove - 2 * rise;
      below += rise;
      slopeBelow = slopeAbove;
    }
    // a piece of no length, so that a = 1 needs no case of its own
    coefficients[4 * PIECES] += below;
  }

  /** d/da of 2 T(k, a), with k²/2 given. */
  private static double slope(double halfSquare, double a) {
    double s = 1 + a * a;
    return Math.exp(-halfSquare * s) / (Math.PI * s);
  }

  private static double rise(double halfSquare, double from, double step) {
    double sum = 0;
    for (int i = 0; i < NODE.length; i++) {
      double offset = NODE[i] / 2;
      sum +=
          WEIGHT[i]
              * (slope(halfSquare, from + step * (0.5 + offset))
                  + slope(halfSquare, from + step * (0.5 - offset)));
    }
    return sum * step / 2;
  }

  /** Loss now: sum over the limits of p (1 - p). */
  double atPresent() {
    return coefficients[4 * PIECES];
  }

  /** Expected loss once a share 0 ≤ ρ ≤ 1 of the variance is explained. */
  double expected(double explainedShare) {
    double a = PIECES * Math.sqrt(Math.max(0, 1 - explainedShare) / (1 + explainedShare));
    int piece = (int) a;
    double t = a - piece;
    double[] c = coefficients;
    int at = 4 * piece;
    return c[at] + t * (c[at + 1] + t * (c[at + 2] + t * c[at + 3]));
  }

  /**
   * Adds to every gain the drop of the expected loss times {@code area} that one more reading
   * brings.
   *
   * @param covariance [n] of the place with each possible reading
   * @param inverseVariance [n] 1 / variance of each possible reading, its own error included
   * @param explained variance explained so far
   * @param variance variance before any further reading
   * @param scratch [n] overwritten
   */
  void addGains(
      double[] covariance,
      double[] inverseVariance,
      double explained,
      double variance,
      double area,
      double[] scratch,
      double[] gain) {
    double present = expected(explained / variance);
    double inverse = 1 / variance;
    int n = gain.length;
    // two loops: the roots and quotients of the first become vector instructions
    for (int b = 0; b < n; b++) {
      double share = (explained + covariance[b] * covariance[b] * inverseVariance[b]) * inverse;
      scratch[b] = PIECES * Math.sqrt(Math.max(0, 1 - share) / (1 + share));
    }
    double[] c = coefficients;
    for (int b = 0; b < n; b++) {
      int piece = (int) scratch[b];
      double t = scratch[b] - piece;
      int at = 4 * piece;
      double later = c[at] + t * (c[at + 1] + t * (c[at + 2] + t * c[at + 3]));
      gain[b] += area * (present - later);
    }
  }
}
