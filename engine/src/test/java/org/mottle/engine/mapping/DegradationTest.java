package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/** A map that cannot say one thing says the next lesser, with the reason in words. */
class DegradationTest {
  private static final MappingSettings QUICK = InventedSurvey.QUICK;
  private static final List<GreenSurvey> COURSE = InventedSurvey.plannedCourse(4, 0.5, 29);

  private static Outcome first(MappingSettings settings, List<GreenSurvey> subjects) {
    return new SurveyMapper(settings).map(subjects, 2, Progress.NONE).outcomes().get(0);
  }

  private static Outcome.Mapped firstMap(MappingSettings settings, List<GreenSurvey> subjects) {
    Outcome outcome = first(settings, subjects);
    assertThat(outcome).isInstanceOf(Outcome.Mapped.class);
    return (Outcome.Mapped) outcome;
  }

  /** The course with another first green. */
  private static List<GreenSurvey> with(GreenSurvey other) {
    List<GreenSurvey> course = new ArrayList<>(COURSE);
    course.set(0, other);
    return course;
  }

  private static GreenSurvey thinned(int n) {
    GreenSurvey s = COURSE.get(0);
    List<Reading> all = s.readings();
    List<Reading> kept = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      kept.add(all.get(i * all.size() / n));
    }
    return InventedSurvey.survey(s.green(), kept);
  }

  private static void hasNoMarks(Outcome.Mapped map) {
    assertThat(map.parts().patches()).isEmpty();
    assertThat(map.parts().spots()).isEmpty();
    assertThat(map.parts().zones()).isNotEmpty();
  }

  @Test
  void aPlannedSurveyHasPatches() {
    Outcome.Mapped map = firstMap(QUICK, COURSE);
    assertThat(map.standing()).isEqualTo(Standing.PATCHES);
    assertThat(map.parts().patches()).isNotEmpty();
  }

  @Test
  void tenReadingsAreIndicative() {
    Outcome.Mapped map = firstMap(QUICK, with(thinned(10)));
    assertThat(map.standing()).isEqualTo(Standing.INDICATIVE);
    assertThat(map.remarks()).contains("10 readings: indicative, no patches are outlined");
    assertThat(map.basis().method()).isEqualTo(Method.KRIGING);
    hasNoMarks(map);
    assertThat(map.parts().marks().orElseThrow().expected()).hasSize(2);
  }

  @Test
  void sevenReadingsAreNoMap() {
    Outcome.NoMap none = (Outcome.NoMap) first(QUICK, with(thinned(7)));
    assertThat(none.why().reason()).isEqualTo("7 readings: a summary, not a map");
    assertThat(none.why().remedy()).isEqualTo("a map needs at least 8 places read");
  }

  @Test
  void positionsWorseThanThePatternLeaveProbabilities() {
    Outcome.Mapped map = firstMap(QUICK.withPositions(new PositionSettings(8, 0)), COURSE);
    assertThat(map.standing()).isEqualTo(Standing.PROBABILITIES);
    assertThat(map.remarks())
        .anyMatch(
            r -> r.matches("the positions are too uncertain to outline patches: \\d+ % .* lost.*"));
    hasNoMarks(map);
  }

  @Test
  void aBandFinerThanTheReadingsIsNotOutlined() {
    GreenSurvey s = COURSE.get(0);
    GreenSurvey fine =
        new GreenSurvey(s.green(), "S1", s.readings(), Optional.of(TargetBand.of(19.7, 19.9)));
    Outcome.Mapped map = firstMap(QUICK, with(fine));
    assertThat(map.standing()).isEqualTo(Standing.PROBABILITIES);
    assertThat(map.remarks())
        .anyMatch(r -> r.startsWith("the readings do not resolve a band of 0.20 %: "));
    assertThat(map.areaM2(ZoneClass.IN_BAND)).isZero();
    hasNoMarks(map);
  }

  @Test
  void aGreenOfWhichMostCannotBeToldSaysSo() {
    GreenRemarks remarks = new GreenRemarks(QUICK);
    Zone untold = zone(ZoneClass.CANNOT_TELL, 260);
    remarks.onZones(List.of(untold, zone(ZoneClass.DRY, 240)), 500);
    assertThat(remarks.standing()).isEqualTo(Standing.PROBABILITIES);
    assertThat(remarks.lines())
        .containsExactly("52 % of the green cannot be told: the readings do not resolve the band");
    GreenRemarks fewer = new GreenRemarks(QUICK);
    fewer.onZones(List.of(untold, zone(ZoneClass.DRY, 270)), 530);
    assertThat(fewer.standing()).isEqualTo(Standing.PATCHES);
    assertThat(fewer.lines()).isEmpty();
  }

  private static Zone zone(ZoneClass cls, double areaM2) {
    return new Zone(cls, new GeometryFactory().createPolygon(), areaM2, 20, 1);
  }

  @Test
  void withoutStructureTheMapIsNearlyTheMean() {
    MappingSettings allDraws = QUICK.withUncertainty(new UncertaintySettings(50, 25, 0, 0, 0));
    int said = 0;
    for (long seed = 1; seed <= 5; seed++) {
      for (Outcome.Mapped map :
          new SurveyMapper(allDraws).map(noise(seed), 2, Progress.NONE).maps()) {
        double spread = sd(map.surface().mean());
        if (map.remarks().stream().anyMatch(r -> r.contains("no spatial structure"))) {
          said++;
          assertThat(map.standing()).as("seed %d", seed).isEqualTo(Standing.PROBABILITIES);
          assertThat(spread).as("seed %d", seed).isLessThan(0.6 * map.summary().sd());
          assertThat(map.parts().patches()).isEmpty();
        }
        double sure = map.areaM2(ZoneClass.DRY) + map.areaM2(ZoneClass.WET);
        assertThat(sure).as("seed %d", seed).isLessThan(0.02 * map.subject().green().areaM2());
      }
    }
    assertThat(said).as("of 20 greens of pure noise").isGreaterThan(10);
  }

  private static List<GreenSurvey> noise(long seed) {
    List<GreenSurvey> noise = new ArrayList<>();
    for (int g = 0; g < 4; g++) {
      Green green = InventedSurvey.green("G" + g, 500_000 + 100.0 * g, 5_316_300, seed);
      noise.add(
          InventedSurvey.survey(
              green, InventedSurvey.planned(green, 5, (x, y) -> 20, 2, 100 * seed + g)));
    }
    return noise;
  }

  private static double sd(Raster raster) {
    return new StandardDeviation()
        .evaluate(Arrays.stream(raster.values()).filter(v -> !Double.isNaN(v)).toArray());
  }

  @Test
  void aSmallPoolIsBorrowedAndSaysSo() {
    Outcome.Mapped map = firstMap(QUICK, COURSE.subList(0, 1));
    assertThat(map.remarks())
        .contains("borrowed variogram: too few stations in the pool for one of its own");
    assertThat(map.standing()).isEqualTo(Standing.PATCHES);
    assertThat(firstMap(QUICK, COURSE).remarks()).noneMatch(r -> r.startsWith("borrowed"));
  }

  @Test
  void inverseDistanceHasNoPatches() {
    Outcome.Mapped map = firstMap(QUICK.withMethod(Method.INVERSE_DISTANCE), COURSE);
    assertThat(map.standing()).isEqualTo(Standing.INDICATIVE);
    assertThat(map.parts().marks()).isEmpty();
    assertThat(map.surface().chances()).isEmpty();
    assertThat(map.surface().sd().values()).containsOnly(Double.NaN);
    hasNoMarks(map);
  }

  @Test
  void readingsOfTwoValuesHaveNoVariogramOfTheirOwn() {
    GreenSurvey coarse =
        InventedSurvey.with(COURSE.get(0), r -> InventedSurvey.reading(r, r.pct() > 20 ? 21 : 20));
    Outcome.NoMap alone = (Outcome.NoMap) first(QUICK, List.of(coarse));
    assertThat(alone.why().reason()).startsWith("no variogram: ");
    assertThat(alone.why().remedy()).isNotBlank();
  }

  @Test
  void aSurveyOutsideItsPoolIsRefusedInWords() {
    GreenSurvey s = COURSE.get(0);
    List<Reading> coarse =
        s.readings().stream().map(r -> InventedSurvey.reading(r, r.pct() > 20 ? 21 : 20)).toList();
    GreenSurvey later = new GreenSurvey(s.green(), "S2", coarse, s.band());
    List<GreenSurvey> both = new ArrayList<>(List.of(later));
    both.addAll(COURSE);
    Outcome.NoMap none = (Outcome.NoMap) first(QUICK, both);
    assertThat(none.why().reason()).startsWith("no variogram: ");
    assertThat(none.why().remedy()).isNotBlank();
  }
}
