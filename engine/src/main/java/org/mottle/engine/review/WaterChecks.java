package org.mottle.engine.review;

import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.survey.Conditions;

/**
 * Whether the water before the visit leaves the pattern to be read, and whether it is on record.
 */
final class WaterChecks {
  private final ReviewSettings settings;

  WaterChecks(ReviewSettings settings) {
    this.settings = settings;
  }

  void check(Sheet sheet) {
    Optional<Conditions> conditions = sheet.visit.conditions();
    if (conditions.isEmpty()) {
      sheet.find(
          Rule.CONDITIONS,
          Severity.NOTE,
          "no conditions are recorded of this visit: rain, irrigation and rods before it are not"
              + " known",
          "record them (rain_h, rain_mm, irr_h, irr_mm, et0_mm_d, rod_mm)");
      return;
    }
    Conditions.Water water = conditions.get().water();
    since(sheet, "irrigation", water.irrigationHours(), water.irrigationMm());
    since(sheet, "rain", water.rainHours(), water.rainMm());
    if (Double.isNaN(water.rainHours()) && Double.isNaN(water.irrigationHours())) {
      sheet.find(
          Rule.CONDITIONS,
          Severity.NOTE,
          "hours since rain and since irrigation are not recorded (rain_h, irr_h)",
          "record them: without them nobody can tell coverage from drainage");
    }
  }

  private void since(Sheet sheet, String what, double hours, double mm) {
    if (Double.isNaN(hours) || hours >= settings.warnHours()) {
      return;
    }
    boolean reject = hours < settings.rejectHours();
    String much = mm > 0 ? String.format(Locale.ROOT, " of %.0f mm", mm) : "";
    sheet.find(
        Rule.WATER,
        reject ? Severity.REJECT : Severity.WARN,
        String.format(
            Locale.ROOT,
            "%s%s ended %s before the readings: %s",
            what,
            much,
            ago(hours),
            reject
                ? "what is read is that water on its way down"
                : "the upper soil may still be draining"),
        reject
            ? "read the green again, best 6 h or more after irrigation on sand and 12 to 24 h on soil"
            : "compare with other visits with care");
  }

  private static String ago(double hours) {
    return hours < 1
        ? String.format(Locale.ROOT, "%.0f minutes", 60 * hours)
        : String.format(Locale.ROOT, "%.1f hours", hours);
  }
}
