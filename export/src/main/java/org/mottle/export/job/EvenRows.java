package org.mottle.export.job;

import java.util.Map;
import org.mottle.engine.mapping.Evenness;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.ReadingSummary;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** One row a green and survey: how even the readings and the surface are. */
final class EvenRows {

  private EvenRows() {}

  static FeatureRow of(Outcome outcome) {
    Map<String, Object> row = MapLayers.named(outcome.subject());
    ReadingSummary s = outcome.summary();
    row.put("n", s.n());
    if (s.n() > 0) {
      row.put("mean", s.mean());
      row.put("sd", s.sd());
      row.put("cv_pct", s.coefficientOfVariation());
      row.put("iqr", s.interquartileRange());
    }
    if (outcome instanceof Outcome.Mapped map) {
      row.put("area_mean", map.parts().whole().mean());
      row.put("area_sd", map.parts().whole().sd());
      row.put("sd_med", map.surface().medianSd());
      Evenness evenness = map.surface().evenness();
      row.put("lq_moist", evenness.lowQuarter());
      row.put("cu_moist", evenness.uniformityPct());
      if (map.subject().band().isPresent()) {
        double dry = share(map, ZoneClass.DRY);
        double wet = share(map, ZoneClass.WET);
        row.put("dry_pct", dry);
        row.put("band_pct", 100 - dry - wet);
        row.put("wet_pct", wet);
      }
    }
    return Layers.EVEN.row(row);
  }

  /** Per cent of the green: expected, or of the surface itself where there are no probabilities. */
  private static double share(Outcome.Mapped map, ZoneClass kind) {
    double area =
        map.parts().marks().stream()
            .flatMap(marks -> marks.expected().stream())
            .filter(expected -> expected.kind() == kind)
            .mapToDouble(ExpectedGround::areaM2)
            .findFirst()
            .orElseGet(() -> map.areaM2(kind));
    return 100 * area / map.subject().green().areaM2();
  }
}
