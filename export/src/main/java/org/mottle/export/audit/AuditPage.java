package org.mottle.export.audit;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.Caution;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.engine.irrigation.HeadSpacing;
import org.mottle.engine.irrigation.Scheduling;
import org.mottle.engine.irrigation.UniformityEstimate;
import org.mottle.export.record.Provenance;
import org.mottle.export.report.Markup;

/** The audit as one page that opens offline and prints. */
final class AuditPage {
  private static final int CANS_SIDE = 400;
  private static final int COVER_SIDE = 280;

  private final Audited audited;
  private final StringBuilder html = new StringBuilder();

  private AuditPage(Audited audited) {
    this.audited = audited;
  }

  /**
   * @param told notes of the readers
   */
  static String of(Audited audited, List<String> told) {
    return new AuditPage(audited).page(told);
  }

  private String page(List<String> told) {
    html.append(
        """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>Irrigation audit</title>
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <style>
        body{font:15px/1.45 sans-serif;color:#1c1c1c;max-width:62rem;margin:1.5rem auto;padding:0 1rem}
        h1{font-size:1.5rem}h2{font-size:1.15rem;margin-top:2rem}h3{font-size:1rem;margin:0 0 .3rem}
        table{border-collapse:collapse}td,th{border:1px solid #999;padding:.2rem .55rem;text-align:center}
        th{background:#eee}.area{display:flex;flex-wrap:wrap;gap:1.2rem;border-top:1px solid #bbb;padding:1rem 0;break-inside:avoid}
        .area svg{flex:none}.area>div{flex:1;min-width:16rem}ul{margin:.2rem 0;padding-left:1.1rem}li{margin:.25rem 0}
        .small{font-size:.85rem;color:#444}.wide{overflow-x:auto}
        @media print{body{margin:0;max-width:none}.area{page-break-inside:avoid}}
        </style></head><body>
        <h1>How evenly is the water applied?</h1>
        """);
    html.append("<p>").append(Markup.text(Provenance.DISCLAIMER));
    html.append(
        " One test shows one day's wind and pressure. Before a run is lengthened for a dry place,"
            + " look at the heads that should reach it.</p>\n");
    table();
    html.append("<h2>Area by area</h2>\n<p class=\"small\">");
    html.append(
        "Circles are cans: area and number by what they caught, filled for the lowest quarter."
            + " Triangles are heads with the ends of their arcs. The dashed square is the driest"
            + " window of 5 % of the area.</p>\n");
    audited.areas().forEach(this::area);
    coverage();
    if (!told.isEmpty()) {
      html.append("<h2>About the files</h2>\n");
      list(told);
    }
    return html.append("</body></html>\n").toString();
  }

  private void table() {
    html.append(
        "<h2>Figures</h2>\n<div class=\"wide\"><table><tr><th>area</th><th>cans</th><th>DU<sub>LQ</sub></th>"
            + "<th>reading</th><th>CU %</th><th>CV %</th><th>SC 1 %</th><th>SC 2 %</th><th>SC 5 %</th>"
            + "<th>multiplier</th><th>mm/h</th><th>run, min a day</th></tr>\n");
    for (AreaAudit a : audited.areas()) {
      html.append("<tr><th>").append(Markup.text(AuditReport.name(a))).append("</th>");
      cell(String.valueOf(a.area().cans().size()));
      if (a.uniformity().isPresent()) {
        UniformityEstimate u = a.uniformity().get();
        cell(number("%.2f", u.figures().duLowQuarter()) + interval("%.2f", u.duLowQuarter()));
        cell(u.figures().reading());
        cell(number("%.0f", u.figures().cuPct()) + interval("%.0f", u.cuPct()));
        cell(number("%.0f", u.figures().cvPct()));
      } else {
        Stream.generate(() -> "–").limit(4).forEach(this::cell);
      }
      for (Scheduling s : a.scheduling()) {
        cell(number("%.2f", s.value()));
      }
      cell(number("%.2f", a.runTime().multiplier()));
      cell(number("%.1f", a.applied().rateMmH()));
      cell(number("%.0f", a.runTime().minutes()));
      html.append("</tr>\n");
    }
    html.append("</table></div>\n<p class=\"small\">");
    html.append(
        "DU<sub>LQ</sub>: mean of the lowest quarter of the cans over the mean (a quarter that is no"
            + " whole number: ");
    html.append(audited.settings().rule().label());
    html.append(
        "). CU: Christiansen's coefficient. In brackets 90 % intervals: few cans leave much open."
            + " Usual reading for rotors: DU<sub>LQ</sub> of 0.70 acceptable, 0.80 good. SC: the mean"
            + " over the driest window of that share of the area. Multiplier: 1 / (0.386 + 0.614"
            + " DU<sub>LQ</sub>). A dash: not given, with the reason below or not asked for.</p>\n");
  }

  private void cell(String text) {
    html.append("<td>").append(text).append("</td>");
  }

  private static String number(String format, double value) {
    return Double.isNaN(value) ? "–" : String.format(Locale.ROOT, format, value);
  }

  private static String interval(String format, Interval i) {
    return !Double.isNaN(i.low())
        ? " (" + number(format, i.low()) + " to " + number(format, i.high()) + ")"
        : "";
  }

  private void area(AreaAudit a) {
    html.append("<div class=\"area\">");
    html.append(AuditMap.cans(a, audited, CANS_SIDE).orElse(""));
    html.append("<div><h3>").append(Markup.text(AuditReport.name(a))).append("</h3>\n");
    if (!a.values().unit().isEmpty()) {
      html.append("<p class=\"small\">Numbers in ");
      html.append(Markup.text(a.values().unit())).append(".</p>\n");
    }
    if (!a.told().missing().isEmpty()) {
      html.append("<p>Not given:</p>\n");
      list(AuditReport.missing(a));
    }
    if (!a.told().cautions().isEmpty()) {
      html.append("<p>To know first:</p>\n");
      list(a.told().cautions().stream().map(Caution::text).toList());
    }
    html.append("</div></div>\n");
  }

  private void coverage() {
    if (audited.coverage().isEmpty()) {
      return;
    }
    html.append("<h2>Heads, by radius and arc alone</h2>\n<p class=\"small\">");
    html.append(
        "How many heads reach the ground, if all throw as recorded: no wind, no pressure, no slope."
            + " Theoretical rate: the sum of rate / π over the heads that reach a place, since a rate"
            + " is stated for heads in a square at the distance of their radius, where π heads reach a"
            + " place on average. For comparison, not for run times.</p>\n");
    for (HeadCoverage c : audited.coverage()) {
      html.append("<div class=\"area\">").append(AuditMap.coverage(c, COVER_SIDE));
      html.append("<div><h3>Green ").append(Markup.text(c.green().id())).append("</h3>\n<p>");
      html.append(Markup.text(capital(AuditReport.reach(c))));
      html.append("; theoretical rate ").append(number("%.1f", c.meanRateMmH()));
      html.append(" mm/h on average.</p>\n<table><tr><th>head</th><th>to the next, m</th>");
      html.append(
          "<th>over its reach</th><th>reaches a head</th><th>reached by</th><th>state</th></tr>\n");
      for (HeadSpacing s : c.spacing()) {
        html.append("<tr><th>").append(Markup.text(s.head().id())).append("</th>");
        cell(number("%.1f", s.nearestM()));
        cell(number("%.2f", s.perRadius()));
        cell(s.reachesHead() ? "yes" : "no");
        cell(String.valueOf(s.reachedBy()));
        cell(Markup.text(audited.heads().flatMap(h -> h.state(s.head())).orElse("")));
        html.append("</tr>\n");
      }
      html.append("</table></div></div>\n");
    }
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private void list(List<String> items) {
    html.append("<ul>");
    items.forEach(i -> html.append("<li>").append(Markup.text(i)).append("</li>"));
    html.append("</ul>\n");
  }
}
