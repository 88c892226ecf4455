package org.mottle.export.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.validation.Calibration;
import org.mottle.engine.validation.Reliability;
import org.mottle.engine.validation.Scores;

/**
 * Whether the maps are as sure as they say, in figures: each reading predicted from the others of
 * its green, for the fields of tables and for {@code summary.json}.
 */
final class CalibrationFigures {

  private CalibrationFigures() {}

  /** By survey, and all together. */
  static Map<String, Object> of(SurveyMap map) {
    List<Map<String, Object>> surveys = new ArrayList<>();
    for (String survey : map.maps().stream().map(m -> m.subject().surveyId()).distinct().toList()) {
      map.calibration(survey)
          .ifPresent(
              c -> {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("surv_id", survey);
                one.putAll(figures(c));
                surveys.add(one);
              });
    }
    Map<String, Object> all = new LinkedHashMap<>();
    all.put("surveys", surveys);
    map.calibration().ifPresent(c -> all.put("pooled", figures(c)));
    return all;
  }

  private static Map<String, Object> figures(Calibration c) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("n", c.scores().predictions());
    figures.put("coverage50", c.coverage50());
    figures.put("coverage90", c.scores().coverage());
    figures.put("msdr", c.scores().meanSquaredDeviationRatio());
    figures.put("median_z2", c.scores().medianSquaredZ());
    figures.put("dry", bins(c.dry()));
    figures.put("wet", bins(c.wet()));
    return figures;
  }

  private static List<Map<String, Object>> bins(Reliability reliability) {
    List<Map<String, Object>> bins = new ArrayList<>();
    for (Reliability.Bin bin : reliability.bins()) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("from", bin.from());
      one.put("to", bin.to());
      one.put("n", bin.predictions());
      one.put("stated", bin.stated());
      one.put("found", bin.found());
      bins.add(one);
    }
    return bins;
  }

  /** Of some of the maps; empty when none was kriged. */
  static Optional<Calibration> of(List<Outcome.Mapped> maps) {
    List<Calibration.Part> parts =
        maps.stream()
            .flatMap(
                m ->
                    m.basis().crossValidation().stream()
                        .map(p -> new Calibration.Part(p, m.subject().band())))
            .toList();
    return parts.isEmpty() ? Optional.empty() : Optional.of(Calibration.of(parts));
  }

  /** The fields that {@code survey} and {@code vgm} share. */
  static void put(Map<String, Object> row, Calibration c) {
    Scores scores = c.scores();
    row.put("cv_n", scores.predictions());
    row.put("cv_c50", c.coverage50());
    row.put("cv_c90", scores.coverage());
    row.put("cv_msdr", scores.meanSquaredDeviationRatio());
    row.put("cv_medz2", scores.medianSquaredZ());
  }
}
