package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.progress.Progress;

/** What the draws of a map depend on, and what they do not. */
class RealisationsTest {
  private static final MappingSettings SETTINGS =
      MappingSettings.defaults()
          .withPositions(new PositionSettings(0.7, 0.5))
          .withUncertainty(new UncertaintySettings(120, 6, 7, 2, 0.3));
  private static final List<GreenSurvey> COURSE = InventedSurvey.plannedCourse(3, 0.6, 17);

  private static SurveyMap map(List<GreenSurvey> subjects, MappingSettings settings, int threads) {
    return new SurveyMapper(settings).map(subjects, threads, Progress.NONE);
  }

  @Test
  void anyNumberOfThreadsAndEveryRunGivesTheSameBytes() {
    List<String> one = Fingerprint.of(map(COURSE, SETTINGS, 1));
    for (int threads : new int[] {1, 2, 4}) {
      assertThat(Fingerprint.of(map(COURSE, SETTINGS, threads)))
          .as("%d threads", threads)
          .isEqualTo(one);
    }
  }

  @Test
  void aSingleGreenIsWorkedByAllThreadsToTheSameBytes() {
    List<GreenSurvey> single = COURSE.subList(0, 1);
    assertThat(Fingerprint.of(map(single, SETTINGS, 4)))
        .isEqualTo(Fingerprint.of(map(single, SETTINGS, 1)));
  }

  @Test
  void anotherSeedChangesTheRealisationsAndNothingThatIsExact() {
    List<GreenSurvey> single = COURSE.subList(0, 1);
    Outcome.Mapped one = map(single, SETTINGS, 1).maps().get(0);
    Outcome.Mapped other =
        map(single, SETTINGS.withUncertainty(SETTINGS.uncertainty().withSeed(8)), 1).maps().get(0);
    assertThat(other.surface().mean().values()).containsExactly(one.surface().mean().values());
    assertThat(other.surface().sd().values()).containsExactly(one.surface().sd().values());
    assertThat(other.surface().chances().orElseThrow().wet().values())
        .containsExactly(one.surface().chances().orElseThrow().wet().values());
    assertThat(intervals(other)).isNotEqualTo(intervals(one));
  }

  private static List<Double> intervals(Outcome.Mapped map) {
    return map.parts().zones().stream().map(Zone::areaLow).toList();
  }

  @Test
  void aGreenIsDrawnAlikeAloneAndAmongOthers() {
    List<Prepared> prepared = COURSE.stream().map(s -> Prepared.of(s, SETTINGS)).toList();
    MapVariogram pool = new Variograms(SETTINGS, 1, Progress.NONE).of(prepared).get(0);
    SurveyMap together = map(COURSE, SETTINGS, 2);
    GreenMapper mapper = new GreenMapper(SETTINGS, 2, Progress.NONE);
    for (int i = 0; i < COURSE.size(); i++) {
      Optional<GreenPopulation> population =
          GreenPopulation.of(prepared.subList(i, i + 1), SETTINGS.uncertainty().seed()).get(0);
      Outcome alone = mapper.map(prepared.get(i), pool, population, true);
      assertThat(Fingerprint.of(alone)).isEqualTo(Fingerprint.of(together.outcomes().get(i)));
    }
  }

  @Test
  void twoGreensReadAlikeAreNotDrawnAlike() {
    GreenSurvey one = COURSE.get(0);
    GreenSurvey twin =
        new GreenSurvey(
            InventedSurvey.renamed(one.green(), "TWIN"), "S1", one.readings(), one.band());
    List<Outcome.Mapped> maps = map(List.of(one, twin), SETTINGS, 1).maps();
    assertThat(intervals(maps.get(1))).isNotEqualTo(intervals(maps.get(0)));
  }
}
