package org.mottle.export.job;

import java.util.Map;
import java.util.Optional;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.Rank;
import org.mottle.engine.evenness.Evenness;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.ReadingSummary;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Layers;

/** One row a green and survey: how even the readings and the ground are. */
final class EvenRows {

  private EvenRows() {}

  static FeatureRow of(GreenLook look) {
    Outcome outcome = look.outcome();
    Map<String, Object> row = MapLayers.named(outcome.subject());
    ReadingSummary s = outcome.summary();
    row.put("n", s.n());
    if (s.n() > 0) {
      row.put("mean", s.mean());
      row.put("sd", s.sd());
      row.put("cv_pct", s.coefficientOfVariation());
      row.put("iqr", s.interquartileRange());
    }
    look.mapped().ifPresent(map -> put(row, map));
    putLike(row, look);
    look.ranks().uneven().ifPresent(r -> put(row, r));
    return Layers.EVEN.row(row);
  }

  private static void put(Map<String, Object> row, Rank rank) {
    row.put("rank", rank.place());
    row.put("rank_lo", rank.first());
    row.put("rank_hi", rank.last());
    row.put("n_like", rank.of());
  }

  /** With which visits a green is compared, or why with none. */
  static void putLike(Map<String, Object> row, GreenLook look) {
    row.put("like_of", look.like().label());
    row.put("like_no", look.like().why());
  }

  private static void put(Map<String, Object> row, Outcome.Mapped map) {
    Evenness even = map.evenness();
    row.put("area_mean", map.parts().whole().mean());
    row.put("area_sd", map.parts().whole().sd());
    row.put("sd_med", map.surface().medianSd());
    put(row, "sd_corr", "sdc", even.sd());
    put(row, "cv_corr", "cvc", even.variationPct());
    put(row, "lq_moist", "lqm", even.lowQuarter());
    put(row, "lq_avail", "lqa", even.lowQuarterAvailable());
    put(row, "cu_moist", "cum", even.uniformityPct());
    putShares(row, map);
    if (map.subject().band().isPresent()) {
      Interval band = even.bandShare();
      row.put("band_pct", 100 - 100 * dryShare(map) - 100 * wetShare(map));
      row.put("band_lo", 100 * band.low());
      row.put("band_hi", 100 * band.high());
    }
  }

  /** Dry and wet share of the area with their intervals. */
  static void putShares(Map<String, Object> row, Outcome.Mapped map) {
    if (map.subject().band().isPresent()) {
      row.put("dry_pct", 100 * dryShare(map));
      row.put("dryp_lo", 100 * map.evenness().dryShare().low());
      row.put("dryp_hi", 100 * map.evenness().dryShare().high());
      row.put("wet_pct", 100 * wetShare(map));
      row.put("wetp_lo", 100 * map.evenness().wetShare().low());
      row.put("wetp_hi", 100 * map.evenness().wetShare().high());
    }
  }

  private static void put(Map<String, Object> row, String name, String ends, Interval figure) {
    row.put(name, figure.best());
    row.put(ends + "_lo", figure.low());
    row.put(ends + "_hi", figure.high());
  }

  private static double dryShare(Outcome.Mapped map) {
    return expected(map, ZoneClass.DRY).orElse(map.evenness().dryShare().best());
  }

  private static double wetShare(Outcome.Mapped map) {
    return expected(map, ZoneClass.WET).orElse(map.evenness().wetShare().best());
  }

  /** From the probabilities themselves, which have no noise of realisations. */
  private static Optional<Double> expected(Outcome.Mapped map, ZoneClass kind) {
    return map.parts().marks().stream()
        .flatMap(marks -> marks.expected().stream())
        .filter(expected -> expected.kind() == kind)
        .map(ExpectedGround::areaM2)
        .map(area -> area / map.subject().green().areaM2())
        .findFirst();
  }
}
