package org.mottle.export.plan;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.export.report.Markup;

/**
 * The boxes of a card to write in: a row a station in as many columns as the page needs, the visit
 * beside the drawing, the control stations below.
 */
final class CardForm {
  private static final double HEAD_MM = 4.6;
  private static final double ROW_MM = 6.2;
  private static final double LOWEST_ROW_MM = 4.4;

  /** Rows of the visit: two boxes each, asked for by name. */
  private static final String[][] VISIT = {
    {"date", "operator"},
    {"start", "end"},
    {"probe", "rod length, mm"},
    {"calibration curve", "dew, y / n"},
    {"hours since rain", "rain, mm"},
    {"hours since irrigation", "irrigation, mm"},
    {"ET0 since, mm a day", "soil, °C"}
  };

  /** When a control station is read. */
  private static final List<String> ROUNDS = List.of("start", "+ 60 min", "+ 120 min", "end");

  private static final int CONTROL_BOXES = 5;

  private final GreenPlan plan;
  private final List<Integer> rows;

  CardForm(GreenPlan plan) {
    this.plan = plan;
    List<PlannedStation> stations = plan.plan().stations();
    this.rows =
        IntStream.range(0, stations.size())
            .filter(i -> stations.get(i).role() != Role.CONTROL)
            .boxed()
            .toList();
  }

  private int columns() {
    return rows.size() <= 32 ? 2 : rows.size() <= 66 ? 3 : 4;
  }

  private int rowsInColumn() {
    return (rows.size() + columns() - 1) / columns();
  }

  private double rowMm() {
    return rowsInColumn() <= 14 ? ROW_MM : Math.max(LOWEST_ROW_MM, 14 * ROW_MM / rowsInColumn());
  }

  /** Height of the table of stations, mm. */
  double heightMm() {
    return HEAD_MM + rowsInColumn() * rowMm() + 1;
  }

  /** The table of stations. */
  String stations() {
    StringBuilder html = new StringBuilder("<div class=\"readings\">");
    for (int column = 0; column < columns(); column++) {
      int from = column * rowsInColumn();
      int to = Math.min(rows.size(), from + rowsInColumn());
      if (from < to) {
        html.append("<table><tr class=\"head\"><th>station</th><th>from last</th><th>value</th>");
        html.append("<th>value 2</th><th>remark</th></tr>");
        rows.subList(from, to).forEach(i -> html.append(row(i)));
        html.append("</table>");
      }
    }
    return html.append("</div>").toString();
  }

  private String row(int i) {
    PlannedStation s = plan.plan().stations().get(i);
    String second =
        s.insertions() == 1 ? "–" : s.insertions() == 2 ? "" : s.insertions() - 1 + " ×";
    String often = s.insertions() == 1 ? "" : " <small>×" + s.insertions() + "</small>";
    return String.format(
        Locale.ROOT,
        "<tr style=\"height:%.2fmm\"><th>%s%s%s</th><td class=\"step\">%s</td><td></td>"
            + "<td class=\"none\">%s</td><td class=\"remark\"></td></tr>",
        rowMm(),
        symbol(StationShape.of(s.role()), s.insertions() > 1),
        Markup.text(s.id()),
        often,
        plan.steps().get(i).words(),
        second);
  }

  /** A shape in a line of text. */
  static String symbol(StationShape shape, boolean more) {
    return "<svg class=\"sym\" viewBox=\"0 0 6 6\" width=\"4.2mm\" height=\"4.2mm\">"
        + shape.svg(3, 3, more)
        + "</svg>";
  }

  /** The boxes of the visit. */
  static String visit() {
    StringBuilder html = new StringBuilder("<div class=\"visit\">");
    for (String[] pair : VISIT) {
      for (String box : pair) {
        html.append("<div>").append(box).append("</div>");
      }
    }
    return html.append("</div>").toString();
  }

  /** The boxes of the control stations; empty when there are none. */
  String control() {
    StringBuilder html = new StringBuilder();
    for (PlannedStation s : plan.plan().stations()) {
      if (s.role() == Role.CONTROL) {
        html.append("<table class=\"control\"><tr class=\"head\"><th>");
        html.append(symbol(StationShape.CROSSED, false)).append(Markup.text(s.id()));
        html.append("</th><th>time</th><th colspan=\"5\">control, ");
        html.append(s.insertions()).append(" insertions</th></tr>");
        ROUNDS.forEach(
            r ->
                html.append("<tr><th>")
                    .append(r)
                    .append("</th>")
                    .append("<td></td>".repeat(1 + CONTROL_BOXES))
                    .append("</tr>"));
        html.append("</table>");
      }
    }
    return html.toString();
  }
}
