package org.mottle.export.season;

import java.util.HashMap;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.season.Answer;
import org.mottle.engine.season.BeforeAfter;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.Season;
import org.mottle.engine.survey.Refusal;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/**
 * Before and after a repair on one green.
 *
 * @param greenId the green
 * @param asked what was asked
 * @param result what came of it, or why it cannot be said
 */
record Repaired(String greenId, SeasonRequest.Repair asked, Answer<BeforeAfter> result) {

  static Repaired of(
      Season season,
      String green,
      Geometry area,
      SeasonRequest.Repair asked,
      double changeLimitPct,
      int threads,
      Progress progress) {
    Answer<Change> change =
        season.change(green, asked.before(), asked.after(), changeLimitPct, threads, progress);
    if (change.value().isEmpty()) {
      return new Repaired(green, asked, Answer.refused(change.refusal().orElseThrow()));
    }
    Geometry rest = change.value().get().outline().difference(area);
    return new Repaired(
        green,
        asked,
        BeforeAfter.of(
            change.value().get(),
            area,
            rest,
            asked.wetter() ? BeforeAfter.Wanted.WETTER : BeforeAfter.Wanted.DRIER));
  }

  String line() {
    return "green "
        + greenId
        + ", "
        + asked.before()
        + " to "
        + asked.after()
        + ": "
        + result
            .value()
            .map(BeforeAfter::words)
            .orElseGet(
                () -> "cannot be said: " + result.refusal().map(Refusal::toString).orElse(""));
  }

  FeatureRow row() {
    Map<String, Object> row = new HashMap<>();
    row.put("green_id", greenId);
    row.put("surv_a", asked.before());
    row.put("surv_b", asked.after());
    row.put("wanted", asked.wetter() ? "wetter" : "drier");
    result
        .value()
        .ifPresent(
            r -> {
              Interval effect = r.effect().interval();
              row.put("effect", effect.best());
              row.put("effect_lo", effect.low());
              row.put("effect_hi", effect.high());
              row.put("p_improved", r.pImproved());
              row.put("words", r.words());
            });
    result.refusal().ifPresent(r -> row.put("why_not", r.toString()));
    return Layers.REPAIR.row(row);
  }
}
