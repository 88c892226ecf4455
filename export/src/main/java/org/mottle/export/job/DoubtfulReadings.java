package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.survey.Reading;

/**
 * Readings that no soil gives: a probe in air, or more water than there are pores. They are told,
 * not taken out: whoever surveyed decides (common practice, no source).
 */
final class DoubtfulReadings {
  /** A probe in air reads about this or less, % by volume. */
  private static final double AIR_PCT = 1;

  /** Pore space of a soil for which none is recorded, % by volume. */
  private static final double PORES_PCT = 55;

  /** Allowance above the pore space, % by volume. */
  private static final double ALLOWANCE_PCT = 5;

  /** Where more are doubtful, the column is. */
  private static final double MOST_SHARE = 0.2;

  private DoubtfulReadings() {}

  static List<String> of(List<GreenSurvey> subjects, String source) {
    List<String> lines = new ArrayList<>();
    for (GreenSurvey subject : subjects) {
      if (subject.obstacle().isPresent()) {
        continue; // told with the reason why it is not mapped
      }
      double pores = subject.green().rootZone().porosityPct();
      double most = (Double.isNaN(pores) ? PORES_PCT : pores) + ALLOWANCE_PCT;
      for (Reading r : subject.readings()) {
        if (r.quality().used() && r.pct() < AIR_PCT) {
          lines.add(line(subject, source, r, "what a probe reads in air"));
        } else if (r.quality().used() && r.pct() > most) {
          lines.add(line(subject, source, r, "more water than the soil has pores"));
        }
      }
    }
    long all = subjects.stream().mapToLong(s -> s.readings().size()).sum();
    return lines.size() > MOST_SHARE * all
        ? List.of(
            String.format(
                Locale.ROOT,
                "%s: %d of %d values are none that a soil has; if the column is no moisture in per"
                    + " cent by volume, read every figure in its own unit",
                source,
                lines.size(),
                all))
        : lines;
  }

  private static String line(GreenSurvey subject, String source, Reading r, String why) {
    return String.format(
        Locale.ROOT,
        "%s, row %d (%s, station %s): %s %% is %s; mapped as it stands, set its column used to 0 to"
            + " leave it out",
        source,
        r.label().row(),
        subject.label(),
        r.label().stationId().isEmpty() ? "without name" : r.label().stationId(),
        r.pct(),
        why);
  }
}
