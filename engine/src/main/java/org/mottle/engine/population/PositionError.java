package org.mottle.engine.population;

import org.mottle.engine.check.Check;

/**
 * How well the places of one survey are known, standard errors on each axis.
 *
 * @param jitterSdM of each station by itself, m
 * @param shiftSdM of all stations of the survey alike, m
 */
public record PositionError(double jitterSdM, double shiftSdM) {
  public static final PositionError NONE = new PositionError(0, 0);

  public PositionError {
    Check.atLeast("jitter of the positions", jitterSdM, 0, "m");
    Check.atLeast("shift of the positions", shiftSdM, 0, "m");
  }

  /** Of the separation of two stations of the survey, m. */
  double betweenStations() {
    return Math.sqrt(2) * jitterSdM;
  }

  /** Of the separation of a station from a place on the ground, m. */
  double toGround() {
    return Math.hypot(jitterSdM, shiftSdM);
  }
}
