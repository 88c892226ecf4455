package org.mottle.export.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.LayerData;
import org.mottle.export.settings.SettingsReader;

/** The figures of a run for {@code summary.json}, under the names of the fields. */
final class MapFigures {

  private MapFigures() {}

  static Map<String, Object> of(SurveyMap map, List<LayerData> layers, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("greens_asked", map.outcomes().size());
    figures.put("greens_mapped", map.mapped());
    figures.put(
        "not_mapped",
        map.outcomes().stream()
            .filter(Outcome.NoMap.class::isInstance)
            .map(o -> notMapped((Outcome.NoMap) o))
            .toList());
    figures.put("told", told);
    for (LayerData layer : layers) {
      switch (layer.layer().name()) {
        case "survey", "even", "vgm", "zone", "patch" ->
            figures.put(layer.layer().name(), rows(layer));
        default -> {}
      }
    }
    return figures;
  }

  private static Map<String, Object> notMapped(Outcome.NoMap none) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("green_id", none.subject().green().id());
    one.put("surv_id", none.subject().surveyId());
    one.put("reason", none.why().reason());
    one.put("remedy", none.why().remedy());
    return one;
  }

  private static List<Map<String, Object>> rows(LayerData data) {
    List<Map<String, Object>> rows = new ArrayList<>();
    List<Field> fields = data.layer().fields();
    for (FeatureRow row : data.rows()) {
      Map<String, Object> one = new LinkedHashMap<>();
      for (int i = 0; i < fields.size(); i++) {
        if (row.value(i) != null) {
          one.put(fields.get(i).name(), row.value(i));
        }
      }
      rows.add(one);
    }
    return rows;
  }

  /** The settings in force, for the record. */
  static Map<String, Object> parameters(MapRequest request) {
    MappingSettings m = request.site().mapping();
    Map<String, Object> p = new LinkedHashMap<>();
    p.put("method", m.method().label());
    p.put("cell_m", m.cellM());
    p.put("iso_step_pct", m.isoStepPct());
    p.put("measurement_sd_pct", m.measurementSdPct());
    p.put("duplicates", SettingsReader.label(m.duplicates()));
    p.put("variogram_pool", m.variogram().pooling().label());
    p.put("variogram_model", m.variogram().model().orElse("auto"));
    p.put("variogram_cutoff_m", m.variogram().cutoffM());
    p.put("variogram_lag_m", m.variogram().lagM());
    p.put("variogram_estimator", SettingsReader.label(m.variogram().estimator()));
    p.put("variogram_weights", SettingsReader.label(m.variogram().weighting()));
    p.put("needed_map", m.needed().map());
    p.put("needed_full", m.needed().full());
    p.put("needed_own_variogram", m.needed().ownVariogram());
    p.put("needed_pairs", m.needed().pairs());
    p.put("columns", request.site().columns());
    p.put("survey", request.inputs().survey().orElse("all"));
    p.put("unit", SettingsReader.label(request.site().unit()));
    return p;
  }
}
