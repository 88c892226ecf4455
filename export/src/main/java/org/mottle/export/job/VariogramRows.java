package org.mottle.export.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyVariogram;
import org.mottle.engine.validation.Scores;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** One row a structure of each variogram; one row also where there is none, with the reason. */
final class VariogramRows {

  private VariogramRows() {}

  static List<FeatureRow> of(SurveyMap map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (SurveyVariogram variogram : map.variograms()) {
      rows(variogram, map, rows);
    }
    return rows;
  }

  private static void rows(SurveyVariogram variogram, SurveyMap map, List<FeatureRow> rows) {
    Map<String, Object> common = new HashMap<>();
    common.put("green_id", variogram.greens().size() == 1 ? variogram.greens().get(0) : null);
    common.put("surv_id", variogram.surveyId());
    common.put("pooled_of", String.join(" ", variogram.greens()));
    common.put("n_pairs", variogram.pairs());
    if (variogram.outcome() instanceof NotFitted not) {
      common.put("note", not.reason());
      rows.add(Layers.VGM.row(common));
      return;
    }
    Fitted fitted = (Fitted) variogram.outcome();
    common.put("note", String.join("; ", fitted.notes()));
    common.put("fit", "weighted least squares");
    common.put("wsse", fitted.weightedSse());
    common.put("sill", fitted.model().bounded() ? fitted.model().sill() : null);
    putNugget(common, fitted.model(), map);
    map.scores(variogram).ifPresent(scores -> putScores(common, scores));
    List<Structure> structures = fitted.model().structures();
    if (structures.isEmpty()) {
      common.put("struct_no", 0);
      rows.add(Layers.VGM.row(common));
    }
    for (int i = 0; i < structures.size(); i++) {
      rows.add(Layers.VGM.row(structure(common, structures.get(i), i + 1)));
    }
  }

  private static void putNugget(Map<String, Object> row, NestedModel model, SurveyMap map) {
    double probe = map.settings().measurementSdPct();
    if (Double.isNaN(probe)) {
      row.put("c0_micro", model.nugget());
    } else {
      double variance = Math.min(model.nugget(), probe * probe);
      row.put("c0_micro", model.nugget() - variance);
      row.put("s2_err", variance);
    }
  }

  private static void putScores(Map<String, Object> row, Scores scores) {
    row.put("cv_n", scores.predictions());
    row.put("cv_me", scores.meanError());
    row.put("cv_rmse", scores.rootMeanSquareError());
    row.put("cv_msdr", scores.meanSquaredDeviationRatio());
    row.put("cv_medz2", scores.medianSquaredZ());
  }

  private static Map<String, Object> structure(Map<String, Object> common, Structure s, int no) {
    Map<String, Object> row = new HashMap<>(common);
    row.put("struct_no", no);
    row.put("model", s.model().type());
    row.put("psill", s.model().partialSill());
    row.put("range_m", s.model().range());
    row.put("prac_m", s.model().practicalRange());
    row.put("kappa", s.model() instanceof Matern m ? m.kappa() : null);
    row.put("azimuth", s.anisotropy().major().degrees());
    row.put("ratio", s.anisotropy().ratio());
    return row;
  }
}
