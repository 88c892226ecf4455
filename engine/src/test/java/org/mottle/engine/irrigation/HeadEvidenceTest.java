package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.irrigation.HeadFinding.Verdict;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.WaterHistory;

/**
 * Six round greens in three surveys, after rain, in dry days and after irrigation; head G1-3 gives
 * nothing before the last.
 */
class HeadEvidenceTest {
  private static final int GREENS = 6;
  private static final List<String> SURVEYS = List.of("S1", "S2", "S3");
  private static final MappingSettings QUICK =
      MappingSettings.defaults()
          .withCellM(2)
          .withUncertainty(new UncertaintySettings(24, 6, 0, 0, 0));

  private static List<Head> heads;
  private static SurveyMap map;

  private static String green(int g) {
    return "G" + (g + 1);
  }

  private static double east(int g) {
    return 500_000 + 100.0 * g;
  }

  @BeforeAll
  static void mapTheCourse() {
    heads = heads();
    map = map(SURVEYS, -16);
  }

  private static List<Head> heads() {
    List<Head> all = new ArrayList<>();
    for (int g = 0; g < GREENS; g++) {
      for (Head h : SimulatedSurveys.heads(east(g), 900, 10 * g)) {
        all.add(
            new Head(
                green(g) + "-" + h.id().substring(1),
                green(g),
                "" + (g + 1),
                h.x(),
                h.y(),
                h.radiusM(),
                h.arcFrom(),
                h.arcTo(),
                h.rateMmH(),
                Double.NaN));
      }
    }
    return all;
  }

  /**
   * @param lost where the head gives all the water, in the survey after irrigation, %
   */
  private static SurveyMap map(List<String> surveys, double lost) {
    List<GreenSurvey> subjects = new ArrayList<>();
    for (int g = 0; g < GREENS; g++) {
      Random random = new Random(100 + g);
      double[][] place = SimulatedSurveys.places(20, random);
      double[][] values = SimulatedSurveys.field(place, 3, 2, 0.6, random);
      double[][] world = SimulatedSurveys.turned(place, 0, east(g), 900);
      if (g == 0) {
        double[] share = new SectorPattern(heads).shares(heads.get(2), world[0], world[1]);
        for (int i = 0; i < share.length; i++) {
          values[2][i] += lost * share[i];
        }
      }
      Geometry outline =
          new GeometryFactory().createPoint(new Coordinate(east(g), 900)).buffer(12.2, 16);
      for (String survey : surveys) {
        int s = SURVEYS.indexOf(survey);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < values[s].length; i++) {
          readings.add(
              Reading.of(green(g), "" + i, world[0][i], world[1][i], 20 - 2 * s + values[s][i]));
        }
        subjects.add(
            new GreenSurvey(Green.of(green(g), outline), survey, readings, Optional.empty()));
      }
    }
    return new SurveyMapper(QUICK).map(subjects, 2, Progress.NONE);
  }

  private static Conditions water(String survey, Conditions.Water water) {
    return new Conditions(survey, "", null, null, water, null);
  }

  private static final Conditions RAIN =
      water("S1", new Conditions.Water(36, 18, Double.NaN, 0, 3));
  private static final Conditions DRY =
      water("S2", new Conditions.Water(108, 18, Double.NaN, 0, 3));
  private static final Conditions IRRIGATED = water("S3", new Conditions.Water(144, 6, 10, 5, 5));

  private static List<HeadFinding> found(SurveyMap map, List<Conditions> conditions, int threads) {
    return HeadEvidence.of(map, heads, conditions, SectorPrior.DEFAULT, threads, Progress.NONE);
  }

  private static HeadFinding of(List<HeadFinding> all, String survey, String head) {
    return all.stream()
        .filter(f -> f.surveyId().equals(survey) && f.head().id().equals(head))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theHeadThatGaveNothingIsTheOneToLookAt() {
    List<HeadFinding> all = found(map, List.of(RAIN, DRY, IRRIGATED), 2);
    assertThat(all).hasSize(GREENS * 4 * 3);
    HeadFinding dead = of(all, "S3", "G1-3");
    assertThat(dead.verdict()).isEqualTo(Verdict.LOOK);
    assertThat(dead.evidence().rank()).isEqualTo(1);
    assertThat(dead.evidence().effectPct() + 8)
        .as("half of 16 % where it gives half of the water")
        .isCloseTo(0, within(3 * dead.evidence().effectSd()));
    assertThat(dead.words().next())
        .contains("run station 1 and watch head G1-3")
        .contains("agronomist");
    assertThat(all.stream().filter(f -> f.verdict() == Verdict.LOOK)).hasSize(1);
  }

  @Test
  void afterRainNoHeadIsNamed() {
    List<HeadFinding> all = found(map, List.of(RAIN, DRY, IRRIGATED), 2);
    assertThat(all.stream().filter(f -> f.surveyId().equals("S1")))
        .allMatch(f -> f.history() == WaterHistory.AFTER_RAIN)
        .allMatch(f -> f.verdict() == Verdict.CANNOT_TELL)
        .allMatch(f -> f.words().against().get(0).contains("how it drains"));
  }

  @Test
  void waterThatIsNotOnRecordCannotTell() {
    assertThat(found(map, List.of(), 1))
        .allMatch(f -> f.verdict() == Verdict.CANNOT_TELL)
        .allMatch(f -> f.words().next().contains("irr_h"));
  }

  /** With nothing beside it head and ground share the probability as their priors do. */
  @Test
  void oneSurveyAloneIsAtMostToBeConsidered() {
    HeadFinding dead = of(found(map(List.of("S3"), -25), List.of(IRRIGATED), 2), "S3", "G1-3");
    assertThat(dead.verdict()).isEqualTo(Verdict.CONSIDER);
    assertThat(dead.words().against().get(0)).contains("24 to 48 h after soaking rain");
    assertThat(dead.evidence().ground())
        .isCloseTo(dead.evidence().probability() * 3 / 5, within(1e-6));
  }

  @Test
  void aSurveyWithoutAMapSaysWhy() {
    GreenSurvey few = map.outcomes().get(2).subject();
    GreenSurvey four =
        new GreenSurvey(few.green(), "S3", few.readings().subList(0, 4), Optional.empty());
    SurveyMap none = new SurveyMapper(QUICK).map(List.of(four), 1, Progress.NONE);
    assertThat(found(none, List.of(IRRIGATED), 1))
        .hasSize(4)
        .allMatch(f -> f.verdict() == Verdict.CANNOT_TELL && f.evidence().rank() == 0)
        .allMatch(f -> f.words().against().get(0).contains("no map: 4 readings"));
  }

  @Test
  void withoutHeadsThereIsNothingToSay() {
    assertThat(
            HeadEvidence.of(map, List.of(), List.of(RAIN), SectorPrior.DEFAULT, 1, Progress.NONE))
        .isEmpty();
  }

  @Test
  void threadsDoNotMatter() {
    List<Conditions> conditions = List.of(RAIN, DRY, IRRIGATED);
    assertThat(found(map, conditions, 3)).isEqualTo(found(map, conditions, 1));
  }

  /** What is recorded of the green goes before what is recorded of the survey. */
  @Test
  void theGreensOwnRecordGoesFirst() {
    Conditions own = new Conditions("S3", "G1", null, null, RAIN.water(), null);
    List<HeadFinding> all = found(map, List.of(RAIN, DRY, IRRIGATED, own), 2);
    assertThat(of(all, "S3", "G1-3").history()).isEqualTo(WaterHistory.AFTER_RAIN);
    assertThat(of(all, "S3", "G2-3").history()).isEqualTo(WaterHistory.AFTER_IRRIGATION);
  }
}
