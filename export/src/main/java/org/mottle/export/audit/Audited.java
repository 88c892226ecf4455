package org.mottle.export.audit;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.AuditSettings;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.export.read.Greens;
import org.mottle.export.read.Heads;

/**
 * What an audit found.
 *
 * @param areas one a green and run, in the order of the cans
 * @param coverage one a green with heads, in the order of the greens
 * @param greens as read
 * @param heads as read
 * @param settings how it was reckoned
 */
record Audited(
    List<AreaAudit> areas,
    List<HeadCoverage> coverage,
    Optional<Greens> greens,
    Optional<Heads> heads,
    AuditSettings settings) {
  Audited {
    areas = List.copyOf(areas);
    coverage = List.copyOf(coverage);
  }
}
