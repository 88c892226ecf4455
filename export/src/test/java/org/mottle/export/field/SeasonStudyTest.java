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
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.season.Answer;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.DryDown;
import org.mottle.engine.season.Season;
import org.mottle.engine.survey.Conditions;

/**
 * Change and dry-down against the truth of invented courses, from the files alone. Over many seeds
 * by {@code -Dmottle.season.seeds=1-40}; the figures are in docs/methods.md.
 */
public class SeasonStudyTest {
  private static final double LIMIT_PCT = 2;
  private static final double TWO_SIDED_90 = 1.645;

  @TempDir Path folder;

  /** Cells of one kind of figure. */
  private static final class Tally {
    private final double[] told = new double[10];
    private final int[] happened = new int[10];
    private final int[] count = new int[10];
    private int held;
    private int all;
    private double squares;
    private double errors;
    private double sds;

    void probability(double p, boolean is) {
      int bin = (int) Math.min(9, p * 10);
      told[bin] += p;
      happened[bin] += is ? 1 : 0;
      count[bin]++;
    }

    void figure(double mean, double sd, double truth) {
      double z = (truth - mean) / sd;
      all++;
      held += Math.abs(z) < TWO_SIDED_90 ? 1 : 0;
      squares += z * z;
      errors += truth - mean;
      sds += sd;
    }

    double worst(int enough) {
      double worst = 0;
      for (int b = 0; b < 10; b++) {
        if (count[b] >= enough) {
          worst = Math.max(worst, Math.abs(told[b] - happened[b]) / count[b]);
        }
      }
      return worst;
    }

    String bins() {
      StringBuilder text = new StringBuilder();
      for (int b = 0; b < 10; b++) {
        text.append(
            String.format(
                Locale.ROOT,
                " %.2f:%.2f(%d)",
                told[b] / count[b],
                happened[b] / (double) count[b],
                count[b]));
      }
      return text.toString();
    }

    double held() {
      return held / (double) all;
    }
  }

  private final Map<String, Tally> tallies = new TreeMap<>();
  private final List<Interval> shares = new ArrayList<>();
  private final Map<String, Integer> refused = new TreeMap<>();

  private Tally tally(String name) {
    return tallies.computeIfAbsent(name, k -> new Tally());
  }

  @Test
  void changesHappenAsOftenAsTheyAreTold() throws IOException {
    String[] seeds = System.getProperty("mottle.season.seeds", "1").split("-");
    int from = Integer.parseInt(seeds[0]);
    int to = Integer.parseInt(seeds[seeds.length - 1]);
    for (int seed = from; seed <= to; seed++) {
      course(seed);
    }
    tallies.forEach(
        (name, t) ->
            System.out.printf(
                Locale.ROOT,
                "seeds %d-%d: %s: %d, %.3f within 90 %%, z² %.2f, bias %+.2f, sd %.2f; worst bin"
                    + " %.3f;%s%n",
                from,
                to,
                name,
                t.all,
                t.held(),
                t.squares / t.all,
                t.errors / t.all,
                t.sds / t.all,
                t.worst(1000),
                t.count[0] + t.count[9] > 0 ? t.bins() : ""));
    System.out.printf(
        Locale.ROOT,
        "share %.3f, from %.3f to %.3f, %.2f hold 0.6; refused %s%n",
        shares.stream().mapToDouble(Interval::best).average().orElseThrow(),
        shares.stream().mapToDouble(Interval::low).average().orElseThrow(),
        shares.stream().mapToDouble(Interval::high).average().orElseThrow(),
        shares.stream().filter(i -> i.holds(Survey.PERSISTENT_SHARE)).count()
            / (double) shares.size(),
        refused);
    boolean many = to - from + 1 >= 20;
    assertThat(tally("change, all").worst(many ? 2000 : 400)).isLessThan(many ? 0.1 : 0.25);
    assertThat(tally("rate, cells").held()).isBetween(many ? 0.85 : 0.7, many ? 0.95 : 1);
    assertThat(tally("change of a green").held()).isGreaterThan(many ? 0.85 : 0.7);
    assertThat(shares.stream().mapToDouble(Interval::best).average().orElseThrow())
        .isBetween(many ? 0.55 : 0.35, many ? 0.8 : 0.9);
  }

  /** All surveys of a course, from its files; adds the conditions of the visits. */
  public static SurveyMap map(long seed, Path folder, List<Conditions> conditions)
      throws IOException {
    FieldWork work = PlantedDefectsTest.work(seed, folder);
    List<GreenSurvey> subjects = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      subjects.add(
          new GreenSurvey(
              v.visit().green(),
              v.visit().surveyId(),
              v.visit().readings(),
              Optional.empty(),
              v.obstacle(),
              work.errors(v)));
      v.visit().conditions().ifPresent(conditions::add);
    }
    UncertaintySettings u = UncertaintySettings.defaults();
    return new SurveyMapper(
            MappingSettings.defaults()
                .withCellM(1)
                .withUncertainty(u.withRealisations(u.draws()).withNextStations(0)))
        .map(subjects, 2, Progress.NONE);
  }

  private void course(long seed) throws IOException {
    List<Conditions> conditions = new ArrayList<>();
    SurveyMap map = map(seed, folder, conditions);
    long start = System.nanoTime();
    Season season = Season.of(map, conditions, 2, Progress.NONE);
    shares.add(season.share().share());
    var truth = CourseGenerator.generate(seed).season();
    long ready = System.nanoTime();
    for (String green : season.greens()) {
      List<String> surveys = season.surveys(green);
      for (int s = 1; s < surveys.size(); s++) {
        Answer<Change> answer =
            season.change(green, surveys.get(s - 1), surveys.get(s), LIMIT_PCT, 1, Progress.NONE);
        answer
            .refusal()
            .ifPresent(r -> refused.merge(r.reason().replaceAll("^.*: ", ""), 1, Integer::sum));
        answer.value().ifPresent(c -> compare(season, c, truth.truth(green)));
      }
    }
    System.out.printf(
        Locale.ROOT,
        "seed %d: share %s, %.1f s; changes %.1f s%n",
        seed,
        season.share().words(),
        (ready - start) / 1e9,
        (System.nanoTime() - ready) / 1e9);
  }

  private void compare(Season season, Change change, GreenTruth truth) {
    GreenCells cells = change.cells();
    Survey before = Survey.valueOf(change.before());
    Survey after = Survey.valueOf(change.after());
    Point centre = truth.green().world(0, 0);
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] pct = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      pct[i] =
          truth.soilPct(after, x[i] - centre.x(), y[i] - centre.y())
              - truth.soilPct(before, x[i] - centre.x(), y[i] - centre.y());
    }
    double[] is = cells.map(pct).values();
    double[] mean = change.mean().values();
    double[] sd = change.sd().values();
    double[] p = change.pChange().values();
    String pair = before + "-" + after;
    Optional<DryDown> dry = season.dryDown(change, 1, Progress.NONE).value();
    for (int i = 0; i < is.length; i++) {
      if (!Double.isNaN(mean[i])) {
        for (String name : List.of("change, all", "change, " + pair)) {
          tally(name).probability(p[i], Math.abs(is[i]) > LIMIT_PCT);
          tally(name).figure(mean[i], sd[i], is[i]);
        }
        int cell = i;
        dry.ifPresent(
            d ->
                tally("rate, cells")
                    .figure(d.rate().value(cell), d.sd().value(cell), -is[cell] / 3));
      }
    }
    CoveredGround green = CoveredGround.of(cells, change.outline());
    double sum = 0;
    for (int i = 0; i < green.size(); i++) {
      sum += green.areaM2(i) * pct[green.place(i)] / green.areaM2();
    }
    tally("change of a green").figure(change.whole().mean(), change.whole().sd(), sum);
    tally("change of a green, " + pair).figure(change.whole().mean(), change.whole().sd(), sum);
  }
}
