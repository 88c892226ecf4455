package org.mottle.export.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.LayerData;

/** The figures of a run for {@code summary.json}, under the names of the fields. */
public final class MapFigures {

  private MapFigures() {}

  static Map<String, Object> of(SurveyMap map, List<LayerData> layers, List<String> told) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("greens_asked", map.outcomes().size());
    figures.put("greens_mapped", map.maps().size());
    figures.put("not_mapped", map.notMapped().stream().map(MapFigures::notMapped).toList());
    figures.put("told", told);
    for (LayerData layer : layers) {
      switch (layer.layer().name()) {
        case "survey",
            "even",
            "course",
            "vgm",
            "zone",
            "patch",
            "spot",
            "water",
            "sector",
            "nextst" ->
            figures.put(layer.layer().name(), rows(layer));
        default -> {}
      }
    }
    figures.put("variograms", VariogramRows.experimental(map));
    figures.put("calibration", CalibrationFigures.of(map));
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

  /** What a layer's rows hold, without what is not recorded. */
  public static List<Map<String, Object>> rows(LayerData data) {
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
}
