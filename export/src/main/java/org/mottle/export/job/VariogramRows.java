package org.mottle.export.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.likelihood.NotPooled;
import org.mottle.engine.likelihood.PooledVariogram;
import org.mottle.engine.likelihood.PooledVariogram.Score;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.VariogramModel;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** One row a pool and survey, also where there is no variogram, with the reason. */
final class VariogramRows {

  private VariogramRows() {}

  static List<FeatureRow> of(SurveyMap map) {
    List<FeatureRow> rows = new ArrayList<>();
    for (MapVariogram variogram : map.variograms()) {
      for (String survey : variogram.surveys()) {
        rows.add(row(variogram, survey, map));
      }
    }
    return rows;
  }

  private static FeatureRow row(MapVariogram variogram, String survey, SurveyMap map) {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", variogram.greens().size() == 1 ? variogram.greens().get(0) : null);
    row.put("surv_id", survey);
    row.put("pooled_of", String.join(" ", variogram.greens()));
    row.put("pooled_in", String.join(" ", variogram.surveys()));
    row.put("n_stat", variogram.stations());
    row.put("n_pairs", variogram.pairs());
    if (variogram.outcome() instanceof NotPooled not) {
      row.put("note", not.reason() + "; " + not.remedy());
    } else {
      PooledVariogram pooled = variogram.pooled().orElseThrow();
      putEvidence(row, pooled);
      putNugget(row, pooled, map.settings().measurementSdPct());
      // a survey of which no green had pairs has no sill of its own
      if (pooled.surveys().contains(survey)) {
        putStructure(row, pooled, survey);
      }
      CalibrationFigures.of(
              map.maps().stream()
                  .filter(m -> m.subject().surveyId().equals(survey))
                  .filter(m -> m.basis().variogram().filter(v -> v == variogram).isPresent())
                  .toList())
          .ifPresent(
              c -> {
                CalibrationFigures.put(row, c);
                row.put("cv_me", c.scores().meanError());
                row.put("cv_rmse", c.scores().rootMeanSquareError());
              });
    }
    return Layers.VGM.row(row);
  }

  private static void putEvidence(Map<String, Object> row, PooledVariogram pooled) {
    PooledVariogram.Evidence evidence = pooled.evidence();
    row.put("n_stat", evidence.stations());
    row.put("n_close", evidence.closePairs());
    row.put("n_repl", evidence.replicates().degrees());
    row.put("deff", evidence.designEffect());
    row.put("gain", evidence.gain());
    row.put("borrowed", evidence.borrowed() ? 1 : 0);
    row.put("weights", weights(pooled.scores()));
    row.put("fit", "restricted maximum likelihood");
    row.put("note", String.join("; ", pooled.notes()));
  }

  private static String weights(List<Score> scores) {
    return scores.stream()
        .map(
            s ->
                String.format(
                    Locale.ROOT,
                    "%s %.2f (AICc %.1f)",
                    s.candidate().label(),
                    s.weight(),
                    s.aicc()))
        .collect(Collectors.joining(", "));
  }

  /** The part of the measurement by settings, else by the replicates, else it is not known. */
  private static void putNugget(Map<String, Object> row, PooledVariogram pooled, double probeSd) {
    Interval nugget = pooled.parameters().nugget();
    put(row, "c0", nugget);
    put(row, "share", pooled.parameters().nuggetShare());
    Optional<Double> measured =
        Double.isNaN(probeSd) ? pooled.insertionVariance() : Optional.of(probeSd * probeSd);
    measured
        .map(v -> Math.min(v, nugget.best()))
        .ifPresent(
            v -> {
              row.put("s2_err", v);
              row.put("c0_micro", nugget.best() - v);
            });
  }

  private static void putStructure(Map<String, Object> row, PooledVariogram pooled, String survey) {
    VariogramModel structure = pooled.model(survey).structures().get(0).model();
    row.put("model", structure.type());
    row.put("kappa", structure instanceof Matern m ? m.kappa() : null);
    row.put("range_m", structure.range());
    Interval practical = pooled.parameters().practicalRange();
    row.put("prac_m", practical.best());
    row.put("prac_lo", practical.low());
    row.put("prac_hi", practical.high());
    put(row, "psill", pooled.parameters().sills().get(survey));
    row.put("sill", pooled.model(survey).sill());
  }

  private static void put(Map<String, Object> row, String name, Interval interval) {
    row.put(name, interval.best());
    row.put(name + "_lo", interval.low());
    row.put(name + "_hi", interval.high());
  }

  /** The experimental variogram of every pool: what a picture of it is drawn from. */
  static List<Map<String, Object>> experimental(SurveyMap map) {
    List<Map<String, Object>> all = new ArrayList<>();
    for (MapVariogram variogram : map.variograms()) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("pooled_of", variogram.greens());
      one.put("pooled_in", variogram.surveys());
      List<Map<String, Object>> lags = new ArrayList<>();
      for (Lag lag : variogram.experimental().lags()) {
        Map<String, Object> entry = new LinkedHashMap<>();
        entry.put("pairs", lag.pairs());
        entry.put("distance", lag.distance());
        entry.put("semivariance", lag.semivariance());
        lags.add(entry);
      }
      one.put("lags", lags);
      all.add(one);
    }
    return all;
  }
}
