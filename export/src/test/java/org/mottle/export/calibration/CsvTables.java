package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A block of results as lines of CSV: every figure, over all surveys and by survey and seed. */
final class CsvTables {
  static final String HEADING = "courses,use,first_seed,last_seed,method,group,figure,value";

  private CsvTables() {}

  static List<String> of(Block block) {
    List<String> lines = new ArrayList<>();
    for (String method : block.methods()) {
      add(lines, block, method, "all", block.scores(method));
      block
          .groups()
          .forEach((name, group) -> add(lines, block, method, name, block.scores(method, group)));
      for (CourseResult result : block.results()) {
        add(lines, block, method, "seed " + result.seed(), result.scores().get(method));
      }
    }
    return lines;
  }

  private static void add(
      List<String> lines, Block block, String method, String group, List<GreenScore> scores) {
    for (Metric metric : Metric.values()) {
      double value = metric.of(scores);
      lines.add(
          String.format(
              Locale.ROOT,
              "\"%s\",%s,%d,%d,%s,%s,%s,%s",
              block.courses(),
              block.seeds().use(),
              block.seeds().first(),
              block.seeds().last(),
              method,
              group,
              metric.name().toLowerCase(Locale.ROOT),
              Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%.5g", value)));
    }
  }
}
