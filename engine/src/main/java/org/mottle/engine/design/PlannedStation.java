package org.mottle.engine.design;

import org.mottle.engine.check.Check;
import org.mottle.engine.survey.Reading;

/**
 * A place where the probe is to be put in.
 *
 * @param id as it stands on the card; unique in its plan
 * @param x east, m
 * @param y north, m
 * @param role why it is there
 * @param insertions how often to insert, each in a hole of its own; at least 1
 */
public record PlannedStation(String id, double x, double y, Reading.Role role, int insertions) {
  public PlannedStation {
    if (id == null || id.isBlank()) {
      throw new IllegalArgumentException("a station needs an id, was '" + id + "'");
    }
    Check.finite("x of station " + id, x, "m");
    Check.finite("y of station " + id, y, "m");
    if (insertions < 1) {
      throw new IllegalArgumentException(
          "station " + id + " needs at least 1 insertion, was " + insertions);
    }
  }
}
