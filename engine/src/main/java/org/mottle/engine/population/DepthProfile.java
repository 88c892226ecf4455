package org.mottle.engine.population;

import org.mottle.engine.interval.Interval;

/**
 * Interval of the difference between the two means by profile likelihood: the depths at which the
 * log-likelihood, the other parameters free, has dropped by half the 90 % point of chi-square with
 * one degree of freedom. Where it never drops so far the interval ends at nought, or at {@value
 * #REACH} standard deviations beyond the estimate. Some forty short fits.
 */
final class DepthProfile {
  /** Half of 2.7055, the 90 % point of chi-square with one degree of freedom. */
  private static final double DROP = 1.35277;

  private static final double REACH = 6;
  private static final int STEPS = 30;

  private final Expectation free;
  private final Mixture best;
  private final int survey;

  DepthProfile(Expectation free, Mixture best, int survey) {
    this.free = free;
    this.best = best;
    this.survey = survey;
  }

  Interval interval() {
    double estimate = best.depth(survey);
    double far = estimate + REACH * best.sigma();
    return new Interval(edge(estimate, 0), estimate, edge(estimate, far));
  }

  /** Bisection between the estimate, which is inside, and a far end, which may be too. */
  private double edge(double inside, double outside) {
    if (dropAt(outside) < DROP) {
      return outside;
    }
    double in = inside;
    double out = outside;
    for (int step = 0; step < STEPS; step++) {
      double middle = (in + out) / 2;
      if (dropAt(middle) < DROP) {
        in = middle;
      } else {
        out = middle;
      }
    }
    return (in + out) / 2;
  }

  private double dropAt(double depth) {
    Expectation held = free.holding(survey, depth);
    held.start(best);
    held.climb(400, 1e-8);
    return best.logLikelihood() - held.logLikelihood();
  }
}
