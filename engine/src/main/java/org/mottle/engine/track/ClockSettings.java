package org.mottle.engine.track;

import org.mottle.engine.check.Check;

/**
 * How the clocks of logger and receiver are compared.
 *
 * @param searchS furthest offset that is looked for either way, s
 * @param snapS an offset within this of a whole number of hours is taken for that number, s
 * @param standS how long the probe is held still round a reading, s
 * @param outlineM beyond this distance from its green a reading counts as wholly misplaced, m
 * @param leastMet least share of the readings that must fall into the track, in (0, 1]
 */
public record ClockSettings(
    double searchS, double snapS, double standS, double outlineM, double leastMet) {

  public static final ClockSettings DEFAULT = new ClockSettings(7200, 6, 16, 6, 0.5);

  public ClockSettings {
    Check.within("furthest clock offset", searchS, 0, 86_400, "s");
    Check.atLeast("snap to whole hours", snapS, 0, "s");
    Check.within("time a probe is held still", standS, 2, 120, "s");
    Check.above("distance from the green", outlineM, 0, "m");
    Check.within("least share of readings in the track", leastMet, 0.01, 1, "");
  }
}
