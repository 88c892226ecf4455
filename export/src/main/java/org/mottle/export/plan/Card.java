package org.mottle.export.plan;

import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Provenance;
import org.mottle.export.report.Markup;

/**
 * A card to print: one page for each green, A4 or letter, upright, black on white, without scripts
 * or other files. The drawing takes the height that the boxes leave.
 */
final class Card {
  /** Prints on A4 and letter with margins of 8 mm: 190 mm of 194, 258 mm of 263. */
  private static final double HIGH_MM = 258;

  private static final double DRAWING_WIDE_MM = 122;
  private static final double HEADER_MM = 17;
  private static final double FOOT_MM = 43;
  private static final double CONTROL_MM = 22;
  private static final double LOWEST_DRAWING_MM = 93;
  private static final double HIGHEST_DRAWING_MM = 128;

  private static final String STYLE =
      """
      @page { margin: 8mm; }
      * { box-sizing: border-box; }
      body { margin: 0; font: 3.1mm/1.3 sans-serif; color: #000; background: #fff; }
      .card { width: 190mm; margin: 0 auto; break-after: page; }
      .card:last-child { break-after: auto; }
      header { height: 16mm; border-bottom: 0.6mm solid #000; margin-bottom: 1mm; }
      h1 { font-size: 6.4mm; line-height: 1.15; margin: 0; white-space: nowrap; overflow: hidden; }
      header p { margin: 0; white-space: nowrap; overflow: hidden; }
      .top { display: flex; justify-content: space-between; }
      .side { width: 66mm; }
      .visit { display: grid; grid-template-columns: 1fr 1fr; border-top: 0.2mm solid #000;
        border-left: 0.2mm solid #000; }
      .visit div { height: 8.4mm; padding: 0.3mm 0.8mm; font-size: 2.5mm;
        border-right: 0.2mm solid #000; border-bottom: 0.2mm solid #000; }
      .legend { margin: 1.5mm 0 0; padding: 0; list-style: none; font-size: 2.8mm; }
      .sym { vertical-align: middle; margin-right: 0.6mm; }
      .readings { display: flex; gap: 2mm; align-items: flex-start; margin-top: 1mm; }
      table { border-collapse: collapse; flex: 1 1 0; table-layout: fixed; width: 100%; }
      th, td { border: 0.2mm solid #000; padding: 0 0.6mm; text-align: left; font-weight: bold;
        white-space: nowrap; overflow: hidden; line-height: 1.1; }
      td { font-weight: normal; }
      .head th { height: 4.6mm; font-size: 2.5mm; font-weight: normal; }
      .head th:nth-child(1) { width: 21%; }
      .head th:nth-child(2) { width: 20%; }
      .head th:nth-child(3), .head th:nth-child(4) { width: 16%; }
      .step, .none { font-size: 2.6mm; color: #333; }
      .none { text-align: center; }
      small { font-weight: normal; }
      .foot { display: flex; gap: 3mm; margin-top: 1.5mm; }
      .foot > div { flex: 1 1 0; }
      .foot > .controls { flex: 0 0 84mm; }
      ol, ul { margin: 0; padding-left: 4.5mm; }
      .foot p { margin: 0.8mm 0 0; }
      .control td, .control th { height: 4.4mm; font-size: 2.5mm; }
      .control { margin-bottom: 1mm; }
      .control .head th:nth-child(n) { width: auto; }
      .control .head th:nth-child(1) { width: 22%; }
      .control .head th:nth-child(2) { width: 18%; }
      .last { margin-top: 1mm; font-size: 2.4mm; color: #333; }
      @media screen { body { background: #ddd; padding: 4mm; }
        .card { background: #fff; margin-bottom: 12mm; outline: 4mm solid #fff; } }
      """;

  private final GreenPlan plan;
  private final Crs crs;
  private final CardForm form;

  private Card(GreenPlan plan, Crs crs) {
    this.plan = plan;
    this.crs = crs;
    this.form = new CardForm(plan);
  }

  /** The page of a plan, as part of a file. */
  static String section(GreenPlan plan, Crs crs) {
    return new Card(plan, crs).section();
  }

  /**
   * One file with a page for each plan.
   *
   * @param sections one a plan
   */
  static String page(List<GreenPlan> plans, Iterable<String> sections) {
    String title = plans.size() == 1 ? "Green " + plans.get(0).label() : plans.size() + " greens";
    return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>"
        + Markup.text(title)
        + ": stations</title><style>\n"
        + STYLE
        + "</style></head><body>\n"
        + String.join("", sections)
        + "</body></html>\n";
  }

  private String section() {
    return "<section class=\"card\">"
        + header()
        + "<div class=\"top\">"
        + CardMap.svg(plan, DRAWING_WIDE_MM, drawingMm())
        + "<div class=\"side\">"
        + CardForm.visit()
        + legend()
        + "</div></div>"
        + form.stations()
        + foot()
        + "</section>\n";
  }

  private double drawingMm() {
    double controls = Math.max(0, plan.controls() - 1) * (CONTROL_MM + 3);
    double left = HIGH_MM - HEADER_MM - FOOT_MM - controls - form.heightMm();
    double wanted = Math.min(left, CardMap.heightFor(plan, DRAWING_WIDE_MM));
    return Math.floor(Math.max(LOWEST_DRAWING_MM, Math.min(HIGHEST_DRAWING_MM, wanted)));
  }

  private String header() {
    StationPlan stations = plan.plan();
    return "<header><h1>Green "
        + Markup.text(plan.label())
        + "</h1><p>"
        + Markup.text(
            String.format(
                Locale.ROOT,
                "plan %s, design %s: %s",
                stations.planId(),
                plan.design(),
                Count.of(plan)))
        + "</p><p>"
        + Markup.text(
            String.format(
                Locale.ROOT,
                "%d insertions, walk %.0f m, about %.0f minutes; spacing %.1f m; %s",
                stations.insertions(),
                stations.walkM(),
                Math.max(1, stations.minutes()),
                plan.spacingM(),
                crs))
        + "</p></header>";
  }

  private String legend() {
    StringBuilder html = new StringBuilder("<ul class=\"legend\">");
    TreeSet<StationShape> used = new TreeSet<>();
    plan.plan().stations().forEach(s -> used.add(StationShape.of(s.role())));
    for (StationShape shape : used) {
      item(html, CardForm.symbol(shape, false), shape.meaning());
    }
    plan.plan().stations().stream()
        .filter(s -> s.role() != Role.CONTROL && s.insertions() > 1)
        .findFirst()
        .map(PlannedStation::role)
        .ifPresent(
            role ->
                item(
                    html,
                    CardForm.symbol(StationShape.of(role), true),
                    "second outline: insert more than once"));
    if (plan.insetM() > 0) {
      item(
          html,
          "<svg class=\"sym\" viewBox=\"0 0 6 6\" width=\"4.2mm\" height=\"4.2mm\"><path d=\"M0"
              + " 3h6\" stroke=\"#555\" stroke-width=\"0.4\" stroke-dasharray=\"0.5 1\"/></svg>",
          String.format(Locale.ROOT, "%.1f m inside the edge", plan.insetM()));
    }
    item(html, "<b>from last</b>", "distance and direction, degrees from grid north");
    return html.append("</ul>").toString();
  }

  private static void item(StringBuilder html, String symbol, String meaning) {
    html.append("<li>").append(symbol).append(' ').append(meaning).append("</li>");
  }

  private String foot() {
    String control = form.control();
    return "<div class=\"foot\"><div><ol>"
        + "<li>Walk in the order of the numbers. Push the rods straight in, once, to the full"
        + " length: a pin half out reads dry, forcing reads wet.</li>"
        + "<li>Keep off ball marks, aeration holes, spikes, stones and fresh topdressing; ×2: again"
        + " within 0.15 m, never in the same hole.</li>"
        + "<li>Write down what the probe shows, at once. A station moved or left out gets a remark;"
        + " one probe, one rod length, one operator a walk.</li></ol>"
        + "<p><b>Stop at thunder or lightning.</b> Wires and pipes lie shallow near heads, valves and"
        + " boxes: stay 0.3 m away. The site's agronomist decides what is probed and"
        + " when.</p></div>"
        + (control.isEmpty() ? "" : "<div class=\"controls\">" + control + "</div>")
        + "</div><p class=\"last\">"
        + Markup.text(Provenance.ENGINE)
        + ". Value: % by volume unless the remark says otherwise."
        + (plan.note().isEmpty() ? "" : " " + Markup.text(plan.note()))
        + "</p>";
  }
}
