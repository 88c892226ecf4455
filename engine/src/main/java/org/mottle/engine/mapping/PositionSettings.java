package org.mottle.engine.mapping;

import org.mottle.engine.check.Check;

/**
 * What is known of positions beyond what the readings say of themselves.
 *
 * @param jitterM standard error per axis of a reading's own position, m; NaN: what the reading
 *     says, or what is usual for the source of its position
 * @param shiftM standard error per axis of the shift common to the visit of a green, m; NaN: what
 *     is usual for the source
 */
public record PositionSettings(double jitterM, double shiftM) {
  /** What the readings say. */
  public static final PositionSettings RECORDED = new PositionSettings(Double.NaN, Double.NaN);

  /** A position worse than this, m, is none on a green. */
  public static final double MOST_M = 100;

  public PositionSettings {
    if (!Double.isNaN(jitterM)) {
      Check.within("standard error of a position", jitterM, 0, MOST_M, "m");
    }
    if (!Double.isNaN(shiftM)) {
      Check.within("standard error of the common shift", shiftM, 0, MOST_M, "m");
    }
  }
}
