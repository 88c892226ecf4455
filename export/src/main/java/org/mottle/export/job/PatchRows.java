package org.mottle.export.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.water.WaterWanted;
import org.mottle.engine.water.Watering;
import org.mottle.engine.water.WateringSettings;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.Layers;

/** The patches of a map, and their cores and envelopes as layers of their own. */
final class PatchRows {

  private PatchRows() {}

  static List<FeatureRow> patches(Outcome.Mapped map, WateringSettings settings) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Patch patch : map.parts().patches()) {
      Map<String, Object> row = named(map, patch);
      MapLayers.putBand(row, map.subject().band());
      row.put("area_m2", patch.areaM2());
      row.put("width_m", patch.widthM());
      row.put("vwc_mean", patch.mean());
      row.put("vwc_sd", patch.sd());
      row.put("n_st", patch.readings());
      row.put("mapbl", 1);
      row.put("method", map.basis().method().label());
      patch.likelihood().ifPresent(likelihood -> put(row, likelihood));
      if (map.watering() instanceof Watering.Wanted wanted) {
        wanted.patches().stream()
            .filter(p -> p.patch() == patch.number())
            .forEach(p -> put(row, p.wanted(), settings));
      }
      rows.add(Layers.PATCH.row(patch.geometry(), row));
    }
    return rows;
  }

  private static void put(Map<String, Object> row, Patch.Likelihood likelihood) {
    row.put("p_mean", likelihood.pMean());
    row.put("p_exist", likelihood.pExist());
    row.put("area_exp", likelihood.areaExpected());
    row.put("area_lo", likelihood.areaLow());
    row.put("area_hi", likelihood.areaHigh());
  }

  private static void put(Map<String, Object> row, WaterWanted water, WateringSettings settings) {
    row.put("def_mm", water.depthMm().best());
    row.put("def_lo", water.depthMm().low());
    row.put("def_hi", water.depthMm().high());
    WaterRows.put(row, water, settings.minutes(water.litres().best()));
  }

  /** A patch without ground that is sure enough has no core. */
  static List<FeatureRow> cores(Outcome.Mapped map) {
    return bounds(map, Layers.CORE, Patch.Bounds::core);
  }

  static List<FeatureRow> envelopes(Outcome.Mapped map) {
    return bounds(map, Layers.ENVEL, Patch.Bounds::envelope);
  }

  private static List<FeatureRow> bounds(
      Outcome.Mapped map, Layer layer, Function<Patch.Bounds, Geometry> bound) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Patch patch : map.parts().patches()) {
      patch
          .likelihood()
          .map(likelihood -> bound.apply(likelihood.bounds()))
          .filter(geometry -> !geometry.isEmpty())
          .ifPresent(
              geometry -> {
                Map<String, Object> row = named(map, patch);
                row.put("area_m2", geometry.getArea());
                rows.add(layer.row(geometry, row));
              });
    }
    return rows;
  }

  private static Map<String, Object> named(Outcome.Mapped map, Patch patch) {
    Map<String, Object> row = new HashMap<>(MapLayers.named(map.subject()));
    row.put("patch_id", map.subject().green().id() + "-" + patch.number());
    row.put("kind", patch.kind().code());
    return row;
  }
}
