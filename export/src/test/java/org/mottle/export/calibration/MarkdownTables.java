package org.mottle.export.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;

/** A block of results as Markdown. */
final class MarkdownTables {
  private static final List<Metric> CLOSED =
      List.of(
          Metric.RMSE,
          Metric.CRPS,
          Metric.GAP_DRY,
          Metric.GAP_WET,
          Metric.CALLABLE_80,
          Metric.CALLABLE_90,
          Metric.UNDER_75);
  private static final List<Metric> BY_GROUP =
      List.of(
          Metric.RMSE,
          Metric.BIAS,
          Metric.COVERAGE_90,
          Metric.UNDER_75,
          Metric.GAP_DRY,
          Metric.GAP_WET,
          Metric.DRY_RATIO,
          Metric.WET_RATIO);
  private final Block block;
  private final List<String> lines = new ArrayList<>();

  private MarkdownTables(Block block) {
    this.block = block;
  }

  static List<String> of(Block block) {
    MarkdownTables tables = new MarkdownTables(block);
    tables.lines.add("## " + block.courses() + ": " + block.seeds());
    tables.overall(label -> true);
    if (block.groups().containsKey(Block.NOT_CHOSEN)) {
      tables.lines.add("");
      tables.lines.add("Greens " + Block.NOT_CHOSEN + ":");
      tables.overall(block.groups().get(Block.NOT_CHOSEN));
    }
    tables.closed(block.methods().get(0), block.methods().get(1));
    tables.closed(block.methods().get(0), block.methods().get(2));
    tables.byGroup();
    tables.reliability("dry", Metric::dry);
    tables.reliability("wet", Metric::wet);
    tables.variograms();
    tables.lines.add("");
    return tables.lines;
  }

  static String number(Metric metric, double value) {
    return Double.isNaN(value)
        ? "–"
        : String.format(Locale.ROOT, "%." + metric.decimals() + "f", value);
  }

  private void overall(Predicate<GreenScore.Label> group) {
    heading("", block.methods());
    for (Metric metric : Metric.values()) {
      row(metric.label(), m -> number(metric, metric.of(block.scores(m, group))));
    }
  }

  private void closed(String own, String mark) {
    lines.add("");
    lines.add("Closed of what lies between *" + own + "* and *" + mark + "*:");
    heading("", block.methods());
    for (Metric metric : CLOSED) {
      Closed closed =
          new Closed(metric, metric.of(block.scores(own)), metric.of(block.scores(mark)));
      row(metric.label(), m -> closed.cell(metric.of(block.scores(m))));
    }
  }

  private void byGroup() {
    lines.add("");
    lines.add("By survey and by green:");
    heading("group, figure", block.methods());
    block
        .groups()
        .forEach(
            (name, group) -> {
              for (Metric metric : BY_GROUP) {
                row(
                    name + ", " + metric.label(),
                    m -> number(metric, metric.of(block.scores(m, group))));
              }
            });
  }

  private void reliability(String what, Function<List<GreenScore>, Histogram> of) {
    lines.add("");
    lines.add("P of " + what + ": said → found (share of the area); ‑ in bins below 1 %:");
    heading("bin", block.methods());
    for (int tenth = 0; tenth < 10; tenth++) {
      int bin = tenth;
      row(
          String.format(Locale.ROOT, "%.1f–%.1f", tenth / 10.0, (tenth + 1) / 10.0),
          m -> bin(of.apply(block.scores(m)).bin(bin)));
    }
  }

  private static String bin(Histogram.Bin bin) {
    return bin.tells()
        ? String.format(
            Locale.ROOT, "%.2f → %.2f (%.1f %%)", bin.said(), bin.found(), 100 * bin.share())
        : "‑";
  }

  private void variograms() {
    lines.add("");
    lines.add(
        "Variograms found, over the true: median (10 to 90 % of them), and how often the stated 90 %"
            + " interval holds the truth:");
    heading("method", List.of("found", "range / true", "held", "nugget / true", "held"));
    for (String method : block.methods()) {
      List<ClaimScore> claims = CourseResult.claims(block.results(), method);
      if (!claims.isEmpty()) {
        lines.add("| " + method + " | " + ClaimScore.row(claims) + " |");
      }
    }
  }

  private void heading(String first, List<String> columns) {
    lines.add("");
    lines.add("| " + first + " | " + String.join(" | ", columns) + " |");
    lines.add("|---|" + "---:|".repeat(columns.size()));
  }

  private void row(String first, Function<String, String> cell) {
    lines.add(
        "| "
            + first
            + " | "
            + String.join(" | ", block.methods().stream().map(cell).toList())
            + " |");
  }
}
