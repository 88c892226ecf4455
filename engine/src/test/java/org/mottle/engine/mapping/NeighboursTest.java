package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.plan.StationRanking;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;

/** What greens and surveys have to do with each other, and what not. */
class NeighboursTest {

  private static SurveyMap map(List<GreenSurvey> subjects, MappingSettings settings) {
    return new SurveyMapper(settings).map(subjects, 2, Progress.NONE);
  }

  private static Outcome.Mapped mapped(SurveyMap map, int i) {
    return (Outcome.Mapped) map.outcomes().get(i);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aProbeInAirOnOneGreenMovesNoOther(long seed) {
    List<GreenSurvey> course = InventedSurvey.plannedCourse(4, 0.6, seed);
    GreenSurvey first = course.get(0);
    List<Reading> faulty = new ArrayList<>(first.readings());
    faulty.set(7, InventedSurvey.reading(faulty.get(7), 0.4));
    List<Reading> without = new ArrayList<>(first.readings());
    without.remove(7);
    SurveyMap sound = map(course, InventedSurvey.QUICK);
    SurveyMap fault = map(with(course, faulty), InventedSurvey.QUICK);
    SurveyMap leftOut = map(with(course, without), InventedSurvey.QUICK);
    for (int g = 1; g < course.size(); g++) {
      Surface beside = mapped(fault, g).surface();
      // the variogram never sees the reading
      assertThat(beside.mean().values())
          .containsExactly(mapped(leftOut, g).surface().mean().values());
      Surface before = mapped(sound, g).surface();
      for (int i = 0; i < beside.mean().grid().size(); i++) {
        if (beside.mean().has(i)) {
          double moved = Math.abs(beside.mean().value(i) - before.mean().value(i));
          assertThat(moved / before.sd().value(i)).as("seed %d, green %d", seed, g).isLessThan(0.5);
        }
      }
    }
  }

  private static List<GreenSurvey> with(List<GreenSurvey> course, List<Reading> first) {
    List<GreenSurvey> changed = new ArrayList<>(course);
    changed.set(0, InventedSurvey.survey(course.get(0).green(), first));
    return changed;
  }

  private static GreenSurvey in(String survey, GreenSurvey s, double more) {
    List<Reading> readings =
        s.readings().stream().map(r -> InventedSurvey.reading(r, r.pct() + more)).toList();
    return new GreenSurvey(s.green(), survey, readings, s.band());
  }

  @Test
  void onlyTheLastSurveyOfAGreenHasNextStations() {
    List<GreenSurvey> course = InventedSurvey.plannedCourse(2, 0.6, 5);
    List<GreenSurvey> season =
        List.of(in("S1", course.get(0), 0), in("S1", course.get(1), 0), in("S2", course.get(0), 1));
    SurveyMap map =
        map(
            season,
            InventedSurvey.QUICK.withUncertainty(
                InventedSurvey.QUICK.uncertainty().withNextStations(2)));
    assertThat(mapped(map, 0).parts().next()).isEmpty();
    StationRanking other = mapped(map, 1).parts().next().orElseThrow();
    StationRanking last = mapped(map, 2).parts().next().orElseThrow();
    assertThat(other.stations()).hasSizeLessThanOrEqualTo(2);
    assertThat(last.stations()).isNotEmpty().hasSizeLessThanOrEqualTo(2);
    assertThat(last.after()).isLessThan(last.before());
  }

  @Test
  void noNextStationsWhereNoneAreAskedFor() {
    SurveyMap map = map(InventedSurvey.plannedCourse(1, 0.6, 6), InventedSurvey.QUICK);
    assertThat(mapped(map, 0).parts().next()).isEmpty();
  }

  @Test
  void greensBuiltAlikeShareAVariogramOverTheirSurveys() {
    List<GreenSurvey> course = InventedSurvey.plannedCourse(4, 0.6, 7);
    List<GreenSurvey> season = new ArrayList<>();
    for (String survey : List.of("S1", "S2")) {
      for (int g = 0; g < 4; g++) {
        season.add(in(survey, built(course.get(g), g < 3 ? "sand" : "push-up"), g));
      }
    }
    SurveyMap map = map(season, InventedSurvey.QUICK);
    assertThat(map.variograms()).hasSize(2);
    MapVariogram sand = map.variograms().get(0);
    assertThat(sand.greens()).containsExactly("G1", "G2", "G3");
    assertThat(sand.surveys()).containsExactly("S1", "S2");
    assertThat(sand.source())
        .isEqualTo(
            "a variogram pooled over 3 greens and 2 surveys (" + sand.stations() + " stations)");
    assertThat(map.variograms().get(1).greens()).containsExactly("G4");
  }

  private static GreenSurvey built(GreenSurvey s, String build) {
    return new GreenSurvey(
        InventedSurvey.built(s.green(), build), s.surveyId(), s.readings(), s.band());
  }

  @Test
  void poolingBySurveyOrGreenIsWhatItSays() {
    List<GreenSurvey> course = InventedSurvey.plannedCourse(2, 0.6, 9);
    List<GreenSurvey> season =
        List.of(
            in("S1", course.get(0), 0), in("S1", course.get(1), 0),
            in("S2", course.get(0), 1), in("S2", course.get(1), 1));
    VariogramSettings variogram = VariogramSettings.defaults();
    SurveyMap bySurvey =
        map(season, InventedSurvey.QUICK.withVariogram(variogram.withPooling(Pooling.SURVEY)));
    assertThat(bySurvey.variograms())
        .extracting(MapVariogram::surveys)
        .containsExactly(List.of("S1"), List.of("S2"));
    SurveyMap byGreen =
        map(season, InventedSurvey.QUICK.withVariogram(variogram.withPooling(Pooling.GREEN)));
    assertThat(byGreen.variograms())
        .extracting(MapVariogram::greens)
        .containsExactly(List.of("G1"), List.of("G2"));
  }

  @Test
  void aSurveyThatMustNotBeMappedStaysOutOfTheVariogram() {
    List<GreenSurvey> course = new ArrayList<>(InventedSurvey.plannedCourse(3, 0.6, 8));
    course.set(0, course.get(0).withObstacle(new Refusal("fractions", "per cent")));
    SurveyMap map = map(course, InventedSurvey.QUICK);
    assertThat(map.notMapped())
        .singleElement()
        .satisfies(n -> assertThat(n.why().reason()).isEqualTo("fractions"));
    assertThat(map.variograms().get(0).greens()).containsExactly("G2", "G3");
    assertThat(map.maps()).hasSize(2);
  }
}
