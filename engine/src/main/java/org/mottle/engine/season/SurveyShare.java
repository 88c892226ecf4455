package org.mottle.engine.season;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.mottle.engine.check.Check;
import org.mottle.engine.interval.Interval;

/**
 * In what share of surveys something was so: k of n, both weighted, with the beta-binomial
 * posterior of the share under the prior beta(½, ½) (Jeffreys): beta(k + ½, n − k + ½). Between
 * surveys independence is assumed.
 *
 * @param held weight of the surveys in which it was so, k
 * @param weight weight of all, n
 */
public record SurveyShare(double held, double weight) {
  private static final double PRIOR = 0.5;

  public SurveyShare {
    Check.atLeast("weight", weight, 0, "surveys");
    Check.within("held", held, 0, weight, "surveys");
  }

  /**
   * k/n with the 5 % and 95 % quantiles of its posterior; as usual (Brown, Cai and DasGupta 2001)
   * the lower end is 0 when it was never so and the upper 1 when it always was. Not known without a
   * survey.
   */
  public Interval interval() {
    if (weight == 0) {
      return Interval.UNKNOWN;
    }
    BetaDistribution posterior = posterior();
    return new Interval(
        held == 0 ? 0 : posterior.inverseCumulativeProbability(Interval.TAIL),
        held / weight,
        held == weight ? 1 : posterior.inverseCumulativeProbability(1 - Interval.TAIL));
  }

  /**
   * Posterior probability that it is so in more than half of such surveys. At 0.95 or above the
   * lower end of the interval is at 0.5 or above. NaN without a survey.
   */
  public double chanceOfMoreThanHalf() {
    return weight == 0 ? Double.NaN : 1 - posterior().cumulativeProbability(0.5);
  }

  private BetaDistribution posterior() {
    return new BetaDistribution(null, held + PRIOR, weight - held + PRIOR);
  }
}
