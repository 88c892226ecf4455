package org.mottle.export.season;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.drainage.DrainageFinding;
import org.mottle.engine.drainage.Hypothesis;
import org.mottle.engine.drainage.HypothesisScore;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.GroundTrend;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.season.PersistenceOutcome;
import org.mottle.engine.season.PersistentPlace;
import org.mottle.engine.season.SurveyedMap;
import org.mottle.engine.season.TemporalStability;
import org.mottle.engine.terrain.Depression;
import org.mottle.engine.terrain.GreenTerrain;
import org.mottle.export.report.Page;
import org.mottle.export.report.RasterPicture;
import org.mottle.export.report.Words;
import org.mottle.export.season.SeasonWork.GreenSeason;
import org.mottle.export.style.Ramp;

/** The season on one page: per green a timeline, its surveys on one scale, what changed and why. */
final class SeasonPage {
  private static final double MOST_CHANGE = 11;
  private static final double PIXELS = 2.4;

  private final SeasonWork work;
  private final Map<String, GreenTerrain> terrain;
  private final Ramp moisture;

  private final Optional<GroundTrend> trend;
  private final List<DrainageFinding> findings;
  private final List<Repaired> repaired;

  private SeasonPage(
      SeasonWork work,
      Map<String, GreenTerrain> terrain,
      Optional<GroundTrend> trend,
      List<DrainageFinding> findings,
      List<Repaired> repaired) {
    this.work = work;
    this.trend = trend;
    this.findings = findings;
    this.repaired = repaired;
    this.terrain = terrain;
    double[] values =
        work.greens().stream()
            .flatMap(g -> g.maps().stream())
            .flatMapToDouble(m -> Arrays.stream(m.map().surface().mean().values()))
            .filter(v -> !Double.isNaN(v))
            .sorted()
            .toArray();
    double low = values.length == 0 ? 0 : values[(int) (0.01 * (values.length - 1))];
    double high = values.length == 0 ? 45 : values[(int) (0.99 * (values.length - 1))];
    this.moisture = Ramp.moisture(5 * Math.floor(low / 5), 5 * Math.ceil(high / 5 + 1e-9));
  }

  static String of(
      SeasonWork work,
      Map<String, GreenTerrain> terrain,
      Optional<GroundTrend> trend,
      List<DrainageFinding> findings,
      List<Repaired> repaired) {
    return new SeasonPage(work, terrain, trend, findings, repaired).page();
  }

  private String page() {
    Page page = new Page("Through the season");
    page.mind(
        List.of(
            "Evidence, not verdicts. Drainage works, grading and discharge are designed by licensed"
                + " professionals, with permits where they are asked for.",
            "Before a hole deeper than the probe have buried services located: irrigation mains,"
                + " control cable, power, gas."));
    page.paragraph(
        work.season().share().words()
            + ". All maps stand on one scale. Letters: R after rain, I after irrigation, D dry days.");
    page.drawing("mean moisture", RasterPicture.scale(moisture, "% by volume"));
    page.drawing(
        "change, brown drier, green wetter",
        RasterPicture.scale(Ramp.change(MOST_CHANGE), "% by volume"));
    trend.ifPresent(
        t -> page.paragraph("Over all greens " + t.words() + ". The maps do not use it."));
    digest(page);
    if (!repaired.isEmpty()) {
      page.heading("Did the repair work?");
      repaired.forEach(r -> page.paragraph(r.line() + "."));
    }
    work.greens().forEach(g -> green(page, g));
    return page.done();
  }

  /** Where to look first: the wet places of the course, the clearest and largest first. */
  private void digest(Page page) {
    page.heading("Where to look first");
    if (findings.isEmpty()) {
      page.paragraph(
          "No ground stays wet after rain by these surveys, or there are fewer than two surveys after"
              + " rain that can be compared.");
      return;
    }
    page.table(
        "places that stay wet",
        "Green, place",
        "#Area",
        "Most likely by the evidence",
        "#Chance",
        "What to do first");
    findings.stream()
        .sorted(
            Comparator.comparing((DrainageFinding f) -> f.suggested().isEmpty())
                .thenComparing(f -> -best(f).probability() * f.place().areaM2()))
        .forEach(
            f ->
                page.row(
                    f.place().greenId() + ", " + f.place().placeId(),
                    "#" + Words.area(f.place().areaM2()) + " m²",
                    f.suggested()
                        .map(Hypothesis::label)
                        .orElse("insufficient evidence; first " + best(f).hypothesis().label()),
                    String.format(Locale.ROOT, "#%.2f", best(f).probability()),
                    f.suggested().map(Hypothesis::test).orElse(f.next().text())));
    page.end();
  }

  /** The cause that is best supported, be it likely or not. */
  private static HypothesisScore best(DrainageFinding f) {
    return f.hypotheses().stream()
        .filter(h -> h.hypothesis() != Hypothesis.NONE)
        .findFirst()
        .orElseThrow();
  }

  private void green(Page page, GreenSeason g) {
    String name = g.green().name();
    page.heading("Green " + g.green().id() + (name.isEmpty() ? "" : ", " + name));
    page.drawing(
        "mean of the green with its 90 % interval",
        Timeline.of(g.maps(), moisture.low(), moisture.high()));
    for (SurveyedMap m : g.maps()) {
      page.drawing(
          m.surveyId() + ", " + m.history().label(),
          RasterPicture.of(
              m.map().surface().mean(),
              moisture,
              "mean moisture of green " + g.green().id() + ", " + m.surveyId(),
              PIXELS));
    }
    changes(page, g);
    page.paragraph("After rain: " + persistent(g.drainage(), true));
    page.paragraph("With other water: " + persistent(g.coverage(), false));
    if (g.stability() instanceof TemporalStability s) {
      page.paragraph(
          "Station "
              + s.representativeStation().station()
              + String.format(
                  Locale.ROOT,
                  " stands best for the mean of the green: it reads %+.0f %% of it on average, with a"
                      + " standard deviation of %.0f %% over %d surveys.",
                  100 * s.representativeStation().mean(),
                  100 * s.representativeStation().sd(),
                  s.representativeStation().times()));
    }
    ground(page, g);
    findings.stream()
        .filter(f -> f.place().greenId().equals(g.green().id()))
        .forEach(f -> finding(page, f));
  }

  private static void finding(Page page, DrainageFinding f) {
    page.paragraph(
        "Wet place "
            + f.place().placeId()
            + ", "
            + Words.area(f.place().areaM2())
            + " m²: "
            + f.why()
            + ".");
    page.table(
        "hypotheses of place " + f.place().placeId(),
        "Hypothesis",
        "#Chance",
        "#Score",
        "Speaks for it",
        "Speaks against it");
    for (HypothesisScore h : f.hypotheses()) {
      page.row(
          h.hypothesis().label(),
          String.format(Locale.ROOT, "#%.2f", h.probability()),
          String.format(Locale.ROOT, "#%+.1f", h.score()),
          SeasonRows.lines(h.speaksFor()),
          SeasonRows.lines(h.against()));
    }
    page.end();
    page.paragraph("Next: " + f.next().text() + ".");
    page.small(
        "Scores are sums of log evidence ratios against none of these. Not known: "
            + String.join("; ", f.notKnown())
            + ".");
    page.small(String.join("; ", f.next().cautions()) + ".");
  }

  private void changes(Page page, GreenSeason g) {
    if (g.pairs().isEmpty()) {
      page.paragraph("One survey only: nothing to compare; read the same stations again.");
      return;
    }
    for (Pair pair : g.pairs()) {
      pair.change().value().ifPresent(c -> change(page, pair, c));
    }
    page.table(
        "changes",
        "From, to",
        "#Change of the mean, % by volume",
        "#Surely drier",
        "#Surely wetter",
        "#Dries, % a day",
        "#Turf draws, % a day",
        "What is missing");
    for (Pair pair : g.pairs()) {
      page.row(
          pair.before() + ", " + pair.after(),
          "#" + pair.change().value().map(SeasonPage::whole).orElse("–"),
          "#" + pair.change().value().map(c -> surely(c, false)).orElse("–"),
          "#" + pair.change().value().map(c -> surely(c, true)).orElse("–"),
          "#"
              + pair.dried()
                  .map(
                      d ->
                          String.format(
                              Locale.ROOT,
                              "%.2f (%.2f to %.2f)",
                              d.whole().best(),
                              d.whole().low(),
                              d.whole().high()))
                  .orElse("–"),
          "#"
              + pair.dried()
                  .filter(d -> !Double.isNaN(d.etRate()))
                  .map(d -> String.format(Locale.ROOT, "%.2f", d.etRate()))
                  .orElse("–"),
          pair.change()
              .refusal()
              .map(Object::toString)
              .or(() -> pair.dryDown().flatMap(d -> d.refusal()).map(r -> "no rate: " + r.reason()))
              .orElse(""));
    }
    page.end();
    page.small(
        "Surely: with a chance of 8 in 10 or more by more than the change that matters. What persists"
            + " from survey to survey is reckoned with, so that a lasting pattern is not taken for"
            + " change.");
  }

  private void change(Page page, Pair pair, Change c) {
    page.drawing(
        pair.before() + " to " + pair.after(),
        RasterPicture.of(
            c.mean(),
            Ramp.change(MOST_CHANGE),
            "change of green " + pair.greenId() + ", " + pair.label(),
            PIXELS));
  }

  private static String whole(Change c) {
    var i = c.whole().interval();
    return String.format(Locale.ROOT, "%+.1f (%+.1f to %+.1f)", i.best(), i.low(), i.high());
  }

  private static String surely(Change c, boolean wetter) {
    return String.format(
        Locale.ROOT, "%.0f %%", 100 * SeasonRows.shareAbove(wetter ? c.pRise() : c.pFall(), 0.8));
  }

  private static String persistent(PersistenceOutcome outcome, boolean wetOnly) {
    if (outcome instanceof PersistenceOutcome.Refused refused) {
      return refused.why().toString() + ".";
    }
    Persistence p = (Persistence) outcome;
    String wet = places(p.wet().places(), "wet");
    String dry = wetOnly ? "" : "; " + places(p.dry().places(), "dry");
    return "over " + p.surveys().size() + " surveys " + wet + dry + ".";
  }

  private static String places(List<PersistentPlace> places, String kind) {
    if (places.isEmpty()) {
      return "no ground stays " + kind;
    }
    double area = places.stream().mapToDouble(PersistentPlace::areaM2).sum();
    return Words.area(area)
        + " m² stay "
        + kind
        + " in more than half of them with a chance of 8 in 10"
        + (places.size() == 1 ? ", in one place" : ", in " + places.size() + " places");
  }

  private void ground(Page page, GreenSeason g) {
    GreenTerrain t = terrain.get(g.green().id());
    if (t == null) {
      return;
    }
    List<Depression> hollows = t.hollowsOn(g.green().outline());
    page.paragraph(
        String.format(
                Locale.ROOT,
                "The ground: noise of a height %.0f mm, smoothed by %.1f m; ",
                1000 * t.noiseSdM(),
                t.smoothedM())
            + (hollows.isEmpty()
                ? "no hollow that surface water cannot leave."
                : hollows.stream()
                        .map(
                            h ->
                                String.format(
                                    Locale.ROOT,
                                    "a hollow of %.0f mm, %s m², %.0f L",
                                    1000 * h.deepestM(),
                                    Words.area(h.areaM2()),
                                    h.volumeLitres()))
                        .reduce((a, b) -> a + "; " + b)
                        .orElseThrow()
                    + "."));
    if (!t.surrounds().words().isEmpty()) {
      page.small(t.surrounds().words() + ".");
    }
  }
}
