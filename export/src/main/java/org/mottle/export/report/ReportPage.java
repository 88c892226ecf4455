package org.mottle.export.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Severity;
import org.mottle.engine.validation.Calibration;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.InputFile;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.style.Ramp;

/**
 * The report of a run, {@code report.html}: one file that opens without a network. A map to move
 * about in, one sheet of paper a green and survey ({@link GreenSheet}), then the appendix:
 * variograms, cross-validation, findings, settings, inputs. Its own policy allows no fetching and
 * no script but the two it was written with.
 */
public final class ReportPage {
  private static final String PLACE = "/org/mottle/export/report/";
  private static final int MOST_FINDINGS = 400;

  private final ReportMatter matter;
  private final Provenance record;
  private final Crs crs;
  private final StringBuilder html = new StringBuilder();

  private ReportPage(ReportMatter matter, Provenance record, Crs crs) {
    this.matter = matter;
    this.record = record;
    this.crs = crs;
  }

  public static String of(ReportMatter matter, Provenance record, Crs crs) {
    return new ReportPage(matter, record, crs).written();
  }

  private String written() {
    GreenSheet.Scales scales = scales();
    String library = Leaflet.script();
    String own = Leaflet.text(PLACE + "report.js");
    head(library, own);
    cover();
    for (int i = 0; i < matter.visits().size(); i++) {
      html.append(GreenSheet.of(matter, i, scales));
    }
    appendix();
    html.append("</main>\n<script type=\"application/json\" id=\"map-data\">")
        .append(MapData.of(matter, scales))
        .append("</script>\n<script>")
        .append(library)
        .append("</script>\n<script>")
        .append(own)
        .append("</script>\n</body></html>\n");
    return html.toString();
  }

  /** Fixed steps of 5 and 1 %, so that runs of one course mostly share a scale. */
  private GreenSheet.Scales scales() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double doubt = 1;
    for (Outcome.Mapped map : matter.map().maps()) {
      for (double v : map.surface().mean().values()) {
        if (!Double.isNaN(v)) {
          low = Math.min(low, v);
          high = Math.max(high, v);
        }
      }
      for (double v : map.surface().sd().values()) {
        doubt = Double.isNaN(v) ? doubt : Math.max(doubt, v);
      }
    }
    if (low > high) {
      return new GreenSheet.Scales(Ramp.moisture(0, 50), Ramp.doubt(1));
    }
    double from = 5 * Math.floor(low / 5);
    double to = 5 * Math.ceil(high / 5);
    return new GreenSheet.Scales(
        Ramp.moisture(from, to > from ? to : from + 5), Ramp.doubt(Math.ceil(doubt)));
  }

  private void head(String library, String own) {
    String title = "Soil moisture: greens, how sure, what next";
    html.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n")
        .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .append(" img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none';")
        .append(" script-src '")
        .append(hash(library))
        .append("' '")
        .append(hash(own))
        .append("'\">\n<title>")
        .append(title)
        .append("</title>\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<link rel=\"icon\" href=\"data:,\">\n<style>\n")
        .append(Leaflet.style())
        .append(Leaflet.text(PLACE + "report.css"))
        .append("</style></head><body>\n<a class=\"skip\" href=\"#")
        .append(GreenSheet.id(0))
        .append("\">To the first green</a>\n")
        .append(ClassLook.patterns())
        .append("<main>\n<header class=\"cover\">\n<h1>")
        .append(title)
        .append("</h1>\n<p class=\"lead\">")
        .append(Markup.text(surveys()))
        .append("</p>\n<p class=\"small\">")
        .append(Markup.text(Provenance.DISCLAIMER))
        .append("</p>\n");
  }

  /** How a policy names a script. */
  static String hash(String script) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private String surveys() {
    List<String> days =
        matter.visits().stream()
            .flatMap(v -> v.lastRead().stream())
            .map(t -> t.toLocalDate().toString())
            .distinct()
            .sorted()
            .toList();
    int maps = matter.map().maps().size();
    return String.format(
        Locale.ROOT,
        "%d of %d mapped%s%s.",
        maps,
        matter.visits().size(),
        matter.visits().size() == 1 ? "" : ", one sheet each",
        days.isEmpty()
            ? "; the days of the readings are not recorded"
            : days.size() == 1
                ? "; read on " + days.get(0)
                : "; read from " + days.get(0) + " to " + days.get(days.size() - 1));
  }

  private void cover() {
    html.append(Leaflet.text(PLACE + "map.html"));
    html.append(
        "<h2>The greens</h2>\n<div class=\"wide\"><table aria-label=\"greens\"><thead><tr>");
    for (String column :
        List.of("Green", "Survey", "Water before", "Grade", "Dry", "Wet", "Water, one pass")) {
      html.append("<th scope=\"col\">").append(column).append("</th>");
    }
    html.append("</tr></thead><tbody>\n");
    for (int i = 0; i < matter.visits().size(); i++) {
      row(matter.visits().get(i), i);
    }
    html.append(
            "</tbody></table></div>\n<p class=\"small\">Dry and wet: share of the green below and")
        .append(
            " above its band, in brackets nine times in ten. Water: an upper guide, no order.</p>");
    html.append("<p class=\"keys\">");
    for (ClassLook look : ClassLook.values()) {
      html.append(look.key()).append(' ');
    }
    html.append("</p><p class=\"small\">").append(Markup.text(ClassLook.SOURCE));
    html.append(" \"8 in 10\" is a probability of 0.8. Coordinates: ");
    html.append(Markup.text(crs.code() + " " + crs.name())).append("; north is grid north.</p>\n");
    html.append("</header>\n");
  }

  private void row(GreenLook look, int index) {
    html.append("<tr><td><a href=\"#").append(GreenSheet.id(index)).append("\">");
    html.append(GreenSheet.name(look.outcome().subject())).append("</a></td>");
    cell(look.outcome().subject().surveyId());
    cell(look.record().history().label());
    cell(look.record().grade().map(g -> g.letter().name()).orElse("not graded"));
    if (look.mapped().isPresent()) {
      cell(share(look.dryShare()));
      cell(share(look.wetShare()));
      cell(look.litres().known() ? Words.litres(look.litres()) : "not known");
    } else {
      html.append("<td colspan=\"3\">no map</td>");
    }
    html.append("</tr>\n");
  }

  private static String share(Interval share) {
    return share.known() ? Words.percent(share) : "no band";
  }

  private void cell(String words) {
    html.append("<td>").append(Markup.text(words)).append("</td>");
  }

  private void appendix() {
    html.append("<section class=\"appendix\" id=\"appendix\"><h2>Appendix</h2>\n");
    variograms();
    crossValidation();
    findings();
    settings();
    inputs();
    html.append("<details><summary>Licence of the map library Leaflet</summary><pre>")
        .append(Markup.text(Leaflet.licence()).replace("  ", "\n"))
        .append("</pre></details>\n</section>\n");
  }

  private void variograms() {
    html.append(
            "<h3>Variograms</h3>\n<p class=\"small\">Dots: semivariance by lag, with the number of")
        .append(
            " pairs. Line: the fitted model. Band: all models whose range, nugget and sill lie in")
        .append(" their 90 % intervals.</p>\n<div class=\"charts\">");
    int number = 0;
    for (MapVariogram variogram : matter.map().variograms()) {
      String greens = String.join(", ", variogram.greens());
      String title = "Variogram " + ++number + ": green " + greens;
      html.append("<figure>")
          .append(PoolChart.of(variogram, title))
          .append("<figcaption>")
          .append(Markup.text(title + "; " + words(variogram)))
          .append("</figcaption></figure>\n");
    }
    if (number == 0) {
      html.append("<p>No map rests on one.</p>");
    }
    html.append("</div>\n");
  }

  private static String words(MapVariogram variogram) {
    String basis =
        String.format(
            Locale.ROOT,
            "surveys %s; %d stations, %d pairs. ",
            String.join(", ", variogram.surveys()),
            variogram.stations(),
            variogram.pairs());
    return basis
        + variogram
            .pooled()
            .map(
                p ->
                    String.format(
                        Locale.ROOT,
                        "%s, practical range %s m, nugget %s, share of nugget %s%s",
                        p.shape().label(),
                        GreenSheet.number("%.1f", p.parameters().practicalRange()),
                        GreenSheet.number("%.2f", p.parameters().nugget()),
                        GreenSheet.number("%.2f", p.parameters().nuggetShare()),
                        p.evidence().borrowed() ? "; borrowed in part" : ""))
            .orElse("No model was fitted.");
  }

  private void crossValidation() {
    html.append("<h3>Each reading predicted from the others of its green</h3>\n");
    html.append("<div class=\"charts\">");
    Map<String, List<Outcome.Mapped>> bySurvey =
        matter.map().maps().stream()
            .filter(m -> m.basis().crossValidation().isPresent())
            .collect(
                Collectors.groupingBy(
                    m -> m.subject().surveyId(), java.util.TreeMap::new, Collectors.toList()));
    bySurvey.forEach(
        (survey, maps) -> {
          Optional<Calibration> c = matter.map().calibration(survey);
          html.append("<figure>")
              .append(CrossChart.of(maps, "read against predicted, survey " + survey))
              .append("<figcaption>")
              .append(Markup.text("Survey " + survey + c.map(ReportPage::words).orElse("")))
              .append("</figcaption></figure>\n");
        });
    if (bySurvey.isEmpty()) {
      html.append("<p>No map was kriged.</p>");
    }
    html.append("</div>\n");
  }

  private static String words(Calibration c) {
    return String.format(
        Locale.ROOT,
        ": %d predictions; coverage of the 90 %% interval %.0f %%, of the 50 %% interval %.0f %%;"
            + " mean error %.2f, root mean square %.2f %% by volume; MSDR %.2f (1 is right). Crosses"
            + " lie outside their 90 %% interval.",
        c.scores().predictions(),
        100 * c.scores().coverage(),
        100 * c.coverage50(),
        c.scores().meanError(),
        c.scores().rootMeanSquareError(),
        c.scores().meanSquaredDeviationRatio());
  }

  private void findings() {
    html.append("<h3>Findings of the review</h3>\n");
    List<Finding> told = new ArrayList<>(matter.findings());
    told.removeIf(f -> f.severity() == Severity.NOTE);
    if (matter.findings().isEmpty()) {
      html.append("<p>The readings were mapped as they stand; nothing was recorded beside them to")
          .append(" review them by.</p>\n");
      return;
    }
    if (told.isEmpty()) {
      html.append("<p>Nothing was doubted or rejected.</p>\n");
    }
    html.append("<ul class=\"lines\">");
    told.stream()
        .limit(MOST_FINDINGS)
        .forEach(f -> html.append("<li>").append(Markup.text(f.line())).append("</li>\n"));
    html.append("</ul>\n<p class=\"small\">")
        .append(matter.findings().size() - told.size())
        .append(" notes are left out; the command review lists them.</p>\n");
  }

  private void settings() {
    html.append("<h3>Settings in force</h3>\n<dl class=\"settings\">");
    record
        .parameters()
        .forEach(
            (name, value) ->
                html.append("<div><dt>")
                    .append(Markup.text(name))
                    .append("</dt><dd>")
                    .append(Markup.text(value instanceof String s ? s : Json.text(value)))
                    .append("</dd></div>"));
    html.append("</dl>\n");
  }

  private void inputs() {
    html.append("<h3>Inputs</h3>\n<div class=\"wide\"><table aria-label=\"inputs\"><thead><tr>")
        .append("<th scope=\"col\">File</th><th scope=\"col\">Bytes</th>")
        .append("<th scope=\"col\">SHA-256</th></tr></thead><tbody>");
    for (InputFile input : record.inputs()) {
      html.append("<tr>");
      cell(input.name());
      cell("" + input.bytes());
      html.append("<td><code>").append(input.sha256()).append("</code></td></tr>\n");
    }
    html.append("</tbody></table></div>\n<p class=\"small\">")
        .append(
            Markup.text(
                "Run "
                    + record.runId()
                    + ", "
                    + Provenance.ENGINE
                    + " "
                    + record.version()
                    + ", seed "
                    + record.seed()
                    + ". The same inputs, settings and seed give the same bytes."))
        .append("</p>\n");
  }
}
