package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.fit.FitOutcome;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyVariogram;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;

/** Variograms in plain words. */
class LinesTest {

  private static String line(FitOutcome outcome, String... greens) {
    SurveyVariogram variogram =
        new SurveyVariogram(
            "S1",
            List.of(greens),
            20,
            new ExperimentalVariogram(List.of(new Lag(70, 1, 1), new Lag(80, 2, 2))),
            outcome);
    return VariogramLine.of(
        variogram, new SurveyMap(MappingSettings.defaults(), List.of(variogram), List.of()));
  }

  private static Fitted fitted(NestedModel model, String... notes) {
    return new Fitted(model, 1, 1, List.of(notes));
  }

  @Test
  void nuggetSillRangePairsAndNotes() {
    assertThat(line(fitted(NestedModel.of(1.25, new Spherical(3, 9.5)), "a note"), "G1", "G2"))
        .isEqualTo(
            "variogram of S1 (2 greens, 150 pairs): spherical, nugget 1.25 %², sill 4.25 %², range"
                + " 9.5 m; a note");
  }

  @Test
  void theRangeOfAModelThatDoesNotEndComesWithItsPracticalRange() {
    assertThat(line(fitted(NestedModel.of(0, new Exponential(3, 10))), "G7"))
        .isEqualTo(
            "variogram of S1 (green G7, 150 pairs): exponential, nugget 0.00 %², sill 3.00 %²,"
                + " range 10.0 m (practical 30.0 m)");
  }

  @Test
  void anUnboundedModelHasNoSillAndNoRange() {
    assertThat(line(fitted(NestedModel.of(0.5, new Power(1, 1.2))), "G7"))
        .endsWith("power, nugget 0.50 %²");
  }

  @Test
  void withoutAModelTheReasonStands() {
    assertThat(line(new NotFitted("too few pairs"), "G1", "G2"))
        .isEqualTo("variogram of S1 (2 greens, 150 pairs): none: too few pairs");
  }
}
