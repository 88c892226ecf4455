package org.mottle.engine.mapping;

import org.mottle.engine.check.Check;

/**
 * How much is drawn to say how sure a map is.
 *
 * @param realisations of the surface, split over the draws
 * @param draws of the variogram's parameters
 * @param seed of all randomness
 * @param nextStations places to read next that are proposed on each green; 0 for none
 * @param operatorSdPct standard error of what all readings of one operator have in common, % by
 *     volume
 */
public record UncertaintySettings(
    int realisations, int draws, long seed, int nextStations, double operatorSdPct) {

  /** More realisations or stations would be a slip of the keyboard. */
  public static final int MOST = 100_000;

  public UncertaintySettings {
    Check.atLeast("draws", draws, 1, "");
    Check.atLeast("realisations", realisations, draws, "");
    Check.atLeast("next stations", nextStations, 0, "");
    Check.atLeast("standard error of an operator", operatorSdPct, 0, "% by volume");
  }

  public static UncertaintySettings defaults() {
    return new UncertaintySettings(500, 25, 0, 6, 0);
  }

  public UncertaintySettings withRealisations(int number) {
    return new UncertaintySettings(
        number, Math.min(draws, number), seed, nextStations, operatorSdPct);
  }

  public UncertaintySettings withSeed(long newSeed) {
    return new UncertaintySettings(realisations, draws, newSeed, nextStations, operatorSdPct);
  }

  public UncertaintySettings withOperatorSdPct(double pct) {
    return new UncertaintySettings(realisations, draws, seed, nextStations, pct);
  }

  public UncertaintySettings withNextStations(int number) {
    return new UncertaintySettings(realisations, draws, seed, number, operatorSdPct);
  }
}
