package org.mottle.export.report;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.evenness.Evenness;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MapVariogram;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Standing;
import org.mottle.engine.mapping.Stations;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.Severity;
import org.mottle.engine.water.WaterWanted;
import org.mottle.engine.water.Watering;
import org.mottle.export.record.Provenance;
import org.mottle.export.style.Ramp;

/** One green of one survey on one sheet of paper, in eight sections that are always the same. */
final class GreenSheet {
  static final List<String> SECTIONS =
      List.of(
          "What was asked, and of what",
          "Dry and wet ground",
          "How sure the map is",
          "Patches",
          "How even the moisture is",
          "Against the last like survey",
          "What this survey cannot say",
          "Limits, and who decides");

  private static final int MOST_ROWS = 6;

  private final ReportMatter matter;
  private final GreenLook look;
  private final String id;
  private final Scales scales;
  private final StringBuilder html = new StringBuilder();

  private GreenSheet(ReportMatter matter, int index, Scales scales) {
    this.matter = matter;
    this.look = matter.visits().get(index);
    this.id = id(index);
    this.scales = scales;
  }

  /** Anchor of the sheet of a visit. */
  static String id(int index) {
    return "sheet-" + (index + 1);
  }

  /**
   * @param index of the visit
   * @param scales one for all sheets, so that they can be laid side by side
   */
  static String of(ReportMatter matter, int index, Scales scales) {
    return new GreenSheet(matter, index, scales).written();
  }

  private String written() {
    html.append("<article class=\"sheet\" id=\"").append(id).append("\">\n<h2>Green ");
    html.append(name(subject())).append("</h2>\n");
    section(0, question());
    look.mapped().ifPresentOrElse(this::mapped, () -> notMapped((Outcome.NoMap) look.outcome()));
    html.append("</article>\n");
    return html.toString();
  }

  private void mapped(Outcome.Mapped map) {
    html.append("<div class=\"pair\">");
    section(1, classes(map));
    section(2, doubt(map));
    html.append("</div>\n");
    section(3, patches(map));
    html.append("<div class=\"pair\">");
    section(4, evenness(map.evenness()));
    section(5, compared());
    html.append("</div>\n");
    section(6, list(unsaid(map)));
    section(7, limits());
  }

  private void notMapped(Outcome.NoMap none) {
    section(
        1,
        "<p class=\"mind\"><strong>No map:</strong> "
            + Markup.text(none.why().reason())
            + ". What would change it: "
            + Markup.text(none.why().remedy())
            + ".</p>");
    section(2, "<p>Without a map there is nothing to be sure of.</p>");
    section(3, "<p>None can be outlined.</p>");
    section(
        4,
        none.summary().n() == 0
            ? "<p>No reading could be used.</p>"
            : String.format(
                Locale.ROOT,
                "<p>Of the readings alone: %d stations, mean %.1f %%, SD %.1f %%.</p>",
                none.summary().n(),
                none.summary().mean(),
                none.summary().sd()));
    section(5, compared());
    section(6, list(concat(none.remarks(), missingConditions())));
    section(7, limits());
  }

  private GreenSurvey subject() {
    return look.outcome().subject();
  }

  /** Id and name of a green; isolated, since a name may run from right to left. */
  static String name(GreenSurvey subject) {
    String id = "<bdi>" + Markup.text(subject.green().id()) + "</bdi>";
    String name = subject.green().name();
    return name.isEmpty() ? id : id + ", <bdi>" + Markup.text(name) + "</bdi>";
  }

  private void section(int number, String body) {
    html.append("<section><h3><span class=\"no\">")
        .append(number + 1)
        .append("</span> ")
        .append(SECTIONS.get(number))
        .append("</h3>\n")
        .append(body)
        .append("</section>\n");
  }

  private String question() {
    StringBuilder text = new StringBuilder("<dl class=\"facts\">");
    fact(
        text,
        "Question",
        subject()
            .band()
            .map(b -> "Where is the ground below or above the band? Band: " + b.statement())
            .orElse("Where is the ground wetter and drier? No band was given, so no classes"));
    fact(
        text,
        "Survey",
        (subject().surveyId().isEmpty() ? "" : subject().surveyId() + ", ")
            + look.lastRead().map(GreenSheet::time).orElse("time not recorded")
            + ", "
            + look.outcome().stations().stations().size()
            + " stations");
    fact(text, "Water before", look.record().history().label() + water());
    fact(text, "Grade", grade());
    look.mapped().ifPresent(m -> fact(text, "Good for", words(m.standing())));
    return text + "</dl>";
  }

  private String water() {
    return look.record()
        .conditions()
        .map(
            c -> {
              List<String> parts = new ArrayList<>();
              if (!Double.isNaN(c.water().rainHours())) {
                parts.add(
                    String.format(
                        Locale.ROOT,
                        "rain %s%.0f h before",
                        Double.isNaN(c.water().rainMm())
                            ? ""
                            : String.format(Locale.ROOT, "of %.0f mm ", c.water().rainMm()),
                        c.water().rainHours()));
              }
              if (!Double.isNaN(c.water().irrigationHours())) {
                parts.add(
                    String.format(
                        Locale.ROOT, "irrigation %.0f h before", c.water().irrigationHours()));
              }
              return parts.isEmpty() ? "" : " (" + String.join(", ", parts) + ")";
            })
        .orElse("");
  }

  private String grade() {
    return look.record()
        .grade()
        .map(
            g ->
                g.letter().name()
                    + ", "
                    + g.letter().meaning()
                    + (g.why().isEmpty() ? "" : ": " + String.join("; ", g.why()))
                    + (g.raise().isEmpty() ? "" : ". To raise it: " + String.join("; ", g.raise())))
        .orElse("not graded: the readings were not reviewed (give --conditions)");
  }

  static String time(OffsetDateTime t) {
    return String.format(
        Locale.ROOT, "%s, last reading %02d:%02d", t.toLocalDate(), t.getHour(), t.getMinute());
  }

  private static void fact(StringBuilder text, String what, String words) {
    text.append("<div><dt>")
        .append(what)
        .append("</dt><dd>")
        .append(Markup.text(words))
        .append("</dd></div>");
  }

  private static String words(Standing standing) {
    return switch (standing) {
      case PATCHES -> "classes, probabilities and patches with an outline";
      case PROBABILITIES -> "classes and probabilities; an outline would not be honest";
      case INDICATIVE -> "an indication only: too few readings to act on without reading again";
      case NONE -> "no map";
    };
  }

  private String classes(Outcome.Mapped map) {
    SheetMap drawing = SheetMap.of(id + "-a", label("classes", map), map);
    boolean classes = !map.parts().zones().isEmpty();
    if (classes) {
      drawing.zones(map.parts().zones());
    } else {
      drawing.raster(map.surface().mean(), scales.moisture());
    }
    drawing.stations(map.stations());
    map.parts().spots().forEach(drawing::spot);
    map.parts().patches().forEach(drawing::patch);
    StringBuilder caption = new StringBuilder();
    if (classes) {
      for (Zone zone : map.parts().zones()) {
        caption.append(ClassLook.of(zone.cls()).key().replace("</span>", ""));
        caption.append(' ').append(Words.area(zone.areaM2())).append(" m²</span> ");
      }
    } else {
      caption.append(RasterPicture.scale(scales.moisture(), "% by volume"));
    }
    caption.append("<br>Dots: ").append(stations(map)).append(", in % by volume");
    if (!map.parts().patches().isEmpty()) {
      caption.append("; dashed with a number: patches");
    }
    if (!map.parts().spots().isEmpty()) {
      caption.append("; triangles: seen, size unknown (point up dry, point down wet)");
    }
    return figure(drawing.done(), caption + ". " + when() + ".");
  }

  private String stations(Outcome.Mapped map) {
    return map.stations().stations().size() + " stations (n)";
  }

  private String when() {
    return look.lastRead().map(t -> t.toLocalDate().toString()).orElse("Date not recorded");
  }

  private String label(String what, Outcome.Mapped map) {
    return "map of "
        + what
        + ", "
        + map.subject().label()
        + ", "
        + map.stations().stations().size()
        + " stations, north up";
  }

  private String doubt(Outcome.Mapped map) {
    if (Double.isNaN(map.surface().medianSd())) {
      return "<p>Not known: inverse distance has no standard deviation. Read more stations and krige"
          + " to know it.</p>";
    }
    String drawing =
        SheetMap.of(id + "-b", label("doubt (standard deviation)", map), map)
            .raster(map.surface().sd(), scales.doubt())
            .stations(new Stations(List.of(), List.of()))
            .done();
    return figure(
        drawing,
        RasterPicture.scale(scales.doubt(), "% by volume")
            + String.format(
                Locale.ROOT,
                "SD of the map's error, median %.1f %%: two times in three the ground is within it,"
                    + " nine in ten within %.1f %%. Darker is less sure. %s, %s.",
                map.surface().medianSd(),
                1.645 * map.surface().medianSd(),
                stations(map),
                when()));
  }

  private static String figure(String svg, String caption) {
    return "<figure>" + svg + "<figcaption>" + caption + "</figcaption></figure>";
  }

  private String patches(Outcome.Mapped map) {
    StringBuilder text = new StringBuilder();
    if (map.parts().patches().isEmpty()) {
      text.append("<p>None could be outlined.</p>");
    } else {
      text.append(
          "<div class=\"wide\"><table aria-label=\"patches\"><thead><tr><th scope=\"col\">Patch</th>"
              + "<th scope=\"col\">Area, m²</th><th scope=\"col\">Chance that it is there</th>"
              + "<th scope=\"col\">Water, one pass</th><th scope=\"col\">Check next</th></tr></thead>"
              + "<tbody>");
      map.parts().patches().stream()
          .limit(MOST_ROWS)
          .forEach(p -> text.append(row(cells(map, p, matter))));
      text.append("</tbody></table></div>");
      int more = map.parts().patches().size() - MOST_ROWS;
      if (more > 0) {
        text.append("<p class=\"small\">And ").append(more).append(" smaller; layer patch.</p>");
      }
    }
    if (!map.parts().spots().isEmpty()) {
      text.append("<p class=\"small\">Seen, but not to be outlined: ");
      text.append(Markup.text(spots(map))).append(".</p>");
    }
    return text.toString();
  }

  private static String spots(Outcome.Mapped map) {
    List<String> names = new ArrayList<>();
    for (Spot s : map.parts().spots()) {
      names.add(
          s.kind().code()
              + " by station "
              + station(map, s.station())
              + " ("
              + Words.chance(s.pExist())
              + ")");
    }
    int more = names.size() - MOST_ROWS;
    return String.join(", ", names.subList(0, Math.min(names.size(), MOST_ROWS)))
        + (more > 0 ? " and " + more + " more" : "")
        + "; size unknown, re-read round each at 1 m";
  }

  private static String station(Outcome.Mapped map, int index) {
    String name = map.stations().stations().get(index).name();
    return name.isEmpty() ? "of row " + map.stations().stations().get(index).row() : name;
  }

  private static String row(List<String> cells) {
    StringBuilder row = new StringBuilder("<tr>");
    cells.forEach(c -> row.append("<td>").append(Markup.text(c)).append("</td>"));
    return row + "</tr>";
  }

  /** Patch, area, chance, litres, what to check: for the sheet and for a click on the map. */
  static List<String> cells(Outcome.Mapped map, Patch patch, ReportMatter matter) {
    return List.of(
        patch.number() + ", " + patch.kind().code(),
        patch
            .likelihood()
            .map(l -> Words.area(l.areaExpected()) + between(l.areaLow(), l.areaHigh()))
            .orElse(Words.area(patch.areaM2())),
        patch.likelihood().map(l -> Words.chance(l.pExist())).orElse("not known"),
        litres(map, patch),
        next(map, patch, matter));
  }

  private static String between(double low, double high) {
    return ", between " + Words.area(low) + " and " + Words.area(high);
  }

  private static String litres(Outcome.Mapped map, Patch patch) {
    if (patch.kind() != ZoneClass.DRY) {
      return "none: wet";
    }
    if (map.watering() instanceof Watering.Wanted wanted) {
      return wanted.patches().stream()
          .filter(p -> p.patch() == patch.number())
          .map(Watering.PatchWater::wanted)
          .map(WaterWanted::litres)
          .map(
              l ->
                  Words.litres(l.best())
                      + " L, "
                      + Words.litres(l.low())
                      + " to "
                      + Words.litres(l.high()))
          .findFirst()
          .orElse("not known");
    }
    return "not worked out";
  }

  private static String next(Outcome.Mapped map, Patch patch, ReportMatter matter) {
    if (patch.kind() == ZoneClass.WET) {
      return "Probe it again 24 to 48 h after soaking rain; if still wet, consider a core before"
          + " anything is dug";
    }
    Optional<String> head =
        matter.heads().stream()
            .filter(h -> h.greenId().equals(map.subject().green().id()))
            .filter(h -> h.surveyId().equals(map.subject().surveyId()))
            .filter(
                h ->
                    h.verdict() == HeadFinding.Verdict.LOOK
                        || h.verdict() == HeadFinding.Verdict.CONSIDER)
            .map(h -> "; " + h.verdict().label() + " (" + h.head().id() + ") while it runs")
            .findFirst();
    return "Look and probe before watering; a water drop on a core tells whether it rewets"
        + head.orElse("");
  }

  private static String evenness(Evenness even) {
    StringBuilder text = new StringBuilder("<dl class=\"figures\">");
    figure(text, "Mean, % by volume", number("%.1f", even.mean()));
    figure(text, "SD of the ground", number("%.1f", even.sd()));
    figure(text, "Coefficient of variation", number("%.0f %%", even.variationPct()));
    figure(text, "Driest quarter over mean", number("%.2f", even.lowQuarter()));
    figure(text, "In band", percent(even.bandShare()));
    return text
        + "</dl><p class=\"small\">Of moisture in the ground, in brackets nine times in ten; nothing"
        + " is said of how evenly water is applied.</p>";
  }

  private static void figure(StringBuilder text, String what, String figure) {
    text.append("<div><dt>").append(what).append("</dt><dd>").append(figure).append("</dd></div>");
  }

  private static String percent(Interval share) {
    return share.known() ? Words.percent(share) : "not known";
  }

  static String number(String format, Interval figure) {
    if (!figure.known()) {
      return "not known";
    }
    String best = String.format(Locale.ROOT, format, figure.best());
    return Double.isNaN(figure.low())
        ? best
        : best
            + String.format(
                Locale.ROOT,
                " (" + format.replace(" %%", "") + " to " + format.replace(" %%", "") + ")",
                figure.low(),
                figure.high());
  }

  private String compared() {
    Optional<LastLike> last = LastLike.of(look, matter.visits());
    if (last.isEmpty() || look.mapped().isEmpty()) {
      String why = look.like().why();
      return "<p>"
          + (why.isEmpty()
              ? "This run holds no earlier survey of this green that is like it: the same water"
                  + " before it, the same rods, like grades."
              : "Not compared: " + Markup.text(why) + ".")
          + "</p>";
    }
    GreenLook before = last.get().before();
    Evenness then = before.mapped().orElseThrow().evenness();
    Evenness now = look.mapped().orElseThrow().evenness();
    StringBuilder text = new StringBuilder("<p>With ");
    text.append(Markup.text(before.outcome().subject().surveyId()))
        .append(before.lastRead().map(t -> " of " + t.toLocalDate()).orElse(""))
        .append(":</p><dl class=\"figures\">");
    figure(
        text,
        "Mean, % by volume",
        signed("%+.1f", LastLike.difference(now.mean(), then.mean()), 1));
    figure(
        text,
        "Dry share",
        signed("%+.0f", LastLike.difference(now.dryShare(), then.dryShare()), 100));
    figure(
        text,
        "Wet share",
        signed("%+.0f", LastLike.difference(now.wetShare(), then.wetShare()), 100));
    return text
        + "</dl><p class=\"small\">Later less earlier (shares in points of per cent), as if the two"
        + " maps erred independently; the command season maps both together.</p>";
  }

  private static String signed(String format, Interval change, double times) {
    return change.known()
        ? String.format(
            Locale.ROOT,
            format + " (" + format + " to " + format + ")",
            times * change.best(),
            times * change.low(),
            times * change.high())
        : "not known";
  }

  private List<String> unsaid(Outcome.Mapped map) {
    List<String> lines = new ArrayList<>();
    map.parts()
        .marks()
        .map(Marks::smallest)
        .ifPresent(
            s ->
                lines.add(
                    String.format(
                        Locale.ROOT,
                        "Patches under about %s m², or narrower than %.1f m, could not be outlined"
                            + " (stations %.1f m apart).",
                        Words.area(s.areaM2()),
                        s.widthM(),
                        s.spacingM())));
    if (map.standing() != Standing.PATCHES) {
      lines.add("Standing: " + words(map.standing()) + ".");
    }
    map.basis()
        .variogram()
        .flatMap(MapVariogram::pooled)
        .filter(v -> v.evidence().borrowed())
        .ifPresent(
            v ->
                lines.add(
                    "Borrowed variogram: its pool is small, so an assumed range and nugget enter."));
    map.remarks().forEach(r -> lines.add(sentence(r)));
    if (map.watering() instanceof Watering.NotWorkedOut not && subject().band().isPresent()) {
      lines.add(sentence("no litres: " + not.why()));
    }
    lines.addAll(missingConditions());
    long doubted =
        matter.findings().stream()
            .filter(this::isMine)
            .filter(f -> f.severity() != Severity.NOTE)
            .count();
    if (doubted > 0) {
      lines.add(
          doubted
              + (doubted == 1 ? " finding casts" : " findings cast")
              + " doubt on readings of this visit; see the appendix.");
    }
    return lines;
  }

  private boolean isMine(Finding f) {
    return f.surveyId().equals(subject().surveyId())
        && (f.greenId().isEmpty() || f.greenId().equals(subject().green().id()));
  }

  private List<String> missingConditions() {
    if (look.record().conditions().isEmpty()) {
      return List.of("No conditions were recorded: water before, rods, weather are not known.");
    }
    List<String> missing = new ArrayList<>();
    var water = look.record().conditions().get().water();
    if (Double.isNaN(water.rainHours())) {
      missing.add("last rain");
    }
    if (Double.isNaN(water.irrigationHours()) && water.irrigationMm() != 0) {
      missing.add("last irrigation");
    }
    if (Double.isNaN(water.et0MmDay())) {
      missing.add("evapotranspiration");
    }
    return missing.isEmpty()
        ? List.of()
        : List.of("Not recorded: " + String.join(", ", missing) + ".");
  }

  private static String sentence(String words) {
    return words.isEmpty()
        ? words
        : Character.toUpperCase(words.charAt(0))
            + words.substring(1)
            + (words.endsWith(".") ? "" : ".");
  }

  private static String list(List<String> lines) {
    if (lines.isEmpty()) {
      return "<p>Nothing known to be missing.</p>";
    }
    StringBuilder text = new StringBuilder("<ul>");
    lines.forEach(l -> text.append("<li>").append(Markup.text(l)).append("</li>"));
    return text + "</ul>";
  }

  private static List<String> concat(List<String> a, List<String> b) {
    List<String> all = new ArrayList<>();
    a.forEach(r -> all.add(sentence(r)));
    all.addAll(b);
    return all;
  }

  private static String limits() {
    return "<p>"
        + Markup.text(Provenance.DISCLAIMER)
        + " A probe reads a few litres of soil: probe a place before acting on it. Litres are an upper"
        + " guide for one pass; too much water harms as too little does. Before anything is dug, know"
        + " where pipes and cables lie.</p>";
  }

  /** Scales common to all sheets. */
  record Scales(Ramp moisture, Ramp doubt) {}
}
