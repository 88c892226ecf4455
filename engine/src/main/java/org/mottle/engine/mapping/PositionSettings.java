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

  public PositionSettings {
    if (!Double.isNaN(jitterM)) {
      Check.atLeast("standard error of a position", jitterM, 0, "m");
    }
    if (!Double.isNaN(shiftM)) {
      Check.atLeast("standard error of the common shift", shiftM, 0, "m");
    }
  }
}
