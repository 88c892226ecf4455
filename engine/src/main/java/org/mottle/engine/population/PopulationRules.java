package org.mottle.engine.population;

import org.mottle.engine.check.Check;

/**
 * What two populations must show before they are believed.
 *
 * @param leastDeltaBic Bayesian information criterion of one normal minus that of the mixture; must
 *     be exceeded (6: "strong" in Kass & Raftery 1995, J. Am. Stat. Assoc. 90:773-795)
 * @param leastSeparation difference of the means in standard deviations within a population; must
 *     be exceeded (below 2 the density of an even mixture has one mode)
 * @param leastShare share of the smaller population among the stations, at least
 * @param leastStations stations in all surveys together, at least
 */
public record PopulationRules(
    double leastDeltaBic, double leastSeparation, double leastShare, int leastStations) {

  /** 6, 2, 10 %, 16. */
  public static final PopulationRules DEFAULT = new PopulationRules(6, 2, 0.10, 16);

  public PopulationRules {
    Check.finite("least BIC difference", leastDeltaBic, "");
    Check.atLeast("least separation", leastSeparation, 0, "standard deviations");
    Check.within("least share", leastShare, 0, 0.5, "");
    Check.atLeast("least number of stations", leastStations, 4, "");
  }
}
