package org.mottle.engine.population;

import java.util.List;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.mottle.engine.interval.Interval;

/**
 * Share of the ground that belongs to the lower population.
 *
 * <p>The components of the mixture are held; the share is the fixed point of (sum of memberships +
 * 1/2) / (n + 1), the posterior mean under Jeffreys' prior, so that a share of nought is never
 * claimed from a few stations. The interval is that of a beta distribution with as many stations as
 * the largest survey has: the same ground read again brings no new ground.
 *
 * @param share estimate with its 90 % interval
 * @param stations stations it comes from, all surveys together
 * @param fromChosen whether every station was a point of interest: then the share is that of the
 *     stations and says little of the ground
 */
public record GroundShare(Interval share, int stations, boolean fromChosen) {
  private static final double START = 0.5;
  private static final int LIMIT = 1000;

  /** The same fixed point over the stations that are chosen, or over those that are not. */
  static double fixedPoint(Mixture mixture, List<StationValues> surveys, boolean chosen) {
    int n = count(surveys, chosen);
    double share = START;
    for (int step = 0; step < LIMIT; step++) {
      double sum = 0;
      for (int s = 0; s < surveys.size(); s++) {
        StationValues values = surveys.get(s);
        for (int i = 0; i < values.size(); i++) {
          if (values.chosen(i) == chosen) {
            sum += mixture.membership(s, values.value(i), share);
          }
        }
      }
      double next = (sum + 0.5) / (n + 1);
      boolean settled = Math.abs(next - share) < 1e-13;
      share = next;
      if (settled) {
        break;
      }
    }
    return share;
  }

  static int count(List<StationValues> surveys, boolean chosen) {
    return surveys.stream().mapToInt(s -> count(s, chosen)).sum();
  }

  private static int count(StationValues survey, boolean chosen) {
    int n = 0;
    for (int i = 0; i < survey.size(); i++) {
      n += survey.chosen(i) == chosen ? 1 : 0;
    }
    return n;
  }

  static GroundShare of(Mixture mixture, List<StationValues> surveys) {
    boolean onlyChosen = count(surveys, false) == 0;
    double share = fixedPoint(mixture, surveys, onlyChosen);
    int places = surveys.stream().mapToInt(s -> count(s, onlyChosen)).max().orElseThrow();
    double successes = share * (places + 1);
    BetaDistribution beta = new BetaDistribution(successes, places + 1 - successes);
    Interval interval =
        new Interval(
            beta.inverseCumulativeProbability(Interval.TAIL),
            share,
            beta.inverseCumulativeProbability(1 - Interval.TAIL));
    return new GroundShare(interval, count(surveys, onlyChosen), onlyChosen);
  }
}
