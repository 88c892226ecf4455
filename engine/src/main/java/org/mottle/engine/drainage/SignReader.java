package org.mottle.engine.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.apache.commons.math3.special.Erf;
import org.mottle.engine.check.Check;
import org.mottle.engine.drainage.Indicators.SeenWet;
import org.mottle.engine.survey.WaterHistory;

/**
 * Reads the signs from what is known of a place; what is not known gives no sign. The limits are
 * those of docs/drainage.md (proposals of this project, no source).
 */
final class SignReader {
  private static final double LATER_FROM_H = 48;
  private static final double LATER_TO_H = 120;
  private static final double SLOW_RATIO = 0.6;
  private static final double WELL_RATIO = 0.8;
  private static final double HOLLOW_MM = 10;
  private static final double HOLLOW_SHARE = 0.25;
  private static final double NEAR_M = 3;
  private static final double DEPTHS_DIFFER_PCT = 2;

  private final Indicators known;
  private final List<SeenSign> seen = new ArrayList<>();

  private SignReader(Indicators known) {
    this.known = known;
  }

  static List<SeenSign> read(Indicators known) {
    SignReader reader = new SignReader(known);
    reader.surveys();
    reader.drying();
    reader.terrain();
    reader.profile();
    reader.pipes();
    reader.chance(Sign.SHADED, known.shaded());
    return reader.seen;
  }

  private void surveys() {
    for (SeenWet s : known.surveys()) {
      if (!Double.isNaN(s.wet())) {
        Check.within("chance that the place is wet in " + s.surveyId(), s.wet(), 0, 1, "");
      }
    }
    List<SeenWet> rain =
        chosen(s -> s.history() == WaterHistory.AFTER_RAIN && !(s.hours() >= LATER_FROM_H));
    List<SeenWet> irrigated = chosen(s -> s.history() == WaterHistory.AFTER_IRRIGATION && !s.hot());
    mean(Sign.WET_AFTER_RAIN, rain);
    mean(
        Sign.WET_LATER,
        chosen(
            s ->
                !s.hot()
                    && (s.history() == WaterHistory.DRYING
                        || s.history() == WaterHistory.AFTER_RAIN)
                    && s.hours() >= LATER_FROM_H
                    && s.hours() <= LATER_TO_H));
    mean(Sign.WET_IN_HEAT, chosen(SeenWet::hot));
    List<SeenWet> all = chosen(s -> s.history() != WaterHistory.UNKNOWN);
    TreeSet<WaterHistory> histories = new TreeSet<>();
    all.forEach(s -> histories.add(s.history()));
    if (all.size() >= 3 && histories.size() >= 2) {
      SeenWet least = all.stream().min(Comparator.comparingDouble(SeenWet::wet)).orElseThrow();
      add(
          Sign.WET_ALWAYS,
          least.wet(),
          "%d surveys; least in %s".formatted(all.size(), words(List.of(least))));
    }
    if (!rain.isEmpty() && !irrigated.isEmpty()) {
      double chance = meanOf(irrigated) * (1 - meanOf(rain));
      List<SeenWet> both = new ArrayList<>(irrigated);
      both.addAll(rain);
      add(Sign.ONLY_IRRIGATED, chance, words(both));
    }
  }

  /** In the order of their names, so that the order given does not matter. */
  private List<SeenWet> chosen(Predicate<SeenWet> which) {
    return known.surveys().stream()
        .filter(s -> !Double.isNaN(s.wet()))
        .filter(which)
        .sorted(Comparator.comparing(SeenWet::surveyId))
        .toList();
  }

  private void mean(Sign sign, List<SeenWet> surveys) {
    if (!surveys.isEmpty()) {
      add(sign, meanOf(surveys), words(surveys));
    }
  }

  private static double meanOf(List<SeenWet> surveys) {
    return surveys.stream().mapToDouble(SeenWet::wet).average().orElseThrow();
  }

  private static String words(List<SeenWet> surveys) {
    StringBuilder words = new StringBuilder();
    for (SeenWet s : surveys) {
      words.append(words.isEmpty() ? "" : "; ").append(s.surveyId());
      if (!Double.isNaN(s.hours())) {
        words.append(String.format(Locale.ROOT, ", %.0f h after water", s.hours()));
      }
      words.append(String.format(Locale.ROOT, ": wet by a chance of %.2f", s.wet()));
    }
    return words.toString();
  }

  private void drying() {
    Indicators.Drying d = known.drying();
    if (known(d.ratio(), d.ratioSd())) {
      String figure =
          String.format(
              Locale.ROOT,
              "R = %.2f of what the turf draws, standard deviation %.2f",
              d.ratio(),
              d.ratioSd());
      add(Sign.DRIES_SLOWLY, above(SLOW_RATIO - d.ratio(), d.ratioSd()), figure);
      add(Sign.DRIES_WELL, above(d.ratio() - WELL_RATIO, d.ratioSd()), figure);
    }
    if (known(d.gapGrowthPct(), d.gapSdPct())) {
      add(
          Sign.GAP_GROWS,
          above(d.gapGrowthPct(), d.gapSdPct()),
          String.format(
              Locale.ROOT,
              "by %+.1f %% by volume, standard deviation %.1f",
              d.gapGrowthPct(),
              d.gapSdPct()));
    }
  }

  private void terrain() {
    Indicators.Hollow h = known.terrain().hollow();
    if (known(h.share(), h.fillMm()) && known(h.noiseMm(), 0)) {
      Check.within("share of the place in a hollow", h.share(), 0, 1, "");
      double deep = above(h.fillMm() - HOLLOW_MM, h.noiseMm());
      add(
          Sign.IN_HOLLOW,
          h.share() > 0 ? deep * Math.min(1, h.share() / HOLLOW_SHARE) : Math.min(deep, 0.5),
          String.format(
              Locale.ROOT,
              "%.0f mm deep, %.0f %% of the place, noise of the levels %.0f mm",
              h.fillMm(),
              100 * h.share(),
              h.noiseMm()));
    }
    Indicators.Gathering g = known.terrain().gathering();
    if (known(g.percentile(), g.pValue())) {
      Check.within("percentile of the wetness index", g.percentile(), 0, 1, "");
      Check.within("p value of the association", g.pValue(), 0, 1, "");
      add(
          Sign.WATER_GATHERS,
          gathers(g.percentile(), g.pValue()),
          String.format(
              Locale.ROOT,
              "wetness index higher than on %.0f %% of the green; wetter where it is higher, p ="
                  + " %.3f against realisations",
              100 * g.percentile(),
              g.pValue()));
    }
    Indicators.Setting s = known.terrain().setting();
    chance(Sign.UPHILL_EDGE, s.uphillEdge());
    chance(Sign.SURROUNDS_DRAIN_IN, s.surroundsDrainIn());
    chance(Sign.LOW_END, s.lowEnd());
  }

  /**
   * A p value is no probability: it is turned into the greatest evidence it can stand for, 1 / (−e
   * p ln p) for p below 1/e (Sellke, Bayarri and Berger 2001), none above; and it tells of this
   * place only as far as its index is high.
   */
  static double gathers(double percentile, double pValue) {
    if (percentile < 0.5) {
      return percentile;
    }
    double p = Math.max(pValue, 1e-6);
    double chance = p < 1 / Math.E ? 1 / (1 - Math.E * p * Math.log(p)) : 0.5;
    return 0.5 + (chance - 0.5) * (2 * percentile - 1);
  }

  private void profile() {
    Indicators.Profile p = known.profile();
    if (known(p.shortMinusLongPct(), p.sdPct())) {
      String figure =
          String.format(
              Locale.ROOT,
              "short rods minus long %+.1f %% by volume, standard deviation %.1f",
              p.shortMinusLongPct(),
              p.sdPct());
      add(Sign.TOP_WETTER, above(p.shortMinusLongPct() - DEPTHS_DIFFER_PCT, p.sdPct()), figure);
      add(Sign.DEEPER_WETTER, above(-p.shortMinusLongPct() - DEPTHS_DIFFER_PCT, p.sdPct()), figure);
    }
    chance(Sign.SLOW_INFILTRATION, p.slowInfiltration());
    chance(Sign.DIFFUSE, p.diffuse());
  }

  private void pipes() {
    Indicators.Pipes p = known.pipes();
    if (known(p.headM(), p.sdM())) {
      add(
          Sign.NEAR_HEAD,
          above(NEAR_M - p.headM(), p.sdM()),
          String.format(Locale.ROOT, "%.1f m, standard deviation %.1f m", p.headM(), p.sdM()));
    }
    chance(Sign.ALONG_DRAIN, p.alongDrain());
  }

  private void chance(Sign sign, double chance) {
    if (!Double.isNaN(chance)) {
      add(sign, chance, "");
    }
  }

  private void add(Sign sign, double chance, String figure) {
    seen.add(new SeenSign(sign, chance, figure));
  }

  private static boolean known(double value, double other) {
    return !Double.isNaN(value) && !Double.isNaN(other);
  }

  /** Chance that what was measured so far above a limit is above it. */
  private static double above(double by, double sd) {
    Check.atLeast("standard deviation", sd, 0, "");
    return sd == 0 ? 0.5 * (1 + Math.signum(by)) : 0.5 * Erf.erfc(-by / (sd * Math.sqrt(2)));
  }
}
