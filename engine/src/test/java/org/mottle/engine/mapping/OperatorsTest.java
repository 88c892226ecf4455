package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.likelihood.Replicates;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;

/** What the readings of one operator have in common, and what those of two have not. */
class OperatorsTest {
  private static final GreenSurvey GREEN = InventedSurvey.plannedCourse(1, 0.3, 43).get(0);

  private static Outcome.Mapped map(GreenSurvey green, double operatorSd) {
    MappingSettings settings =
        InventedSurvey.QUICK.withUncertainty(
            InventedSurvey.QUICK.uncertainty().withOperatorSdPct(operatorSd));
    return new SurveyMapper(settings).map(List.of(green), 1, Progress.NONE).maps().get(0);
  }

  @Test
  void theErrorOfOneOperatorAddsToTheGreensMeanInFull() {
    double without = map(GREEN, 0).parts().whole().sd();
    double with = map(GREEN, 1.5).parts().whole().sd();
    assertThat(with).isCloseTo(Math.hypot(without, 1.5), within(1e-6));
  }

  @Test
  void itMovesNoMeanAndWidensEveryCellAlike() {
    Outcome.Mapped without = map(GREEN, 0);
    Outcome.Mapped with = map(GREEN, 1.5);
    double[] mean = without.surface().mean().values();
    double[] sd = without.surface().sd().values();
    for (int i = 0; i < mean.length; i++) {
      if (!Double.isNaN(mean[i])) {
        assertThat(with.surface().mean().value(i)).isCloseTo(mean[i], within(1e-6));
        assertThat(with.surface().sd().value(i)).isCloseTo(Math.hypot(sd[i], 1.5), within(1e-6));
      }
    }
  }

  @Test
  void twoOperatorsShareTheirErrorOnlyWithThemselves() {
    GreenSurvey halves =
        InventedSurvey.with(
            GREEN, r -> InventedSurvey.by(r, Integer.parseInt(r.label().stationId()) % 2 + ""));
    double without = map(halves, 0).parts().whole().sd();
    double with = map(halves, 1.5).parts().whole().sd();
    assertThat(with)
        .isGreaterThan(Math.hypot(without, 1.5 / Math.sqrt(2)) - 0.01)
        .isLessThan(Math.hypot(without, 1.5) - 0.1);
  }

  @Test
  void insertionsOfTwoOperatorsAreNoReplicates() {
    List<Reading> readings = new ArrayList<>(GREEN.readings());
    Reading r = readings.get(0);
    Reading again =
        InventedSurvey.reading("G1", r.label().stationId(), r.x() + 0.1, r.y(), r.pct() + 2);
    readings.add(again);
    Replicates same = Stations.of(readings).replicates();
    assertThat(same.degrees()).isEqualTo(1);
    assertThat(same.sumOfSquares()).isCloseTo(2, within(1e-9)); // two values 2 apart
    readings.set(readings.size() - 1, InventedSurvey.by(again, "B"));
    Stations apart = Stations.of(readings);
    assertThat(apart.stations()).hasSize(GREEN.readings().size());
    assertThat(apart.replicates()).isEqualTo(Replicates.NONE);
  }
}
