package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/** What a map says beside its figures, and what is refused in words. */
class RemarksTest {
  private static final MappingSettings DEFAULTS = MappingSettings.defaults();

  private static SurveyMap map(List<GreenSurvey> subjects, MappingSettings settings) {
    return new SurveyMapper(settings).map(subjects, 1, Progress.NONE);
  }

  @Test
  void patchesWithoutAReadingAreCounted() {
    int told = 0;
    for (long seed = 1; seed <= 5; seed++) {
      for (Outcome.Mapped green : map(InventedSurvey.course(6, 14, 1, seed), DEFAULTS).maps()) {
        long unread = green.parts().patches().stream().filter(p -> p.readings() == 0).count();
        String wanted =
            unread == 1 ? "1 patch holds no reading" : unread + " patches hold no reading";
        assertThat(green.remarks().contains(wanted)).as("seed %d", seed).isEqualTo(unread > 0);
        told += unread > 0 ? 1 : 0;
      }
    }
    assertThat(told).as("greens with such a patch").isPositive();
  }

  @Test
  void aCellWiderThanAFifthOfTheGreenIsCoarse() {
    List<GreenSurvey> course = InventedSurvey.course(3, 18, 0.5, 7);
    double limit = 0.2 * Math.sqrt(course.get(0).green().areaM2());
    assertThat(map(course, DEFAULTS.withCellM(0.99 * limit)).outcomes().get(0).remarks())
        .noneMatch(r -> r.contains("coarse"));
    assertThat(map(course, DEFAULTS.withCellM(1.01 * limit)).outcomes().get(0).remarks())
        .anyMatch(r -> r.contains("coarse") && r.endsWith(" m or less shows the green's shape"));
  }

  @Test
  void tooManyCellsNamesACellThatCanBeHeld() {
    List<GreenSurvey> course = InventedSurvey.course(1, 18, 0.5, 8);
    Outcome.NoMap none = map(course, DEFAULTS.withCellM(1e-4)).notMapped().get(0);
    assertThat(none.why().reason()).endsWith("cells of 1.0E-4 m are more than a map can hold");
    var remedy =
        java.util.regex.Pattern.compile("a cell of ([0-9.]+) m or more can be held")
            .matcher(none.why().remedy());
    assertThat(remedy.matches()).as(none.why().remedy()).isTrue();
    double cell = Double.parseDouble(remedy.group(1));
    double box = course.get(0).green().outline().getEnvelopeInternal().getArea();
    assertThat(box / (cell * cell)).isBetween(2e6, 1e7);
  }

  @Test
  void keepFirstKeepsTheFirstOfTheFileWhereverItLies() {
    GreenSurvey green = InventedSurvey.course(1, 18, 0.5, 9).get(0);
    MappingSettings keepFirst = DEFAULTS.withDuplicates(DuplicatePolicy.KEEP_FIRST);
    for (boolean firstIsDrier : new boolean[] {true, false}) {
      List<Reading> readings = new ArrayList<>(green.readings());
      Reading kept = at(readings.get(0), "a", firstIsDrier ? 5 : 60, 2);
      Reading left = at(readings.get(0), "b", firstIsDrier ? 60 : 5, 3);
      readings.set(0, kept);
      readings.add(left);
      Collections.reverse(readings);
      Outcome outcome =
          map(List.of(InventedSurvey.survey(green.green(), readings)), keepFirst).outcomes().get(0);
      assertThat(outcome.remarks()).contains("1 station at the place of another left out");
      assertThat(outcome.stations().stations())
          .hasSize(18)
          .anyMatch(s -> s.insertions().equals(List.of(kept)))
          .noneMatch(s -> s.insertions().contains(left));
      assertThat(((Outcome.Mapped) outcome).readingsUsed()).isEqualTo(18);
    }
  }

  private static Reading at(Reading place, String station, double pct, int row) {
    return new Reading(
        new Reading.Label(place.label().greenId(), "S1", station, 0, 1, row),
        place.position(),
        Reading.Moisture.raw(pct),
        place.protocol(),
        place.role(),
        place.quality());
  }

  @Test
  void averagedStationsAreCounted() {
    GreenSurvey green = InventedSurvey.course(1, 18, 0.5, 10).get(0);
    List<Reading> readings = new ArrayList<>(green.readings());
    readings.add(at(readings.get(4), "again", 20, 99));
    Outcome outcome =
        map(
                List.of(InventedSurvey.survey(green.green(), readings)),
                DEFAULTS.withDuplicates(DuplicatePolicy.AVERAGE))
            .outcomes()
            .get(0);
    assertThat(outcome.remarks()).contains("1 station at the place of another averaged with it");
  }

  @Test
  void aGreenIsFoundByItsNameAndSurvey() {
    SurveyMap map = map(InventedSurvey.course(3, 18, 0.5, 12), DEFAULTS);
    assertThat(map.of("G2", "S1")).contains(map.outcomes().get(1));
    assertThat(map.of("G2", "S2")).isEmpty();
    assertThat(map.of("G9", "S1")).isEmpty();
  }

  @Test
  void readingsFromNoFileAreNamedByStation() {
    GreenSurvey green = InventedSurvey.course(1, 8, 0.5, 13).get(0);
    List<Reading> twice =
        List.of(Reading.of("G1", "first", 1, 2, 20), Reading.of("G1", "other", 1, 2, 21));
    GreenSurvey subject =
        new GreenSurvey(green.green(), "", twice, Optional.of(TargetBand.of(18, 22)));
    assertThat(Coincidence.of(subject))
        .singleElement()
        .hasToString(
            "green G1: stations 'first' and 'other' share a place (E 1.00 N 2.00, values 20.0 and"
                + " 21.0)");
  }

  @Test
  void variogramSettingsRefuseWhatCannotBe() {
    VariogramSettings settings = VariogramSettings.defaults();
    assertThat(settings.withModel("Matern").withCutoffM(12).withLagM(1))
        .isEqualTo(
            new VariogramSettings(
                Pooling.SURVEY,
                Optional.of("Matern"),
                12,
                1,
                settings.estimator(),
                settings.weighting()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings.withModel("cubic"))
        .withMessageStartingWith("there is no model 'cubic' of a variogram; there are spherical, ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings.withCutoffM(0))
        .withMessage("cutoff of the variogram must be > 0.0 m, was 0.0");
  }
}
