package org.mottle.export.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.mottle.demo.site.Build;
import org.mottle.demo.truth.Survey;
import org.mottle.engine.mapping.Stations.Station;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/** The courses of the study and its own kriging. */
class CoursesTest {
  private static final List<GreenCase> CLEAN = new DemoCourses(true).of(1);

  @Test
  void cleanReadingsLeaveOutWhatAReviewWould() {
    List<GreenCase> course = CLEAN;
    List<String> mapped = labels(course);
    assertThat(mapped)
        .contains("S1/G1", "S5/G1", "S3/G9")
        .doesNotContain("S4/G9", "S2/G8", "S4/G7")
        .hasSize(42);
    assertThat(stations(course, "S2/G4")).doesNotContain("7");
    assertThat(stations(course, "S2/G2")).doesNotContain("9", "10", "11", "12");
    assertThat(readings(course, "S5/G1")).allMatch(r -> r.pct() > 5);
  }

  @Test
  void readingsAsTheyAreKeepTheirFaults() {
    List<GreenCase> course = new DemoCourses(false).of(1);
    assertThat(labels(course))
        .contains("S4/G9", "S2/G8")
        .doesNotContain("S5/G1", "S4/G7")
        .hasSize(43);
    assertThat(readings(course, "S1/G9")).anyMatch(r -> r.pct() < 1);
  }

  /**
   * Over some greens, readings less the truth at their cell: no bias once dried and B are undone.
   */
  @Test
  void cleanReadingsAreOfTheStartOfTheSurvey() {
    double sum = 0;
    int n = 0;
    for (List<GreenCase> course : List.of(CLEAN, new DemoCourses(true).of(2))) {
      for (GreenCase green : course) {
        double truth = Arrays.stream(green.truth()).average().orElseThrow();
        boolean plain = List.of("G1", "G2", "G4", "G7").contains(green.subject().green().id());
        for (Station station : green.stations()) {
          sum += plain ? station.value() - truth : 0;
          n += plain ? 1 : 0;
        }
      }
    }
    // the control stations know the drying within some tenths of a per cent
    assertThat(sum / n).as("seeds 1 and 2").isCloseTo(0, within(0.35));
  }

  @Test
  void bandsAfterRainHangOnFieldCapacity() {
    assertThat(DemoCourses.band(Survey.S1, Build.SAND)).isEqualTo(TargetBand.of(21, 27));
    assertThat(DemoCourses.band(Survey.S5, Build.PUSH_UP_SOIL)).isEqualTo(TargetBand.of(28, 34));
    assertThat(DemoCourses.band(Survey.S3, Build.SAND)).isEqualTo(TargetBand.of(15.6, 20.4));
    assertThat(DemoCourses.band(Survey.S4, Build.SAND)).isEqualTo(TargetBand.of(14.0, 18.8));
  }

  @Test
  void theOtherGeneratorIsSeededAndWithinItsBounds() {
    List<GreenCase> course = new OtherCourses().of(3);
    List<GreenCase> again = new OtherCourses().of(3);
    assertThat(course).hasSize(36);
    for (int i = 0; i < course.size(); i++) {
      GreenCase green = course.get(i);
      assertThat(green.truth()).as("seed 3").containsExactly(again.get(i).truth());
      assertThat(green.subject().green().areaM2()).isBetween(300.0, 650.0);
      assertThat(green.stations().size()).isBetween(12, 24);
      assertThat(green.known().rangeM()).isBetween(6.0, 20.0);
    }
  }

  @Test
  void exactFieldsHaveTheirCovariance() {
    double[] x = {0, 1, 4, 30};
    ExactField field = new ExactField(new Exponential(1, 3), x, new double[4]);
    Well19937c random = new Well19937c(11);
    double[] products = new double[4];
    int draws = 20_000;
    for (int d = 0; d < draws; d++) {
      double[] z = field.draw(random);
      for (int i = 0; i < 4; i++) {
        products[i] += z[0] * z[i] / draws;
      }
    }
    for (int i = 0; i < 4; i++) {
      assertThat(products[i])
          .as("seed 11, lag %s", x[i])
          .isCloseTo(Math.exp(-x[i] / 3), within(0.04));
    }
  }

  /** Spherical, sill 4: γ(0) left by 1 m of error an axis at both ends, for three ranges. */
  @Test
  void smoothingLeavesTheNuggetThatErrorsOfPositionMake() {
    // computed by simulation for the project's figures of position error, two decimals
    double[][] expected = {{6, 1.68}, {10, 1.04}, {15, 0.70}};
    for (double[] each : expected) {
      NestedModel model = NestedModel.of(0, new Spherical(4, each[0]));
      SmoothedCovariance among = new SmoothedCovariance(model, Math.sqrt(2));
      assertThat(4 - among.at(0)).as("range %s", each[0]).isCloseTo(each[1], within(0.03));
    }
  }

  /** Weights sum to one: adding to the readings adds to the map and leaves its error alone. */
  @Test
  void krigingOfTheStudyMovesWithTheReadings() {
    GreenCase green = new OtherCourses().of(5).get(0);
    CellDistribution map = krige(green.stations(), green);
    List<Station> raised =
        green.stations().stream()
            .map(s -> new Station(s.insertions(), s.x(), s.y(), s.value() + 5))
            .toList();
    CellDistribution higher = krige(raised, green);
    for (int i = 0; i < map.cells(); i += 7) {
      assertThat(higher.mean(i)).isCloseTo(map.mean(i) + 5, within(1e-9));
      assertThat(higher.sd(i)).isCloseTo(map.sd(i), within(1e-12));
    }
    assertThat(IntStream.range(0, map.cells()).mapToDouble(map::sd).max().orElseThrow())
        .isLessThan(1.2 * Math.sqrt(green.known().structure().sill()));
  }

  private static CellDistribution krige(List<Station> stations, GreenCase green) {
    return new PositionKriging(stations, green.known(), 0.5, 0.5).predict(green.cells());
  }

  private static List<String> labels(List<GreenCase> course) {
    return course.stream().map(CoursesTest::label).toList();
  }

  private static String label(GreenCase green) {
    return green.subject().surveyId() + "/" + green.subject().green().id();
  }

  private static List<Reading> readings(List<GreenCase> course, String label) {
    return course.stream()
        .filter(c -> label(c).equals(label))
        .flatMap(c -> c.subject().readings().stream())
        .toList();
  }

  private static List<String> stations(List<GreenCase> course, String label) {
    return readings(course, label).stream()
        .map(r -> r.label().stationId())
        .distinct()
        .collect(Collectors.toList());
  }
}
