package org.mottle.export.review;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Reviewed;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.review.Rule;
import org.mottle.engine.survey.Reading;
import org.mottle.export.record.Provenance;
import org.mottle.export.report.Markup;

/**
 * The review as one page that opens offline: grades of all visits, what was found about whole
 * surveys, and a sheet for each visit with every finding where it lies. Status goes by shape, and
 * by colour besides.
 */
final class ReviewPage {
  private static final int SIDE = 300;
  private static final int MARGIN = 14;

  private final Reviewed reviewed;
  private final List<String> left;
  private final StringBuilder html = new StringBuilder();

  private ReviewPage(Reviewed reviewed, List<String> left) {
    this.reviewed = reviewed;
    this.left = left;
  }

  /**
   * @param left one line each for readings that could not be placed
   */
  static String of(Reviewed reviewed, List<String> left) {
    return new ReviewPage(reviewed, left).page();
  }

  private String page() {
    html.append(
        """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>Review of the readings</title>
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <style>
        body{font:15px/1.45 sans-serif;color:#1c1c1c;max-width:62rem;margin:1.5rem auto;padding:0 1rem}
        h1{font-size:1.5rem}h2{font-size:1.15rem;margin-top:2rem}h3{font-size:1rem;margin:0 0 .3rem}
        table{border-collapse:collapse}td,th{border:1px solid #999;padding:.2rem .55rem;text-align:center}
        th{background:#eee}.visit{display:flex;gap:1.2rem;border-top:1px solid #bbb;padding:1rem 0;break-inside:avoid}
        .visit svg{flex:none}ul{margin:.2rem 0;padding-left:1.1rem}li{margin:.25rem 0}
        .code{font-weight:bold;white-space:nowrap}.small{font-size:.85rem;color:#444}
        @media print{body{margin:0;max-width:none}.visit{page-break-inside:avoid}}
        </style></head><body>
        <h1>Can these readings be trusted?</h1>
        """);
    html.append("<p>").append(Markup.text(Provenance.DISCLAIMER));
    html.append(
        " Nothing is left out for being extreme: a dry patch is what is looked for. What is rejected"
            + " stays in the files, not used.</p>\n");
    grades();
    surveys();
    html.append("<h2>Visit by visit</h2>\n<p class=\"small\">");
    html.append(legend());
    html.append("</p>\n");
    reviewed.visits().forEach(this::visit);
    return html.append("</body></html>\n").toString();
  }

  private static String legend() {
    return "<svg width=\"520\" height=\"18\" role=\"img\" aria-label=\"legend\">"
        + mark(10, 9, "ok")
        + "<text x=\"20\" y=\"13\" font-size=\"12\">used</text>"
        + mark(80, 9, "warn")
        + "<text x=\"92\" y=\"13\" font-size=\"12\">used, in doubt (station named)</text>"
        + mark(290, 9, "reject")
        + "<text x=\"302\" y=\"13\" font-size=\"12\">not used (station named)</text></svg>";
  }

  private void grades() {
    Set<String> surveys = new LinkedHashSet<>();
    Set<String> greens = new LinkedHashSet<>();
    for (ReviewedVisit v : reviewed.visits()) {
      surveys.add(v.visit().surveyId());
      greens.add(v.visit().green().id());
    }
    html.append("<h2>Grades</h2>\n<table><tr><th>survey</th>");
    greens.forEach(g -> html.append("<th>").append(Markup.text(g)).append("</th>"));
    html.append("</tr>\n");
    for (String survey : surveys) {
      html.append("<tr><th>").append(Markup.text(survey)).append("</th>");
      for (String green : greens) {
        html.append("<td>").append(grade(survey, green)).append("</td>");
      }
      html.append("</tr>\n");
    }
    html.append(
        "</table>\n<p class=\"small\">A a map; B a map, somewhat less sure; C indicative; D a summary,"
            + " no map. The grade is the worst that anything about the visit allows.</p>\n");
  }

  private String grade(String survey, String green) {
    return reviewed.visits().stream()
        .filter(v -> v.visit().surveyId().equals(survey) && v.visit().green().id().equals(green))
        .map(v -> v.grade().letter().name())
        .findFirst()
        .orElse("");
  }

  private void surveys() {
    List<String> lines = new ArrayList<>();
    for (Finding f : reviewed.findings()) {
      lines.add(where(f) + item(f));
    }
    left.forEach(line -> lines.add(Markup.text(line)));
    if (!lines.isEmpty()) {
      html.append("<h2>About whole surveys, and readings out of place</h2>\n<ul>\n");
      lines.forEach(line -> html.append("<li>").append(line).append("</li>\n"));
      html.append("</ul>\n");
    }
  }

  private static String where(Finding f) {
    String green = f.greenId().isEmpty() ? "" : ", green " + f.greenId();
    return Markup.text(f.surveyId() + green) + ": ";
  }

  private static String item(Finding f) {
    return "<span class=\"code\">"
        + f.rule().code()
        + " "
        + f.severity().label()
        + "</span> "
        + Markup.text(f.reason())
        + (f.remedy().isEmpty() ? "" : ". <i>" + Markup.text(f.remedy()) + ".</i>");
  }

  private void visit(ReviewedVisit v) {
    html.append("<div class=\"visit\">").append(map(v)).append("<div><h3>");
    html.append(Markup.text(v.visit().surveyId() + ", green " + v.visit().green().id()));
    html.append(": grade ").append(v.grade().letter()).append(" (");
    html.append(v.grade().letter().meaning()).append(")</h3>\n");
    list(v.grade().why().stream().map(Markup::text).toList());
    if (!v.grade().raise().isEmpty()) {
      html.append("<p class=\"small\">What would raise it: ");
      html.append(Markup.text(String.join("; ", v.grade().raise()))).append(".</p>\n");
    }
    list(v.findings().stream().map(ReviewPage::item).toList());
    html.append("</div></div>\n");
  }

  private void list(List<String> items) {
    if (!items.isEmpty()) {
      html.append("<ul>");
      items.forEach(i -> html.append("<li>").append(i).append("</li>"));
      html.append("</ul>\n");
    }
  }

  private static String map(ReviewedVisit v) {
    Geometry outline = v.visit().green().outline();
    Envelope box = new Envelope(outline.getEnvelopeInternal());
    v.visit().readings().forEach(r -> box.expandToInclude(r.x(), r.y()));
    double scale = (SIDE - 2.0 * MARGIN) / Math.max(box.getWidth(), box.getHeight());
    StringBuilder svg = new StringBuilder();
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg width=\"%d\" height=\"%d\" role=\"img\" aria-label=\"%s\">",
            SIDE,
            SIDE,
            Markup.text("stations of " + v.visit().surveyId() + " on " + v.visit().green().id())));
    svg.append("<path fill=\"#f4f4ee\" stroke=\"#333\" fill-rule=\"evenodd\" d=\"");
    for (int g = 0; g < outline.getNumGeometries(); g++) {
      Geometry boundary = outline.getGeometryN(g).getBoundary();
      for (int k = 0; k < boundary.getNumGeometries(); k++) {
        char step = 'M';
        for (Coordinate c : boundary.getGeometryN(k).getCoordinates()) {
          svg.append(step).append(at(c.x, c.y, box, scale));
          step = 'L';
        }
        svg.append('Z');
      }
    }
    svg.append("\"/>");
    for (Reading r : v.visit().readings()) {
      if (r.quality().code().equals(Rule.COPY.code())) {
        continue; // the reading it repeats is drawn
      }
      double x = MARGIN + (r.x() - box.getMinX()) * scale;
      double y = MARGIN + (box.getMaxY() - r.y()) * scale;
      svg.append(mark(x, y, r.quality().status()));
      if (!r.quality().status().equals("ok")) {
        svg.append(
            String.format(
                Locale.ROOT,
                "<text x=\"%.1f\" y=\"%.1f\" font-size=\"11\">%s</text>",
                x + 7,
                y + 4,
                Markup.text(r.label().stationId() + " " + r.quality().code())));
      }
    }
    double bar = 5 * scale;
    svg.append(
        String.format(
            Locale.ROOT,
            "<path d=\"M%d %dh%.1f\" stroke=\"#333\" stroke-width=\"2\"/><text x=\"%.1f\" y=\"%d\""
                + " font-size=\"11\">5 m, north up</text></svg>",
            4,
            SIDE - 4,
            bar,
            bar + 9,
            SIDE - 1));
    return svg.toString();
  }

  private static String at(double x, double y, Envelope box, double scale) {
    return String.format(
        Locale.ROOT,
        "%.1f %.1f",
        MARGIN + (x - box.getMinX()) * scale,
        MARGIN + (box.getMaxY() - y) * scale);
  }

  private static String mark(double x, double y, String status) {
    return switch (status) {
      case "warn" ->
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f %.1fl5 9h-10z\" fill=\"#e69f00\" stroke=\"#333\"/>",
              x,
              y - 6);
      case "reject" ->
          String.format(
              Locale.ROOT,
              "<path d=\"M%.1f %.1fl9 9m0 -9l-9 9\" stroke=\"#b00020\" stroke-width=\"2.5\"/>",
              x - 4.5,
              y - 4.5);
      default ->
          String.format(
              Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3\" fill=\"#0072b2\"/>", x, y);
    };
  }
}
