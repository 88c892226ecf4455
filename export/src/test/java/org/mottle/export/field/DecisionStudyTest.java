package org.mottle.export.field;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.CourseGenerator;
import org.mottle.demo.site.Build;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.engine.evenness.EvennessMeter;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.WaterMeter;
import org.mottle.engine.water.Watering;

/**
 * Litres and evenness against the truth of invented courses, from the files alone: read, placed,
 * reviewed, mapped. Over many seeds by {@code -Dmottle.decision.seeds=1-20}; the figures are in
 * docs/water.md.
 */
class DecisionStudyTest {
  @TempDir Path folder;

  /** Counts of one kind of figure. */
  private static final class Tally {
    private int all;
    private int held;
    private double ratios;

    void add(Interval told, double truth) {
      all++;
      held += told.holds(truth) ? 1 : 0;
      ratios += told.best() / truth;
    }

    double held() {
      return held / (double) all;
    }

    double ratio() {
      return ratios / all;
    }
  }

  private final Map<String, Tally> tallies = new TreeMap<>();

  private Tally tally(String name) {
    return tallies.computeIfAbsent(name, k -> new Tally());
  }

  @Test
  void litresAndEvennessHoldTheTruthAsOftenAsTheySay() throws IOException {
    String[] seeds = System.getProperty("mottle.decision.seeds", "1-2").split("-");
    int from = Integer.parseInt(seeds[0]);
    int to = Integer.parseInt(seeds[seeds.length - 1]);
    for (int seed = from; seed <= to; seed++) {
      course(seed);
    }
    tallies.forEach(
        (name, t) ->
            System.out.printf(
                Locale.ROOT,
                "seeds %d-%d: %s: %d, %.3f within their 90 %% interval, told over true %.3f%n",
                from,
                to,
                name,
                t.all,
                t.held(),
                t.ratio()));
    boolean many = to - from + 1 >= 20;
    assertThat(tally("litres of a patch").held()).isBetween(many ? 0.85 : 0.75, many ? 0.95 : 1);
    assertThat(tally("sd of the ground").ratio()).isBetween(many ? 0.95 : 0.9, many ? 1.05 : 1.1);
    assertThat(tally("share in band").held()).isGreaterThan(0.75);
  }

  private void course(long seed) throws IOException {
    FieldWork work = PlantedDefectsTest.work(seed, folder);
    List<GreenSurvey> subjects = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      String id = v.visit().surveyId();
      if (id.equals("S6")) {
        continue;
      }
      Build build =
          v.visit().green().id().equals("G7") ? Build.PUSH_UP_SOIL : Build.SAND_OVER_GRAVEL;
      subjects.add(
          new GreenSurvey(
              v.visit().green(),
              id,
              v.visit().readings(),
              Optional.of(band(Survey.valueOf(id), build)),
              v.obstacle(),
              work.errors(v)));
    }
    SurveyMap map = new SurveyMapper(MappingSettings.defaults()).map(subjects, 2, Progress.NONE);
    var season = CourseGenerator.generate(seed).season();
    for (Outcome.Mapped m : map.maps()) {
      compare(m, season.truth(m.subject().green().id()));
    }
  }

  /** After rain a band for drainage; in heat one for saving water; else ball roll. */
  private static TargetBand band(Survey survey, Build build) {
    double fc = build.fieldCapacityPct();
    double wp = build.wiltOnsetPct();
    return switch (survey) {
      case S1, S5 -> TargetBand.of(fc - 5, fc + 1);
      case S4 -> TargetBand.of(wp + 0.25 * (fc - wp), wp + 0.55 * (fc - wp));
      default -> TargetBand.of(wp + 0.35 * (fc - wp), wp + 0.65 * (fc - wp));
    };
  }

  private void compare(Outcome.Mapped m, GreenTruth truth) {
    GreenCells cells = m.surface().cells();
    Survey survey = Survey.valueOf(m.subject().surveyId());
    GreenSite site = truth.green();
    Point centre = site.world(0, 0);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] pct = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      pct[i] = truth.soilPct(survey, x[i] - centre.x(), y[i] - centre.y());
    }
    CoveredGround green = CoveredGround.of(cells, m.subject().green().outline());
    var even =
        new EvennessMeter(green, m.subject().green().rootZone().wiltOnsetPct(), m.subject().band())
            .of(pct);
    tally("mean").add(m.evenness().mean(), even.mean());
    tally("sd of the ground").add(m.evenness().sd(), even.sd());
    tally("driest quarter").add(m.evenness().lowQuarter(), even.lowQuarter());
    tally("driest quarter, available")
        .add(m.evenness().lowQuarterAvailable(), even.lowQuarterAvailable());
    tally("uniformity").add(m.evenness().uniformityPct(), even.uniformityPct());
    tally("share in band").add(m.evenness().bandShare(), even.bandShare());
    Watering.Wanted wanted = (Watering.Wanted) m.watering();
    WaterMeter all =
        WaterMeter.below(
            m.subject().band().orElseThrow().lowPct(),
            green,
            wanted.deficit(),
            wanted.efficiency(),
            1);
    all.take(0, pct);
    tally("litres of all dry ground")
        .add(wanted.dryGround().litres(), all.wanted().litres().best());
    for (Patch patch : m.parts().patches()) {
      wanted.patches().stream()
          .filter(p -> p.patch() == patch.number())
          .forEach(
              p -> {
                WaterMeter own =
                    WaterMeter.of(
                        CoveredGround.of(cells, patch.geometry()),
                        wanted.deficit(),
                        wanted.efficiency(),
                        1);
                own.take(0, pct);
                tally("litres of a patch").add(p.wanted().litres(), own.wanted().litres().best());
              });
    }
  }
}
