package org.mottle.export.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** What the moisture says of heads. */
final class SectorRows {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private SectorRows() {}

  static List<FeatureRow> of(List<HeadFinding> findings) {
    return findings.stream().map(SectorRows::of).toList();
  }

  private static FeatureRow of(HeadFinding f) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", f.greenId());
    row.put("surv_id", f.surveyId());
    row.put("head_id", f.head().id());
    row.put("stn", f.head().station());
    row.put("history", f.history().label());
    row.put("verdict", f.verdict().label());
    row.put("p_head", f.evidence().probability());
    row.put("p_comb", f.evidence().combined());
    row.put("effect_pct", f.evidence().effectPct());
    row.put("effect_sd", f.evidence().effectSd());
    row.put("p_ground", f.evidence().ground());
    row.put("p_spot", f.evidence().spot());
    row.put("rank", f.evidence().rank() == 0 ? null : f.evidence().rank());
    row.put("speaks_for", String.join("; ", f.words().speaksFor()));
    row.put("against", String.join("; ", f.words().against()));
    row.put("next_test", f.words().next());
    return Layers.SECTOR.row(FACTORY.createPoint(new Coordinate(f.head().x(), f.head().y())), row);
  }
}
