package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.survey.Reading;

/**
 * Readings handed in twice: the same green, time, value and place. The first stays; the others are
 * not used. Readings without a time are copies only when whole visits agree value by value, which
 * chance does not bring about.
 */
final class CopyCheck {
  /** Fewer values in the same order may agree by chance. */
  private static final int LEAST_RUN = 6;

  private record Key(String green, String time, double pct, double x, double y) {}

  private final Map<Key, String> seen = new LinkedHashMap<>();
  private final Map<List<Double>, String> visits = new LinkedHashMap<>();

  /** Sheets are to come in order: the first of two copies is kept. */
  void check(Sheet sheet) {
    List<Integer> copies = new ArrayList<>();
    String of = "";
    List<Double> values = new ArrayList<>();
    boolean timed = false;
    for (int i : sheet.counting()) {
      Reading r = sheet.reading(i);
      values.add(r.moisture().rawPct());
      String time = r.protocol().time();
      if (time.isEmpty()) {
        continue;
      }
      timed = true;
      String before =
          seen.putIfAbsent(
              new Key(sheet.visit.green().id(), time, r.moisture().rawPct(), r.x(), r.y()),
              sheet.visit.label());
      if (before != null) {
        copies.add(i);
        of = before;
      }
    }
    if (!timed && values.size() >= LEAST_RUN) {
      String before = visits.putIfAbsent(values, sheet.visit.label());
      if (before != null) {
        of = before;
        for (int i : sheet.counting()) {
          copies.add(i);
        }
      }
    }
    if (!copies.isEmpty()) {
      int[] rows = copies.stream().mapToInt(Integer::intValue).toArray();
      sheet.find(
          Rule.COPY,
          Severity.REJECT,
          rows,
          "%d reading%s of %s %s here a second time, to the last digit"
              .formatted(
                  rows.length, rows.length == 1 ? "" : "s", of, rows.length == 1 ? "is" : "are"),
          "leave the copy out; the first is used");
    }
  }
}
