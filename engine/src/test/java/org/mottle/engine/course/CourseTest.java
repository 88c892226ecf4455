package org.mottle.engine.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Grade;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.engine.water.Watering;

/** Three greens of one survey, each with a dry half; the third without a root depth. */
class CourseTest {
  private static final double NONE = Double.NaN;
  private static final MappingSettings QUICK =
      MappingSettings.defaults().withUncertainty(new UncertaintySettings(100, 6, 0, 0, 0));
  private static final TargetBand BAND =
      new TargetBand("ball roll", 16, 21, "agronomist", "2031-05-01");
  private static final SurveyMap MAP = map(QUICK, 60);

  private static SurveyMap map(MappingSettings settings, double rods) {
    List<GreenSurvey> greens = new ArrayList<>();
    for (int g = 0; g < 3; g++) {
      greens.add(green(g, rods));
    }
    return new SurveyMapper(settings).map(greens, 2, Progress.NONE);
  }

  private static GreenSurvey green(int g, double rods) {
    double cx = 1000 * g;
    RootZone soil = new RootZone("sand", "", g == 2 ? NONE : 120, 26, 10, 42);
    Green green =
        new Green(
            "G" + (g + 1),
            "",
            new GeometryFactory().createPoint(new Coordinate(cx, 0)).buffer(12.5),
            soil,
            Green.Boundary.UNKNOWN);
    SplittableRandom random = new SplittableRandom(100 + g);
    List<Reading> readings = new ArrayList<>();
    for (double y = -11; y <= 11; y += 4) {
      for (double x = -11; x <= 11; x += 4) {
        if (Math.hypot(x, y) < 12) {
          // the west is dry, the more so the farther the green
          double pct = 18.5 - (4 + g) * (x < 0 ? 1 : 0) + random.nextDouble(-0.5, 0.5);
          readings.add(reading("G" + (g + 1), readings.size() + 1, cx + x, y, pct, rods));
        }
      }
    }
    return new GreenSurvey(green, "S4", readings, Optional.of(BAND));
  }

  private static Reading reading(
      String green, int station, double x, double y, double pct, double rods) {
    return new Reading(
        new Reading.Label(green, "S4", "" + station, station, 1, station + 1),
        new Reading.Position(x, y, NONE, "", NONE),
        Reading.Moisture.raw(pct),
        new Reading.Protocol(
            "2031-07-09T07:%02d:00+01:00".formatted(station), rods, "P", "A", "", NONE, NONE),
        Reading.Role.PLAN,
        Reading.Quality.NOT_REVIEWED);
  }

  private static Conditions conditions(String green, double irrigationH, double et0) {
    return new Conditions(
        "S4",
        green,
        new Conditions.Visit("", "", "", "", NONE),
        new Conditions.Crew("", "", NONE, ""),
        new Conditions.Water(130, 4, irrigationH, 3, et0),
        new Conditions.Ground("", NONE, NONE, "", ""));
  }

  private static List<VisitRecord> records(Grade.Letter third, double irrigationH, double et0) {
    List<VisitRecord> records = new ArrayList<>();
    for (int g = 1; g <= 3; g++) {
      records.add(
          new VisitRecord(
              "G" + g,
              "S4",
              Optional.of(conditions("G" + g, irrigationH, et0)),
              Optional.of(new Grade(g == 3 ? third : Grade.Letter.A, List.of(), List.of()))));
    }
    return records;
  }

  private static List<VisitRecord> records() {
    return records(Grade.Letter.A, 12, 3);
  }

  private static HandWatering walk(List<VisitRecord> records, String planned) {
    return HandWatering.of(
        MAP,
        records,
        QUICK.watering().withFlow(20),
        Optional.ofNullable(planned).map(OffsetDateTime::parse));
  }

  private static Outcome.Mapped mapped(int g) {
    return (Outcome.Mapped) MAP.outcomes().get(g);
  }

  @Test
  void theDryHalfIsOutlinedAndItsLitresAreDepthTimesArea() {
    Stop stop = walk(records(), null).stops().get(0);
    assertThat(stop.what()).isEqualTo(Stop.Kind.PATCH);
    assertThat(stop.areaM2()).isBetween(180.0, 310.0);
    Watering.Wanted wanted = (Watering.Wanted) mapped(0).watering();
    assertThat(wanted.deficit().targetPct()).isCloseTo(16 + 5 / 3.0, within(1e-9));
    // about 14.5 % to 17.7 %: 3.2 % of 120 mm; a tenth is lost on the way
    double litres = stop.water().orElseThrow().litres().best();
    assertThat(litres).isCloseTo(0.032 * 120 * stop.areaM2() / 0.9, within(0.15 * litres));
    assertThat(stop.water().get().litres().low()).isLessThan(litres);
    assertThat(stop.water().get().litres().high()).isGreaterThan(litres);
    assertThat(stop.minutes()).isCloseTo(litres / 20, within(1e-9));
    Coordinate at = new Coordinate(stop.place().x(), stop.place().y());
    assertThat(at.x).isLessThan(0);
  }

  @Test
  void withoutARootDepthTheRestStillComes() {
    Outcome.Mapped third = mapped(2);
    assertThat(third.watering()).isInstanceOf(Watering.NotWorkedOut.class);
    assertThat(((Watering.NotWorkedOut) third.watering()).why().remedy()).contains("root_mm");
    assertThat(third.evenness().sd().known()).isTrue();
    Stop stop = walk(records(), null).stops().get(2);
    assertThat(stop.place().greenId()).isEqualTo("G3");
    assertThat(stop.water()).isEmpty();
    assertThat(stop.areaM2()).isPositive();
    assertThat(walk(records(), null).litres())
        .isCloseTo(
            walk(records(), null).stops().stream()
                .limit(2)
                .mapToDouble(s -> s.water().orElseThrow().litres().best())
                .sum(),
            within(1e-9));
  }

  @Test
  void stopsAreNumberedGreenByGreen() {
    List<Stop> stops = walk(records(), null).stops();
    assertThat(stops.stream().map(s -> s.place().greenId()).toList())
        .isEqualTo(List.of("G1", "G2", "G3"));
    assertThat(stops.stream().map(Stop::order).toList()).isEqualTo(List.of(1, 2, 3));
  }

  @Test
  void cautionsComeWhereTheyBite() {
    assertThat(walk(records(), null).stops().get(0).cautions())
        .containsExactly(Caution.BELOW_THE_RODS);
    assertThat(
            walk(records(Grade.Letter.A, 5, 6), "2031-07-09T09:00+01:00").stops().get(0).cautions())
        .contains(Caution.HEAT, Caution.JUST_WATERED)
        .doesNotContain(Caution.OLD);
    assertThat(walk(records(), "2031-07-10T09:00+01:00").stops().get(0).cautions())
        .contains(Caution.OLD);
    assertThat(walk(records(Grade.Letter.C, 12, 3), null).stops().get(2).cautions())
        .contains(Caution.INDICATIVE);
    assertThat(walk(records(Grade.Letter.C, 12, 3), null).stops().get(0).cautions())
        .doesNotContain(Caution.INDICATIVE);
  }

  @Test
  void likeVisitsAreRankedAndOthersAreNot() {
    List<GreenLook> looks = CourseOverview.visits(MAP, records());
    assertThat(looks.get(0).like().label())
        .isEqualTo("S4, after irrigation, rods 60 mm, grade A or B, for ball roll");
    // the third is the driest in the west, so the least even; it has no litres
    assertThat(looks.get(2).ranks().uneven().orElseThrow().place()).isEqualTo(1);
    assertThat(looks.get(0).ranks().uneven().orElseThrow().of()).isEqualTo(3);
    assertThat(looks.get(2).ranks().litres()).isEmpty();
    assertThat(looks.get(1).ranks().litres().orElseThrow().of()).isEqualTo(2);
    // of grade C it is compared with none
    List<GreenLook> graded = CourseOverview.visits(MAP, records(Grade.Letter.C, 12, 3));
    assertThat(graded.get(2).ranks().uneven()).isEmpty();
    assertThat(graded.get(0).ranks().uneven().orElseThrow().of()).isEqualTo(2);
    // nothing recorded: nothing ranked, and it is said what to record
    GreenLook unknown = CourseOverview.visits(MAP, List.of()).get(0);
    assertThat(unknown.ranks()).isEqualTo(GreenLook.Ranks.NONE);
    assertThat(unknown.like().why()).contains("irr_h");
    assertThat(CourseOverview.visits(map(QUICK, NONE), records()).get(0).like().why())
        .contains("rod_mm");
  }

  @Test
  void thePoorestGradeOfOneDayComesFirst() {
    CourseOverview course = CourseOverview.of(MAP, records(Grade.Letter.C, 12, 3));
    assertThat(course.greens().stream().map(l -> l.outcome().subject().green().id()).toList())
        .isEqualTo(List.of("G3", "G1", "G2"));
    assertThat(course.greens().get(0).lastRead().orElseThrow().toString()).startsWith("2031-07-09");
  }

  @Test
  void ranksSayBetweenWhichPlacesAGreenSurelyLies() {
    List<Rank> ranks =
        Rank.of(
            List.of(
                new Interval(10, 12, 14),
                new Interval(13, 15, 17),
                new Interval(1, 2, 3),
                new Interval(11, 12.5, 16)));
    assertThat(ranks)
        .isEqualTo(
            List.of(
                new Rank(3, 1, 3, 4),
                new Rank(1, 1, 3, 4),
                new Rank(4, 4, 4, 4),
                new Rank(2, 1, 3, 4)));
  }

  @Test
  void theWaterHistoryIsReadFromTheRecord() {
    assertThat(history(36, 18, NONE, 0)).isEqualTo(WaterHistory.AFTER_RAIN);
    assertThat(history(108, 18, NONE, 0)).isEqualTo(WaterHistory.DRYING);
    assertThat(history(144, 6, 10, 5)).isEqualTo(WaterHistory.AFTER_IRRIGATION);
    assertThat(history(24, 22, 40, 3)).isEqualTo(WaterHistory.AFTER_RAIN);
    assertThat(history(20, 1, NONE, 0)).isEqualTo(WaterHistory.DRYING);
    // irrigation that is not recorded is not taken for none
    assertThat(history(36, 18, NONE, NONE)).isEqualTo(WaterHistory.UNKNOWN);
    assertThat(history(NONE, NONE, NONE, NONE)).isEqualTo(WaterHistory.UNKNOWN);
    assertThat(history(NONE, NONE, 10, 5)).isEqualTo(WaterHistory.AFTER_IRRIGATION);
  }

  private static WaterHistory history(double rainH, double rainMm, double irrH, double irrMm) {
    return WaterHistory.of(new Conditions.Water(rainH, rainMm, irrH, irrMm, NONE));
  }
}
