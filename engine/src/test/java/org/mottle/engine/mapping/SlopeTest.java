package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;

/** Greens that dry evenly from one end to the other have no structure but are not flat. */
class SlopeTest {
  private static final double SLOPE = 0.25;

  private static List<GreenSurvey> sloping(double slope, long seed) {
    List<GreenSurvey> course = new ArrayList<>();
    for (int g = 0; g < 4; g++) {
      double cx = 500_000 + 100.0 * g;
      Green green = InventedSurvey.green("G" + (g + 1), cx, 5_316_300, seed + g);
      course.add(
          InventedSurvey.survey(
              green,
              InventedSurvey.planned(
                  green, 5, (x, y) -> 20 + slope * (x - cx), 0.8, 100 * seed + g)));
    }
    return course;
  }

  private static List<Outcome.Mapped> maps(List<GreenSurvey> course, MappingSettings settings) {
    return new SurveyMapper(settings).map(course, 2, Progress.NONE).maps();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aSlopeIsMappedAsOne(long seed) {
    MappingSettings settings =
        InventedSurvey.QUICK.withUncertainty(
            InventedSurvey.QUICK.uncertainty().withNextStations(1));
    for (Outcome.Mapped map : maps(sloping(SLOPE, seed), settings)) {
      assertThat(map.remarks())
          .contains("moisture slopes across the green: a plane is mapped beneath the pattern")
          .noneMatch(r -> r.contains("green's mean"));
      assertThat(map.parts().next()).isPresent();
      Raster mean = map.surface().mean();
      CellGrid grid = mean.grid();
      double cx = map.subject().green().outline().getCentroid().getX();
      double worst = 0;
      for (int i = 0; i < grid.size(); i++) {
        if (mean.has(i)) {
          double truth = 20 + SLOPE * (grid.x(i % grid.columns()) - cx);
          double off = Math.abs(mean.value(i) - truth);
          worst = Math.max(worst, off / map.surface().sd().value(i));
        }
      }
      assertThat(worst).as("seed %d, standard deviations", seed).isLessThan(4);
    }
  }

  @Test
  void itIsMappedFromUncertainPositionsTooAndLessSurely() {
    MappingSettings uncertain = InventedSurvey.QUICK.withPositions(new PositionSettings(1, 2));
    List<Outcome.Mapped> exact = maps(sloping(SLOPE, 4), InventedSurvey.QUICK);
    List<Outcome.Mapped> maps = maps(sloping(SLOPE, 4), uncertain);
    for (int i = 0; i < maps.size(); i++) {
      assertThat(maps.get(i).remarks())
          .contains("moisture slopes across the green: a plane is mapped beneath the pattern");
      assertThat(maps.get(i).parts().whole().sd())
          .isGreaterThan(exact.get(i).parts().whole().sd() + 0.1 * SLOPE);
    }
  }

  @Test
  void neitherNoiseNorAWetPlaceIsASlope() {
    for (long seed = 1; seed <= 4; seed++) {
      List<GreenSurvey> both = new ArrayList<>(sloping(0, seed));
      assertThat(maps(both, InventedSurvey.QUICK)).noneMatch(SlopeTest::slopes);
      assertThat(maps(InventedSurvey.plannedCourse(3, 0.8, seed), InventedSurvey.QUICK))
          .noneMatch(SlopeTest::slopes);
    }
  }

  private static boolean slopes(Outcome.Mapped map) {
    return map.remarks().stream().anyMatch(r -> r.contains("moisture slopes"));
  }
}
