package org.mottle.engine.review;

import java.util.Arrays;
import java.util.Locale;

/**
 * What values by themselves give away: none a soil gives, fractions, a display that stood still.
 */
final class ValueChecks {
  /** So many alike in a row are doubtful: chance brings three about once in some hundred visits. */
  private static final int DOUBTFUL_RUN = 3;

  /** So many alike in a row are a display that stands still. */
  private static final int STUCK_RUN = 4;

  /** No one walks, inserts and reads faster, s. */
  private static final double FASTEST_S = 4;

  private final ReviewSettings settings;

  ValueChecks(ReviewSettings settings) {
    this.settings = settings;
  }

  void check(Sheet sheet) {
    units(sheet);
    if (sheet.mappable()) {
      range(sheet);
      stuck(sheet);
      fast(sheet);
    }
  }

  private void units(Sheet sheet) {
    if (!settings.unitSaid()) {
      Fractions.refusal(Arrays.stream(sheet.counting()).mapToDouble(i -> sheet.pct[i]).toArray())
          .ifPresent(why -> sheet.find(Rule.UNITS, Severity.REJECT, why.reason(), why.remedy()));
    }
  }

  private void range(Sheet sheet) {
    double pores = settings.poresPct(sheet.visit.green().rootZone());
    for (int i : sheet.counting()) {
      double v = sheet.pct[i];
      boolean air = v < settings.airPct();
      if (air || v > pores + settings.overPoresPct()) {
        String why =
            air
                ? "what a probe reads in air"
                : String.format(Locale.ROOT, "more water than the soil has pores (%.0f %%)", pores);
        sheet.find(
            Rule.RANGE,
            Severity.REJECT,
            new int[] {i},
            String.format(Locale.ROOT, "%s: %.1f %% is %s", sheet.name(i), v, why),
            "read the station again, rods fully in the soil; the value stays in the file, not used");
      }
    }
  }

  private static void stuck(Sheet sheet) {
    int[] rows = sheet.inTime();
    int from = 0;
    for (int k = 1; k <= rows.length; k++) {
      if (k < rows.length && sheet.pct[rows[k]] == sheet.pct[rows[from]]) {
        continue;
      }
      int[] run = Arrays.copyOfRange(rows, from, k);
      if (run.length >= DOUBTFUL_RUN) {
        sheet.find(
            Rule.STUCK,
            run.length >= STUCK_RUN ? Severity.REJECT : Severity.WARN,
            run,
            String.format(
                Locale.ROOT,
                "%s: %d readings in a row show %.1f %%, as a display that stands still does",
                sheet.names(run),
                run.length,
                sheet.pct[run[0]]),
            "check the probe and read these stations again");
      }
      from = k;
    }
  }

  private static void fast(Sheet sheet) {
    int[] rows = sheet.inTime();
    for (int k = 1; k < rows.length; k++) {
      double seconds = 3600 * (sheet.hour[rows[k]] - sheet.hour[rows[k - 1]]);
      if (seconds < FASTEST_S) {
        sheet.find(
            Rule.STUCK,
            Severity.WARN,
            new int[] {rows[k]},
            String.format(
                Locale.ROOT,
                "%s: %.0f s after the reading before it, too soon for another insertion",
                sheet.name(rows[k]),
                seconds),
            "check that the trigger was not pressed twice");
      }
    }
  }
}
