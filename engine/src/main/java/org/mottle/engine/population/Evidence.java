package org.mottle.engine.population;

import java.util.Optional;

/**
 * The figures behind the answer.
 *
 * @param stations stations in all surveys together
 * @param deltaBic Bayesian information criterion of one normal (a mean for each survey, one
 *     variance) minus that of the mixture, BIC = k log n - 2 log L; NaN without a mixture
 * @param separation difference of the means in standard deviations within a population, the mean of
 *     the surveys by their number of stations; NaN without a mixture
 * @param smallerShare share of the smaller population among the stations; NaN without a mixture
 * @param mixture the best mixture, where one was fitted
 */
public record Evidence(
    int stations,
    double deltaBic,
    double separation,
    double smallerShare,
    Optional<Mixture> mixture) {

  static Evidence withoutMixture(int stations) {
    return new Evidence(stations, Double.NaN, Double.NaN, Double.NaN, Optional.empty());
  }
}
