package org.mottle.engine.irrigation;

import org.apache.commons.math3.special.Erf;

/**
 * What readings say of a pattern of unknown size b in their mean, y = X β + b f + error: with P the
 * generalised least squares projection, a = fᵀ P f and r = fᵀ P y, the likelihood of b relative to
 * that of 0 is exp(b r − b² a / 2), which is integrated over a prior of b in closed form.
 *
 * @param logBayes logarithm of the likelihood with the pattern over that without
 * @param mean of b when there is one
 * @param variance of it
 */
record ShiftEvidence(double logBayes, double mean, double variance) {
  private static final double HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

  /** b ~ N(0, sd²): with q = a + 1/sd² the ratio is exp(r²/2q) / (sd √q). */
  static ShiftEvidence eitherWay(double a, double r, double sd) {
    double q = a + 1 / (sd * sd);
    return new ShiftEvidence(r * r / (2 * q) - Math.log(sd * Math.sqrt(q)), r / q, 1 / q);
  }

  /** −b half-normal, b ≤ 0: twice that of both signs, times Φ(−r/√q). */
  static ShiftEvidence downwards(double a, double r, double sd) {
    ShiftEvidence both = eitherWay(a, r, sd);
    double spread = Math.sqrt(both.variance);
    double z = -both.mean / spread;
    double logPhi = logPhi(z);
    // of a normal cut at 0: the inverse Mills ratio
    double mills = Math.exp(-0.5 * z * z - HALF_LOG_TWO_PI - logPhi);
    return new ShiftEvidence(
        both.logBayes + Math.log(2) + logPhi,
        both.mean - spread * mills,
        both.variance * Math.max(0, 1 - z * mills - mills * mills));
  }

  /** ln Φ(z), by its asymptote far down. */
  static double logPhi(double z) {
    if (z > -30) {
      return Math.log(0.5 * Erf.erfc(-z / Math.sqrt(2)));
    }
    double w = 1 / (z * z);
    return -0.5 * z * z - HALF_LOG_TWO_PI - Math.log(-z) + Math.log1p(-w + 3 * w * w);
  }
}
