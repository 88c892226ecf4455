package org.mottle.export.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.course.CourseOverview;
import org.mottle.engine.course.GreenLook;
import org.mottle.engine.course.Rank;
import org.mottle.engine.evenness.Evenness;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.water.RootWater;
import org.mottle.engine.water.Watering;
import org.mottle.engine.water.WateringSettings;

/** All greens of a course on one page: the oldest survey first, then the poorest grade. */
public final class CoursePage {
  private CoursePage() {}

  public static String of(
      CourseOverview course, List<HeadFinding> heads, WateringSettings settings) {
    Page page = new Page("The course at a glance");
    page.paragraph(
        "Each green by its last survey: the oldest survey first, of one day the poorest grade first."
            + " In brackets the interval that holds nine times in ten. A rank is given among like"
            + " visits only: one survey, the same water before it, the same rods, like grades.");
    page.table(
        "greens",
        "Green",
        "Survey, last reading",
        "Water before",
        "Grade",
        "#Dry share",
        "#Wet share",
        "#Water wanted",
        "#Rank dry / wet / water",
        "What is missing");
    course.greens().forEach(look -> green(page, look));
    page.end();
    page.small(
        "Dry and wet are below and above the band of the green. Water wanted: one"
            + " pass over all dry ground, losses included; an upper guide, not an order.");
    evenness(page, course);
    rootZone(page, course, settings);
    heads(page, heads);
    groups(page, course);
    return page.done();
  }

  private static void heads(Page page, List<HeadFinding> heads) {
    if (heads.isEmpty()) {
      return;
    }
    page.heading("Which head to look at");
    page.paragraph(
        "From the pattern of the moisture: after irrigation it shows how the ground is watered, after"
            + " rain how it drains. A head named here is one to watch while it runs, and to put catch"
            + " cans round; the figures do not say that it is at fault.");
    List<HeadFinding> named =
        heads.stream()
            .filter(
                h ->
                    h.verdict() == HeadFinding.Verdict.LOOK
                        || h.verdict() == HeadFinding.Verdict.CONSIDER)
            .toList();
    if (named.isEmpty()) {
      page.paragraph("No head is suggested.");
    } else {
      page.table(
          "heads", "Head", "Survey", "Suggested", "Chance", "Speaks for", "Speaks against", "Next");
      for (HeadFinding h : named) {
        page.row(
            h.head().id()
                + ", green "
                + h.greenId()
                + (h.head().station().isEmpty() ? "" : ", station " + h.head().station()),
            h.surveyId() + ", " + h.history().label(),
            h.verdict().label(),
            Words.chance(h.evidence().combined()),
            String.join("; ", h.words().speaksFor()),
            String.join("; ", h.words().against()),
            h.words().next());
      }
      page.end();
    }
    Map<String, List<String>> untold = new LinkedHashMap<>();
    for (HeadFinding h : heads) {
      if (h.verdict() == HeadFinding.Verdict.CANNOT_TELL) {
        untold
            .computeIfAbsent(
                h.surveyId() + ": " + String.join("; ", h.words().against()),
                k -> new ArrayList<>())
            .add(h.greenId());
      }
    }
    untold.forEach(
        (why, greens) ->
            page.small(
                "Cannot tell for "
                    + String.join(", ", greens.stream().distinct().toList())
                    + " in "
                    + why
                    + "."));
  }

  private static void rootZone(Page page, CourseOverview course, WateringSettings settings) {
    List<GreenLook> known =
        course.greens().stream().filter(l -> l.rootWater(settings).isPresent()).toList();
    if (known.isEmpty()) {
      return;
    }
    page.heading("Water in the root zone");
    page.paragraph(
        "By FAO-56 (Allen et al. 1998), wilt onset as the site knows it. What is readily available is"
            + " drawn without loss of growth; greens are often kept drier on purpose, so it informs"
            + " and sets no limit.");
    page.table(
        "water in the root zone",
        "Green",
        "#Available, mm",
        "#of it readily, mm",
        "#Lacking to field capacity, mm");
    for (GreenLook look : known) {
      RootWater water = look.rootWater(settings).orElseThrow();
      page.row(
          look.outcome().subject().green().id(),
          String.format(Locale.ROOT, "#%.0f", water.totalMm()),
          String.format(Locale.ROOT, "#%.0f", water.readilyMm()),
          "#" + figure("%.0f", water.depletionMm()));
    }
    page.end();
  }

  private static void green(Page page, GreenLook look) {
    Outcome outcome = look.outcome();
    String name = outcome.subject().green().name();
    page.row(
        outcome.subject().green().id() + (name.isEmpty() ? "" : ", " + name),
        outcome.subject().surveyId()
            + look.lastRead()
                .map(
                    t ->
                        String.format(
                            Locale.ROOT,
                            ", %s %02d:%02d",
                            t.toLocalDate(),
                            t.getHour(),
                            t.getMinute()))
                .orElse(", time not recorded"),
        look.record().history().label(),
        look.record().grade().map(g -> g.letter().name()).orElse("not graded"),
        "#" + Words.percent(look.dryShare()),
        "#" + Words.percent(look.wetShare()),
        "#" + (look.litres().known() ? Words.litres(look.litres()) : ""),
        "#"
            + rank(look.ranks().dry())
            + " / "
            + rank(look.ranks().wet())
            + " / "
            + rank(look.ranks().litres()),
        String.join("; ", missing(look)));
  }

  private static String rank(Optional<Rank> rank) {
    return rank.map(CoursePage::words).orElse("–");
  }

  /** Its place, and between which it may lie. */
  private static String words(Rank rank) {
    return rank.first() == rank.last()
        ? "" + rank.place()
        : rank.place() + " (" + rank.first() + "–" + rank.last() + ")";
  }

  private static List<String> missing(GreenLook look) {
    List<String> missing = new ArrayList<>();
    if (look.outcome() instanceof Outcome.NoMap none) {
      missing.add("no map: " + none.why());
    } else if (look.outcome() instanceof Outcome.Mapped map) {
      if (map.watering() instanceof Watering.NotWorkedOut not) {
        missing.add(not.why().toString());
      }
      if (!look.like().why().isEmpty()) {
        missing.add("not ranked: " + look.like().why());
      }
    }
    return missing;
  }

  private static void evenness(Page page, CourseOverview course) {
    page.heading("How even the moisture is");
    page.paragraph(
        "Of the ground itself, the errors of the readings taken out. None of these figures says how"
            + " evenly water is applied: that takes catch cans.");
    page.table(
        "evenness",
        "Green",
        "#Mean, % by volume",
        "#SD",
        "#Coefficient of variation",
        "#Driest quarter over mean",
        "#the same above wilt onset",
        "#Uniformity of moisture",
        "#In band",
        "#Rank, 1 least even");
    for (GreenLook look : course.greens()) {
      look.mapped()
          .ifPresent(
              map -> {
                Evenness even = map.evenness();
                page.row(
                    map.subject().green().id(),
                    "#" + figure("%.1f", even.mean()),
                    "#" + figure("%.1f", even.sd()),
                    "#" + figure("%.0f %%", even.variationPct()),
                    "#" + figure("%.2f", even.lowQuarter()),
                    "#" + figure("%.2f", even.lowQuarterAvailable()),
                    "#" + figure("%.0f %%", even.uniformityPct()),
                    "#" + Words.percent(even.bandShare()),
                    "#" + rank(look.ranks().uneven()));
              });
    }
    page.end();
  }

  private static String figure(String format, Interval figure) {
    if (!figure.known()) {
      return "not known";
    }
    String best = String.format(Locale.ROOT, format, figure.best());
    return Double.isNaN(figure.low())
        ? best
        : best
            + " ("
            + String.format(Locale.ROOT, format, figure.low())
            + " to "
            + String.format(Locale.ROOT, format, figure.high())
            + ")";
  }

  private static void groups(Page page, CourseOverview course) {
    Map<String, List<String>> groups = new LinkedHashMap<>();
    for (GreenLook look : course.greens()) {
      if (!look.like().label().isEmpty()) {
        groups
            .computeIfAbsent(look.like().label(), k -> new ArrayList<>())
            .add(look.outcome().subject().green().id());
      }
    }
    if (!groups.isEmpty()) {
      page.heading("Which greens were compared");
      groups.forEach((label, greens) -> page.paragraph(label + ": " + String.join(", ", greens)));
    }
  }
}
