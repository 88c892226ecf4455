package org.mottle.engine.mapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Reading;

/** How far positions are off, and what that does to a map. */
class PositionsTest {
  private static final GreenSurvey GREEN = InventedSurvey.plannedCourse(1, 0.3, 37).get(0);

  private static PositionError errors(PositionSettings settings, String source, double sdM) {
    GreenSurvey from = InventedSurvey.with(GREEN, r -> InventedSurvey.from(r, source, sdM));
    return new StationErrors(settings).of(Stations.of(from.readings()).stations(), Double.NaN);
  }

  @ParameterizedTest
  @CsvSource({"RTK, 0.05, 0", "plan, 0.7, 0", "Phone, 3, 2", "order, 1.75, 0", "unheard of, 0, 0"})
  void theSourceHasItsUsualErrors(String source, double jitter, double shift) {
    PositionError error = errors(PositionSettings.RECORDED, source, Double.NaN);
    assertThat(error.jitterSdM()).containsOnly(jitter);
    assertThat(error.shiftSdM()).isCloseTo(shift, within(1e-12));
  }

  @Test
  void whatIsRecordedGoesBeforeTheSourceAndTheSettingsBeforeBoth() {
    assertThat(errors(PositionSettings.RECORDED, "phone", 1.2).jitterSdM()).containsOnly(1.2);
    PositionError set = errors(new PositionSettings(0.4, 0.1), "phone", 1.2);
    assertThat(set.jitterSdM()).containsOnly(0.4);
    assertThat(set.shiftSdM()).isEqualTo(0.1);
    PositionError half = errors(new PositionSettings(Double.NaN, 0), "phone", Double.NaN);
    assertThat(half.jitterSdM()).containsOnly(3.0);
    assertThat(half.shiftSdM()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"1.5, 0", "0, 1.5"})
  void positionErrorsWidenTheMapNearStations(double jitter, double shift) {
    double sound = nearSd(new PositionSettings(0, 0));
    double off = nearSd(new PositionSettings(jitter, shift));
    assertThat(off).isGreaterThan(1.1 * sound);
  }

  /** Mean sd of the cells within half a metre of a station, under a pool that does not change. */
  private static double nearSd(PositionSettings positions) {
    MappingSettings settings = InventedSurvey.QUICK.withPositions(positions);
    Prepared exact = Prepared.of(GREEN, InventedSurvey.QUICK);
    MapVariogram variogram =
        new Variograms(InventedSurvey.QUICK, 1, Progress.NONE).of(List.of(exact)).get(0);
    Prepared off = Prepared.of(GREEN, settings);
    Outcome.Mapped map =
        (Outcome.Mapped)
            new GreenMapper(settings, 1, Progress.NONE)
                .map(off, variogram, Optional.empty(), false);
    Raster sd = map.surface().sd();
    CellGrid grid = sd.grid();
    double sum = 0;
    int count = 0;
    for (int i = 0; i < grid.size(); i++) {
      double x = grid.x(i % grid.columns());
      double y = grid.y(i / grid.columns());
      boolean near =
          GREEN.readings().stream().anyMatch((Reading r) -> Math.hypot(r.x() - x, r.y() - y) < 0.5);
      if (near && sd.has(i)) {
        sum += sd.value(i);
        count++;
      }
    }
    return sum / count;
  }
}
