package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.TargetBand;

/** What a map says beside its figures, and what is refused in words. */
class RemarksTest {
  private static final MappingSettings DEFAULTS = InventedSurvey.QUICK;

  private static SurveyMap map(List<GreenSurvey> subjects, MappingSettings settings) {
    return new SurveyMapper(settings).map(subjects, 1, Progress.NONE);
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
    Matcher remedy =
        Pattern.compile("a cell of ([0-9.]+) m or more can be held").matcher(none.why().remedy());
    assertThat(remedy.matches()).as(none.why().remedy()).isTrue();
    double cell = Double.parseDouble(remedy.group(1));
    double box = course.get(0).green().outline().getEnvelopeInternal().getArea();
    assertThat(box / (cell * cell)).isBetween(2e5, 1e7);
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
    assertThat(settings.withShape(Shape.MATERN).withCutoffM(12).withLagM(1))
        .isEqualTo(
            new VariogramSettings(
                Pooling.ROOT_ZONE, Optional.of(Shape.MATERN), 12, 1, settings.estimator()));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings.withShape(Shape.POWER))
        .withMessageStartingWith("a map needs a variogram that levels off, was ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> settings.withCutoffM(0))
        .withMessage("cutoff of the variogram must be > 0.0 m, was 0.0");
  }
}
