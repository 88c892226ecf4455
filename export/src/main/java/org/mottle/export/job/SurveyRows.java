package org.mottle.export.job;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** One row a green and survey: what was read, how it was mapped, or why it was not. */
final class SurveyRows {

  private SurveyRows() {}

  static FeatureRow of(Outcome outcome) {
    List<Reading> readings = outcome.subject().readings();
    Map<String, Object> row = MapLayers.named(outcome.subject());
    List<String> times =
        readings.stream().map(r -> r.protocol().time()).filter(t -> !t.isEmpty()).sorted().toList();
    if (!times.isEmpty()) {
      row.put("t_start", times.get(0));
      row.put("t_end", times.get(times.size() - 1));
    }
    row.put("oper", words(readings, r -> r.protocol().operator()));
    row.put("probe", words(readings, r -> r.protocol().probe()));
    row.put("calib", words(readings, r -> r.protocol().calibration()));
    double[] rods =
        readings.stream()
            .mapToDouble(r -> r.protocol().rodMm())
            .filter(Double::isFinite)
            .distinct()
            .toArray();
    row.put("rod_mm", rods.length == 1 ? rods[0] : null);
    row.put("n_read", readings.size());
    MapLayers.putBand(row, outcome.subject().band());
    putAuthor(row, outcome.subject().band());
    row.put("reason", String.join("; ", Remarks.of(outcome)));
    if (outcome instanceof Outcome.Mapped map) {
      row.put("n_used", map.readingsUsed());
      row.put("method", map.basis().method().label());
      row.put("cell_m", map.surface().cells().grid().cell());
      row.put("standing", map.standing().code());
      SurveyCertainty.put(row, map);
    } else if (outcome instanceof Outcome.NoMap none) {
      row.put("n_used", 0);
      row.put("method", "none");
      row.put("standing", Standing.NONE.code());
      row.put("reason", reason(none));
      row.put("remedy", none.why().remedy());
    }
    return Layers.SURVEY.row(row);
  }

  private static void putAuthor(Map<String, Object> row, Optional<TargetBand> band) {
    band.ifPresent(
        b -> {
          row.put("band_by", b.by());
          row.put("band_on", b.on());
          row.put("band_prov", b.provisional());
        });
  }

  private static String reason(Outcome.NoMap none) {
    return none.remarks().isEmpty()
        ? none.why().reason()
        : none.why().reason() + "; " + String.join("; ", none.remarks());
  }

  private static String words(List<Reading> readings, Function<Reading, String> word) {
    return readings.stream()
        .map(word)
        .filter(w -> !w.isEmpty())
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }
}
