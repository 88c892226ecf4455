package org.mottle.engine.design;

import org.mottle.engine.check.Check;

/**
 * What goes into every plan.
 *
 * @param stations places of the design itself, without the close pairs
 * @param insetM least distance of a station from the outline, m
 * @param closePairs stations that get a partner close by, so that the nugget can be told
 * @param pairM distance of a partner, m
 * @param twice stations at which the probe is inserted twice
 * @param control whether a control station is added, re-read to see the ground dry
 * @param seed of whatever is random
 */
public record PlanSettings(
    int stations,
    double insetM,
    int closePairs,
    double pairM,
    int twice,
    boolean control,
    long seed) {

  public static final PlanSettings DEFAULT = new PlanSettings(16, 1.0, 2, 0.5, 3, true, 0);

  public PlanSettings {
    if (stations < 1 || closePairs < 0 || twice < 0) {
      throw new IllegalArgumentException(
          "a plan needs at least 1 station and no negative numbers, were %d stations, %d close pairs, %d read twice"
              .formatted(stations, closePairs, twice));
    }
    Check.atLeast("inset", insetM, 0, "m");
    Check.above("distance of a close pair", pairM, 0, "m");
  }

  public PlanSettings withStations(int newStations) {
    return new PlanSettings(newStations, insetM, closePairs, pairM, twice, control, seed);
  }
}
