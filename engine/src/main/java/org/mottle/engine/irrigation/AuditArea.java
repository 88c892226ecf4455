package org.mottle.engine.irrigation;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Green;

/**
 * The cans of one piece of ground and one run, with what is known of the ground.
 *
 * @param greenId empty when no can names one
 * @param run day or name of the run; empty when not recorded
 * @param cans one or more
 * @param green its outline; empty when not known
 * @param heads that water it; empty when not known
 */
public record AuditArea(
    String greenId, String run, List<CatchCan> cans, Optional<Green> green, List<Head> heads) {
  public AuditArea {
    cans = List.copyOf(cans);
    heads = List.copyOf(heads);
    if (cans.isEmpty()) {
      throw new IllegalArgumentException("an audit of " + greenId + " needs cans, was none");
    }
  }
}
