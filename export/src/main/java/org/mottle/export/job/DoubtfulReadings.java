package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.review.ReviewSettings;
import org.mottle.engine.survey.Reading;

/**
 * Readings that no soil gives: a probe in air, or more water than there are pores. They are told,
 * not taken out: whoever surveyed decides, and the column may be no moisture. The limits are the
 * review's.
 */
final class DoubtfulReadings {
  private static final ReviewSettings LIMITS = ReviewSettings.DEFAULT;

  /** Where more are doubtful, the column is. */
  private static final double MOST_SHARE = 0.2;

  private DoubtfulReadings() {}

  static List<String> of(List<GreenSurvey> subjects, String source) {
    List<String> lines = new ArrayList<>();
    for (GreenSurvey subject : subjects) {
      if (subject.obstacle().isPresent()) {
        continue; // told with the reason why it is not mapped
      }
      double most = LIMITS.poresPct(subject.green().rootZone()) + LIMITS.overPoresPct();
      for (Reading r : subject.readings()) {
        if (r.quality().used() && r.pct() < LIMITS.airPct()) {
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
