package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.engine.survey.Reading;

/** Insertions at one station by one crew that differ by more than chance lets them. */
final class ReplicateCheck {
  /** Fewer pairs do not tell the standard deviation of one insertion. */
  private static final int LEAST_PAIRS = 10;

  private static final double LIMIT = 3 * Math.sqrt(2);

  private ReplicateCheck() {}

  private record Pair(Sheet sheet, int first, int second) {
    double difference() {
      return sheet.pct[first] - sheet.pct[second];
    }
  }

  static void check(List<Sheet> sheets, ReviewSettings settings) {
    List<Pair> pairs = new ArrayList<>();
    for (Sheet sheet : sheets) {
      Map<String, Integer> first = new LinkedHashMap<>();
      for (int i : sheet.inTime()) {
        Reading r = sheet.reading(i);
        if (!r.label().stationId().isEmpty()) {
          Integer before = first.putIfAbsent(r.label().stationId() + "/" + Comparison.crew(r), i);
          if (before != null) {
            pairs.add(new Pair(sheet, before, i));
          }
        }
      }
    }
    double sd = sd(pairs, settings.replicateSdPct());
    for (Pair pair : pairs) {
      if (Math.abs(pair.difference()) > LIMIT * sd) {
        pair.sheet()
            .find(
                Rule.REPLICATES,
                Severity.WARN,
                new int[] {pair.first(), pair.second()},
                String.format(
                    Locale.ROOT,
                    "%s: %.1f and %.1f %%, where insertions side by side differ by %.1f %% or less"
                        + " nearly always",
                    pair.sheet().name(pair.first()),
                    pair.sheet().pct[pair.first()],
                    pair.sheet().pct[pair.second()],
                    LIMIT * sd),
                "insert a third time; one of the two may not have been fully in");
      }
    }
  }

  /** Standard deviation of one insertion, by the median of the absolute differences. */
  private static double sd(List<Pair> pairs, double usual) {
    if (pairs.size() < LEAST_PAIRS) {
      return usual;
    }
    double[] sorted = pairs.stream().mapToDouble(p -> Math.abs(p.difference())).sorted().toArray();
    double median = sorted[sorted.length / 2];
    return median > 0 ? median / (0.6745 * Math.sqrt(2)) : usual;
  }
}
