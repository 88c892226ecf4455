package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.season.BeforeAfter.Wanted;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.SharedError;
import org.mottle.engine.survey.VisitErrors;

/** Whole surveys of invented greens: S1 after rain, S2 three dry days on, S3 after a repair. */
class SeasonTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Reading.Protocol PROTOCOL =
      new Reading.Protocol("", 60, "P1", "A", "sand", 12, 0.4);

  private static Season season;

  private static Geometry box(double x0, double x1, double y0, double y1) {
    return FACTORY.toGeometry(new Envelope(x0, x1, y0, y1));
  }

  private static Green green(int g, double east) {
    double x = 100 * g;
    return new Green(
        "G" + g,
        "",
        box(x, x + 22 + east, 0, 18),
        new RootZone("sand over gravel", "", 150, 26, 10, 45),
        Green.Boundary.UNKNOWN);
  }

  private static double level(String survey) {
    return survey.equals("S1") ? 24 : survey.equals("S2") ? 19 : 20;
  }

  /** 30 stations on a jittered lattice; in S3 the west of G1 is 4 % drier. */
  private static List<Reading> readings(int g, String survey) {
    Random place = new Random(g);
    Random noise = new Random(7919L * g + 104729L * survey.hashCode());
    List<Reading> all = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      double x = 2 + 3.7 * (i % 6) + place.nextDouble();
      double y = 1.5 + 3.6 * (i / 6) + place.nextDouble();
      double pct =
          level(survey)
              + 1.5 * Math.sin(x / 4 + g)
              + 1.2 * Math.cos(y / 3 - g)
              + 0.9 * noise.nextGaussian()
              - (survey.equals("S3") && g == 1 && x < 11 ? 4 : 0);
      Reading plain = Reading.of("G" + g, Integer.toString(i + 1), 100 * g + x, y, pct);
      all.add(
          new Reading(
              plain.label(),
              new Reading.Position(100 * g + x, y, Double.NaN, "tape", 0.1),
              plain.moisture(),
              PROTOCOL,
              plain.role(),
              plain.quality()));
    }
    return all;
  }

  private static GreenSurvey subject(int g, String survey) {
    return new GreenSurvey(green(g, 0), survey, readings(g, survey), Optional.empty());
  }

  private static Conditions conditions(String survey, String start, Conditions.Water water) {
    return new Conditions(
        survey,
        "",
        new Conditions.Visit(start, "", "", "tape", Double.NaN),
        new Conditions.Crew("A", "P1", 60, "sand"),
        water,
        new Conditions.Ground("", Double.NaN, Double.NaN, "", ""));
  }

  private static final Conditions.Water RAIN = new Conditions.Water(36, 18, Double.NaN, 0, 3);
  private static final Conditions.Water DRY = new Conditions.Water(108, 18, Double.NaN, 0, 3);

  private static List<Conditions> records(Conditions.Water second) {
    return List.of(
        conditions("S1", "2025-05-14T08:00:00+01:00", RAIN),
        conditions("S2", "2025-05-17T08:00:00+01:00", second));
  }

  private static SurveyMap map(List<GreenSurvey> subjects) {
    return new SurveyMapper(
            MappingSettings.defaults()
                .withUncertainty(
                    UncertaintySettings.defaults().withRealisations(25).withNextStations(0)))
        .map(subjects, 2, Progress.NONE);
  }

  private static List<GreenSurvey> subjects() {
    List<GreenSurvey> all = new ArrayList<>();
    for (String survey : List.of("S1", "S2", "S3")) {
      for (int g = 1; g <= 3; g++) {
        all.add(subject(g, survey));
      }
    }
    return all;
  }

  @BeforeAll
  static void map() {
    season = Season.of(map(subjects()), records(DRY), 2, Progress.NONE);
  }

  private static Change change(String green, String before, String after) {
    return change(season, green, before, after).value().orElseThrow();
  }

  private static Answer<Change> change(Season of, String green, String before, String after) {
    return of.change(green, before, after, 2, 1, Progress.NONE);
  }

  @Test
  void aFallOfAllGroundIsFound() {
    Change change = change("G2", "S1", "S2");
    assertThat(change.whole().mean()).isCloseTo(-5, within(0.6));
    assertThat(change.whole().mean()).isCloseTo(-5, within(3 * change.whole().sd()));
    int cells = 0;
    for (int i = 0; i < change.mean().grid().size(); i++) {
      assertThat(change.mean().has(i)).isEqualTo(change.cells().inside(i));
      if (change.mean().has(i)) {
        cells++;
        assertThat(change.sd().value(i)).isBetween(0.1, 2.0);
        assertThat(change.pFall().value(i)).isGreaterThan(0.8);
        assertThat(change.pChange().value(i))
            .isCloseTo(change.pFall().value(i) + change.pRise().value(i), within(1e-12));
      }
    }
    assertThat(cells).isEqualTo(change.cells().insideCount());
    assertThat(change.remarks()).anyMatch(r -> r.contains("the change holds the weather too"));
  }

  /** What persists makes the change surer than two maps taken apart would say. */
  @Test
  void whatPersistsIsNotCountedTwice() {
    Change change = change("G2", "S1", "S2");
    SurveyMap map = map(subjects());
    double apart = 0;
    for (String survey : List.of("S1", "S2")) {
      double sd =
          ((org.mottle.engine.mapping.Outcome.Mapped) map.of("G2", survey).orElseThrow())
              .surface()
              .medianSd();
      apart += sd * sd;
    }
    double[] sds =
        java.util.Arrays.stream(change.sd().values())
            .filter(v -> !Double.isNaN(v))
            .sorted()
            .toArray();
    assertThat(sds[sds.length / 2]).isLessThan(0.97 * Math.sqrt(apart));
  }

  @Test
  void dryingAgainstWhatTheTurfDraws() {
    DryDown dry = season.dryDown(change("G2", "S1", "S2"), 1, Progress.NONE).value().orElseThrow();
    assertThat(dry.days()).isEqualTo(3);
    assertThat(dry.whole().best()).isCloseTo(5 / 3.0, within(0.2));
    assertThat(dry.whole().low()).isLessThan(dry.whole().best());
    // 100 · 0.90 · 3 mm/d over 150 mm
    assertThat(dry.etRate()).isCloseTo(1.8, within(1e-9));
    for (int i = 0; i < dry.rate().grid().size(); i++) {
      if (dry.rate().has(i)) {
        assertThat(dry.rate().value(i)).isCloseTo(-dry.change().mean().value(i) / 3, within(1e-12));
        assertThat(dry.sd().value(i)).isCloseTo(dry.change().sd().value(i) / 3, within(1e-12));
        assertThat(dry.ratio().value(i)).isCloseTo(dry.rate().value(i) / 1.8, within(1e-12));
        assertThat(dry.slow().value(i)).isBetween(0.0, 1.0);
        assertThat(Double.isNaN(dry.tau().value(i)) || dry.tau().value(i) > 0).isTrue();
      }
    }
    // from 24 to 19 % above 10 %: 3 / ln(14 / 9)
    double[] tau =
        java.util.Arrays.stream(dry.tau().values()).filter(v -> !Double.isNaN(v)).toArray();
    assertThat(java.util.Arrays.stream(tau).average().orElseThrow()).isCloseTo(6.8, within(1.2));
  }

  @Test
  void waterBetweenTheSurveysIsNoDryDown() {
    Change change = change("G2", "S1", "S2");
    assertThat(dryDown(new Conditions.Water(20, 8, Double.NaN, 0, 3)))
        .contains("it rained 20 h before");
    assertThat(dryDown(new Conditions.Water(108, 18, 10, 5, 3))).contains("irrigated 10 h before");
    assertThat(dryDown(new Conditions.Water(108, 18, Double.NaN, Double.NaN, 3)))
        .contains("not recorded");
    assertThat(change.remarks()).isNotEmpty();
    Answer<DryDown> unknown = season.dryDown(change("G2", "S2", "S3"), 1, Progress.NONE);
    assertThat(unknown.refusal().orElseThrow().reason()).contains("when it was read");
  }

  private static String dryDown(Conditions.Water second) {
    Season other =
        Season.of(
            map(List.of(subject(2, "S1"), subject(2, "S2"))), records(second), 2, Progress.NONE);
    Change change = change(other, "G2", "S1", "S2").value().orElseThrow();
    return other.dryDown(change, 1, Progress.NONE).refusal().orElseThrow().reason();
  }

  @Test
  void aRepairIsSeenAgainstTheControlArea() {
    Change change = change("G1", "S2", "S3");
    Geometry west = box(101, 109, 2, 16);
    Geometry east = box(113, 121, 2, 16);
    BeforeAfter repair = BeforeAfter.of(change, west, east, Wanted.DRIER).value().orElseThrow();
    assertThat(repair.effect().mean()).isCloseTo(-4, within(3 * repair.effect().sd()));
    assertThat(repair.effect().sd()).isBetween(0.1, 1.5);
    assertThat(repair.pImproved()).isGreaterThan(0.95);
    assertThat(repair.words()).startsWith("the readings suggest that the area became");
    assertThat(repair.effect().mean())
        .isCloseTo(repair.area().mean() - repair.control().mean(), within(1e-9));
    BeforeAfter wrong = BeforeAfter.of(change, west, east, Wanted.WETTER).value().orElseThrow();
    assertThat(wrong.words()).contains("the contrary of what was wanted");
    BeforeAfter nothing =
        BeforeAfter.of(
                change("G2", "S2", "S3"), box(201, 209, 2, 16), box(213, 221, 2, 16), Wanted.DRIER)
            .value()
            .orElseThrow();
    assertThat(nothing.effect().mean()).isCloseTo(0, within(3 * nothing.effect().sd()));
    assertThat(repair.remarks()).anyMatch(r -> r.contains("site's agronomist"));
    assertThat(BeforeAfter.of(change, west, box(105, 115, 2, 16), Wanted.DRIER).refusal())
        .isPresent();
    assertThat(BeforeAfter.of(change, west, box(300, 305, 2, 16), Wanted.DRIER).refusal())
        .isPresent();
    assertThat(BeforeAfter.of(change, west, box(121.7, 122, 2, 3), Wanted.DRIER).refusal())
        .isPresent();
  }

  private static String refusal(UnaryOperator<GreenSurvey> other) {
    Season of =
        Season.of(
            map(List.of(subject(2, "S1"), subject(3, "S1"), other.apply(subject(2, "S2")))),
            List.of(),
            1,
            Progress.NONE);
    return change(of, "G2", "S1", "S2").refusal().map(r -> r.reason()).orElse("");
  }

  private static UnaryOperator<GreenSurvey> read(Reading.Protocol protocol) {
    return s ->
        new GreenSurvey(
            s.green(),
            s.surveyId(),
            s.readings().stream()
                .map(
                    r ->
                        new Reading(
                            r.label(), r.position(), r.moisture(), protocol, r.role(), r.quality()))
                .toList(),
            s.band());
  }

  @Test
  void whatCannotBeSubtractedIsRefused() {
    assertThat(refusal(read(new Reading.Protocol("", 38, "P1", "A", "sand", 12, 0.4))))
        .contains("rods of 38 and 60 mm");
    assertThat(refusal(read(new Reading.Protocol("", 60, "P1", "A", "standard", 12, 0.4))))
        .contains("calibrations sand and standard");
    UnaryOperator<GreenSurvey> byAnother =
        read(new Reading.Protocol("", 60, "P2", "B", "sand", 12, 0.4));
    assertThat(refusal(byAnother)).contains("A with P1 and B with P2");
    double[] all = new double[30];
    java.util.Arrays.fill(all, 1);
    VisitErrors known =
        new VisitErrors(List.of(new SharedError("operator B with P2", all, 0.25)), Double.NaN);
    assertThat(refusal(s -> byAnother.apply(s).withErrors(known))).isEmpty();
    assertThat(refusal(s -> new GreenSurvey(green(2, 3), s.surveyId(), s.readings(), s.band())))
        .contains("outlines differ by 54 m²");
    assertThat(change(season, "G2", "S1", "S9").refusal().orElseThrow().reason())
        .contains("no kriged map in S9");
    assertThatThrownBy(() -> change(season, "G2", "S1", "S1")).hasMessageContaining("itself");
  }

  @Test
  void whatIsNotRecordedIsTold() {
    Change change = change("G2", "S2", "S3");
    assertThat(change.remarks()).anyMatch(r -> r.contains("the water before S3 is not recorded"));
    assertThat(change.remarks()).anyMatch(r -> r.contains("persist"));
  }

  @Test
  void oneThreadOrManyTheSameNumbers() {
    Season one = Season.of(map(subjects()), records(DRY), 1, Progress.NONE);
    Change a = change(one, "G3", "S1", "S2").value().orElseThrow();
    Change b = season.change("G3", "S1", "S2", 2, 4, Progress.NONE).value().orElseThrow();
    assertThat(b.mean().values()).isEqualTo(a.mean().values());
    assertThat(b.pChange().values()).isEqualTo(a.pChange().values());
    assertThat(season.surveys("G3")).containsExactly("S1", "S2", "S3");
  }
}
