package org.mottle.engine.review;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * The logger's clock against the times on record: how far the readings of each visit lie outside
 * its window, and what one offset would put right for the whole survey. An offset near a whole hour
 * is named as such. Times are kept as logged: only differences within a survey enter any figure.
 */
final class ClockCheck {
  /** Watches differ by so much without harm, h. */
  private static final double SLACK_H = 5 / 60.0;

  /** An offset so near a whole hour is a time zone or summer time, h. */
  private static final double HOUR_SLACK_H = 10 / 60.0;

  private ClockCheck() {}

  /** The sheets of one survey; findings go to the list. */
  static void check(String surveyId, List<Sheet> sheets, List<Finding> findings) {
    List<Sheet> timed = sheets.stream().filter(ClockCheck::timed).toList();
    if (timed.isEmpty()) {
      return;
    }
    double[] offsets = timed.stream().mapToDouble(ClockCheck::offset).toArray();
    double typical = new Median().evaluate(offsets);
    if (Math.abs(typical) > SLACK_H) {
      double hours = Math.rint(typical);
      boolean whole = hours != 0 && Math.abs(typical - hours) < HOUR_SLACK_H;
      findings.add(
          new Finding(
              Rule.CLOCK,
              Severity.WARN,
              surveyId,
              "",
              List.of(),
              String.format(
                  Locale.ROOT,
                  "the logger's clock is about %s %s the times on record, on %d green%s%s",
                  span(typical),
                  typical > 0 ? "ahead of" : "behind",
                  timed.size(),
                  timed.size() == 1 ? "" : "s",
                  whole ? ": as with summer time or another time zone" : ""),
              "set the clock; say the offset when these times are matched with a track"));
    }
    for (int k = 0; k < offsets.length; k++) {
      if (Math.abs(offsets[k] - typical) > SLACK_H) {
        timed
            .get(k)
            .find(
                Rule.CLOCK,
                Severity.WARN,
                String.format(
                    Locale.ROOT,
                    "its readings lie %s %s the visit's times on record",
                    span(offsets[k]),
                    offsets[k] > 0 ? "after" : "before"),
                "check date, time and green of these rows");
      }
    }
  }

  private static boolean timed(Sheet sheet) {
    return !Double.isNaN(start(sheet)) && Arrays.stream(sheet.hour).anyMatch(h -> !Double.isNaN(h));
  }

  private static double start(Sheet sheet) {
    return sheet.visit.conditions().map(c -> Sheet.hour(c.visit().start())).orElse(Double.NaN);
  }

  /**
   * Median reading against the middle of the window, less what lies within the window: 0 where all
   * readings fit.
   */
  private static double offset(Sheet sheet) {
    double start = start(sheet);
    double recorded = sheet.visit.conditions().map(c -> Sheet.hour(c.visit().end())).orElseThrow();
    double end = Double.isNaN(recorded) ? start : recorded;
    double[] hours = Arrays.stream(sheet.hour).filter(h -> !Double.isNaN(h)).toArray();
    long fitting =
        Arrays.stream(hours).filter(h -> h >= start - SLACK_H && h <= end + SLACK_H).count();
    if (2 * fitting > hours.length) {
      return 0;
    }
    return new Median().evaluate(hours) - (start + end) / 2;
  }

  private static String span(double hours) {
    double minutes = Math.abs(60 * hours);
    return minutes < 90
        ? String.format(Locale.ROOT, "%.0f minutes", minutes)
        : minutes < 48 * 60
            ? String.format(Locale.ROOT, "%.1f hours", minutes / 60)
            : String.format(Locale.ROOT, "%.0f days", minutes / 1440);
  }
}
