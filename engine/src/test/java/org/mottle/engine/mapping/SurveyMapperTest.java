package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

class SurveyMapperTest {
  private static final SurveyMapper MAPPER = new SurveyMapper(InventedSurvey.QUICK);

  private static SurveyMap map(List<GreenSurvey> subjects) {
    return MAPPER.map(subjects, 2, Progress.NONE);
  }

  private static Outcome.Mapped mapped(Outcome outcome) {
    return (Outcome.Mapped) outcome;
  }

  private static Outcome.NoMap notMapped(Outcome outcome) {
    return (Outcome.NoMap) outcome;
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void zonesTileTheGreenWithItsMean(long seed) {
    for (Outcome outcome : map(InventedSurvey.course(4, 18, 0.5, seed)).outcomes()) {
      Outcome.Mapped green = mapped(outcome);
      double area = green.subject().green().areaM2();
      List<Geometry> zones = green.parts().zones().stream().map(Zone::geometry).toList();
      assertThat(zones.stream().mapToDouble(Geometry::getArea).sum())
          .as("seed %d", seed)
          .isCloseTo(area, within(0.01));
      Geometry left = UnaryUnionOp.union(zones).symDifference(green.subject().green().outline());
      assertThat(left.getArea()).as("seed %d", seed).isLessThan(0.01);
      double weighted =
          green.parts().zones().stream().mapToDouble(z -> z.areaM2() * z.mean()).sum() / area;
      assertThat(weighted).isCloseTo(green.parts().whole().mean(), within(0.02));
    }
  }

  @Test
  void findsTheWetPlaceOfEveryGreen() {
    for (Outcome outcome : map(InventedSurvey.plannedCourse(6, 0.4, 11)).outcomes()) {
      Outcome.Mapped green = mapped(outcome);
      assertThat(green.basis().method()).isEqualTo(Method.KRIGING);
      assertThat(green.standing()).isEqualTo(Standing.PATCHES);
      Patch largest =
          green.parts().patches().stream()
              .filter(p -> p.kind() == ZoneClass.WET)
              .findFirst()
              .orElseThrow();
      Coordinate centre = green.subject().green().outline().getEnvelopeInternal().centre();
      Point found = largest.geometry().getCentroid();
      assertThat(Math.hypot(found.getX() - centre.x - 4, found.getY() - centre.y - 2))
          .isLessThan(2.5);
    }
  }

  @Test
  void fiveMoreInTheReadingsIsFiveMoreInTheMapAndNothingInItsSd() {
    List<GreenSurvey> course = InventedSurvey.course(4, 18, 0.5, 31);
    List<GreenSurvey> wetter =
        course.stream()
            .map(s -> InventedSurvey.survey(s.green(), moved(s.readings(), 0, 0, 5)))
            .toList();
    SurveyMap before = map(course);
    SurveyMap after = map(wetter);
    for (int i = 0; i < course.size(); i++) {
      assertClose(mean(after, i), plus(mean(before, i), 5), 1e-7);
      assertClose(sd(after, i), sd(before, i), 1e-7);
    }
  }

  @Test
  void movingTheCourseByWholeCellsMovesTheMap() {
    List<GreenSurvey> course = InventedSurvey.course(4, 18, 0.5, 41);
    double dx = -480_000;
    double dy = -316_000;
    List<GreenSurvey> elsewhere =
        course.stream()
            .map(
                s ->
                    InventedSurvey.survey(
                        Green.of(
                            s.green().id(),
                            AffineTransformation.translationInstance(dx, dy)
                                .transform(s.green().outline())),
                        moved(s.readings(), dx, dy, 0)))
            .toList();
    SurveyMap here = map(course);
    SurveyMap there = map(elsewhere);
    for (int i = 0; i < course.size(); i++) {
      assertClose(mean(there, i), mean(here, i), 1e-6);
    }
  }

  @Test
  void theOrderOfTheReadingsDoesNotMatter() {
    List<GreenSurvey> course = InventedSurvey.course(4, 18, 0.5, 51);
    List<GreenSurvey> shuffled = new ArrayList<>();
    for (GreenSurvey s : course) {
      List<Reading> readings = new ArrayList<>(s.readings());
      Collections.shuffle(readings, new Random(51));
      shuffled.add(InventedSurvey.survey(s.green(), readings));
    }
    SurveyMap before = map(course);
    SurveyMap after = map(shuffled);
    for (int i = 0; i < course.size(); i++) {
      assertThat(mean(after, i)).containsExactly(mean(before, i));
    }
  }

  @Test
  void fewReadingsMakeASummary() {
    List<GreenSurvey> course = new ArrayList<>(InventedSurvey.course(4, 18, 0.5, 61));
    GreenSurvey few = course.get(0);
    course.set(0, InventedSurvey.survey(few.green(), few.readings().subList(0, 7)));
    Outcome.NoMap none = notMapped(map(course).outcomes().get(0));
    assertThat(none.why().reason()).isEqualTo("7 readings: a summary, not a map");
    assertThat(none.summary().n()).isEqualTo(7);
  }

  @Test
  void nineReadingsAreIndicative() {
    List<GreenSurvey> course = new ArrayList<>(InventedSurvey.course(4, 18, 0.5, 71));
    GreenSurvey few = course.get(0);
    course.set(0, InventedSurvey.survey(few.green(), few.readings().subList(0, 9)));
    Outcome outcome = map(course).outcomes().get(0);
    assertThat(outcome).isInstanceOf(Outcome.Mapped.class);
    assertThat(outcome.remarks()).contains("9 readings: indicative, no patches are outlined");
  }

  @Test
  void readingsThatNeverChangeAreNotMapped() {
    Green green = InventedSurvey.green("G1", 500_000, 5_316_300, 1);
    List<Reading> same = InventedSurvey.readings(green, 14, (x, y) -> 21, 0, 1);
    Outcome.NoMap none =
        notMapped(map(List.of(InventedSurvey.survey(green, same))).outcomes().get(0));
    assertThat(none.why().reason()).isEqualTo("all 14 readings equal 21 %");
  }

  @Test
  void readingsOnALineAreAProfile() {
    Green green = InventedSurvey.green("G1", 500_000, 5_316_300, 1);
    List<Reading> line = new ArrayList<>();
    for (int i = 0; i < 14; i++) {
      line.add(
          InventedSurvey.reading("G1", "" + i, 499_991 + 1.3 * i, 5_316_295 + 0.7 * i, 18 + i % 5));
    }
    Outcome.NoMap none =
        notMapped(map(List.of(InventedSurvey.survey(green, line))).outcomes().get(0));
    assertThat(none.why().reason())
        .isEqualTo("the 14 readings lie on one line: a profile, not a map");
  }

  @Test
  void aGreenWithManyReadingsHasItsOwnVariogram() {
    List<GreenSurvey> course = new ArrayList<>(InventedSurvey.course(3, 20, 0.5, 91));
    Green big = InventedSurvey.green("BIG", 501_000, 5_316_300, 5);
    course.add(
        InventedSurvey.survey(
            big,
            InventedSurvey.readings(
                big, 120, (x, y) -> InventedSurvey.wetPlace(x, y, 501_000, 5_316_300), 0.5, 5)));
    SurveyMap map = map(course);
    assertThat(map.variograms()).hasSize(2);
    assertThat(map.variograms().get(0).greens()).containsExactly("G1", "G2", "G3");
    assertThat(map.variograms().get(1).greens()).containsExactly("BIG");
    // three greens of twenty: no pair crosses from one to another
    assertThat(map.variograms().get(0).pairs()).isLessThanOrEqualTo(3 * 190);
  }

  @Test
  void replicatesCountOnceAndWeighMore() {
    List<GreenSurvey> course = InventedSurvey.course(4, 18, 0.5, 101);
    GreenSurvey first = course.get(0);
    List<Reading> twice = new ArrayList<>(first.readings());
    Reading r = twice.get(0);
    twice.add(InventedSurvey.reading("G1", r.label().stationId(), r.x() + 0.1, r.y(), r.pct()));
    List<GreenSurvey> replicated = new ArrayList<>(course);
    replicated.set(0, InventedSurvey.survey(first.green(), twice));
    Outcome.Mapped before = mapped(map(course).outcomes().get(0));
    Outcome.Mapped after = mapped(map(replicated).outcomes().get(0));
    assertThat(after.stations().stations()).hasSize(18);
    assertThat(after.readingsUsed()).isEqualTo(19);
    assertThat(sdAt(after, r.x(), r.y())).isLessThan(sdAt(before, r.x(), r.y()));
  }

  private static double sdAt(Outcome.Mapped map, double x, double y) {
    var grid = map.surface().sd().grid();
    int column = (int) ((x - grid.west()) / grid.cell());
    int row = (int) ((grid.north() - y) / grid.cell());
    return map.surface().sd().value(grid.index(row, column));
  }

  @Test
  void controlStationsAreNotMapped() {
    GreenSurvey green = InventedSurvey.course(1, 18, 0.5, 111).get(0);
    List<Reading> readings = new ArrayList<>(green.readings());
    Reading r = readings.get(0);
    readings.set(
        0,
        new Reading(
            r.label(),
            r.position(),
            Reading.Moisture.raw(60),
            r.protocol(),
            Reading.Role.CONTROL,
            r.quality()));
    Outcome outcome =
        map(List.of(InventedSurvey.survey(green.green(), readings))).outcomes().get(0);
    assertThat(outcome.summary().maximum()).isLessThan(40);
    assertThat(outcome.remarks()).contains("1 reading of control stations not mapped");
  }

  @Test
  void coincidentStationsAreFoundWithTheirRows() {
    GreenSurvey green = InventedSurvey.course(1, 18, 0.5, 121).get(0);
    List<Reading> readings = new ArrayList<>(green.readings());
    Reading r = readings.get(3);
    readings.add(InventedSurvey.reading("G1", "again", r.x(), r.y() + 0.005, 30));
    List<Coincidence> found = Coincidence.of(InventedSurvey.survey(green.green(), readings));
    assertThat(found).hasSize(1);
    assertThat(found.get(0).toString()).contains("share a place").contains("30.0");
  }

  @Test
  void aGreenWithoutABandHasNoClasses() {
    GreenSurvey s = InventedSurvey.course(1, 18, 0.5, 131).get(0);
    GreenSurvey bare = new GreenSurvey(s.green(), "S1", s.readings(), Optional.empty());
    Outcome.Mapped green = mapped(map(List.of(bare)).outcomes().get(0));
    assertThat(green.parts().zones()).isEmpty();
    assertThat(green.parts().isoLines()).isNotEmpty();
  }

  @Test
  void theCallerCanStopIt() {
    Progress stopped =
        new Progress() {
          @Override
          public void report(String phase, long done, long total) {}

          @Override
          public boolean cancelled() {
            return true;
          }
        };
    List<GreenSurvey> course = InventedSurvey.course(3, 18, 0.5, 141);
    Assertions.assertThatThrownBy(() -> MAPPER.map(course, 2, stopped))
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void theSdIsSmallerNearReadingsThanFarFromThem() {
    GreenSurvey s = InventedSurvey.course(1, 40, 0.5, 151).get(0);
    Outcome.Mapped green = mapped(map(List.of(s)).outcomes().get(0));
    CellGrid grid = green.surface().sd().grid();
    double near = 0;
    int nearCount = 0;
    double far = 0;
    int farCount = 0;
    for (int i = 0; i < grid.size(); i++) {
      if (!green.surface().sd().has(i)) {
        continue;
      }
      double x = grid.x(i % grid.columns());
      double y = grid.y(i / grid.columns());
      double d =
          s.readings().stream()
              .mapToDouble(r -> Math.hypot(r.x() - x, r.y() - y))
              .min()
              .orElseThrow();
      if (d < 0.5) {
        near += green.surface().sd().value(i);
        nearCount++;
      } else if (d > 2.5) {
        far += green.surface().sd().value(i);
        farCount++;
      }
    }
    assertThat(near / nearCount).isLessThan(far / farCount);
  }

  private static List<Reading> moved(List<Reading> readings, double dx, double dy, double more) {
    return readings.stream()
        .map(
            r ->
                InventedSurvey.reading(
                    r.label().greenId(),
                    r.label().stationId(),
                    r.x() + dx,
                    r.y() + dy,
                    r.pct() + more))
        .toList();
  }

  private static double[] mean(SurveyMap map, int i) {
    return present(mapped(map.outcomes().get(i)).surface().mean().values());
  }

  private static double[] sd(SurveyMap map, int i) {
    return present(mapped(map.outcomes().get(i)).surface().sd().values());
  }

  private static double[] present(double[] values) {
    return Arrays.stream(values).filter(v -> !Double.isNaN(v)).toArray();
  }

  private static double[] plus(double[] values, double more) {
    return Arrays.stream(values).map(v -> v + more).toArray();
  }

  private static void assertClose(double[] actual, double[] expected, double tolerance) {
    assertThat(actual).hasSameSizeAs(expected);
    for (int i = 0; i < actual.length; i++) {
      assertThat(actual[i]).isCloseTo(expected[i], within(tolerance));
    }
  }
}
