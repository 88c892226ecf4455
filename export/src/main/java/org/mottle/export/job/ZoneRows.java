package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.Zone;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** Zones and iso lines of a map. */
final class ZoneRows {

  private ZoneRows() {}

  static List<FeatureRow> zones(Outcome.Mapped map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Zone zone : map.parts().zones()) {
      Map<String, Object> row = MapLayers.named(map.subject());
      MapLayers.putBand(row, map.subject().band());
      row.put("cls", zone.cls().code());
      row.put("cls_no", zone.cls().number());
      row.put("p_cls", zone.probability());
      row.put("area_m2", zone.areaM2());
      row.put("area_lo", zone.areaLow());
      row.put("area_hi", zone.areaHigh());
      row.put("vwc_mean", zone.mean());
      row.put("vwc_sd", zone.sd());
      row.put("method", map.basis().method().label());
      row.put("standing", map.standing().code());
      rows.add(Layers.ZONE.row(zone.geometry(), row));
    }
    return rows;
  }

  static List<FeatureRow> isoLines(Outcome.Mapped map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (IsoLine line : map.parts().isoLines()) {
      Map<String, Object> row = MapLayers.named(map.subject());
      row.put("level_pct", line.level());
      row.put("length_m", line.geometry().getLength());
      rows.add(Layers.ISO.row(line.geometry(), row));
    }
    return rows;
  }
}
