package org.mottle.engine.precision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

class PrecisionTest {
  private static final Green GREEN =
      Green.of("G", new GeometryFactory().toGeometry(new Envelope(0, 24, 0, 21.5)));

  private static List<PlannedStation> grid(int columns, int rows, int insertions) {
    List<PlannedStation> stations = new ArrayList<>();
    for (int i = 0; i < columns * rows; i++) {
      stations.add(
          new PlannedStation(
              "" + (i + 1),
              (i % columns + 0.5) * 24 / columns,
              (i / columns + 0.5) * 21.5 / rows,
              Reading.Role.PLAN,
              insertions));
    }
    return stations;
  }

  /** Computed with R 4.2.2, qt: smallest n with n >= (t s / e)². */
  @Test
  void theSmallestSampleIsThatOfR() throws IOException {
    try (var in = getClass().getResourceAsStream("/validation/sample_size.csv")) {
      List<String> rows = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      assertThat(rows).hasSize(7);
      for (String row : rows.subList(1, rows.size())) {
        String[] c = row.split(",");
        assertThat(
                SampleSize.of(
                    Double.parseDouble(c[0]), Double.parseDouble(c[1]), Double.parseDouble(c[2])))
            .as(row)
            .isEqualTo(Integer.parseInt(c[c.length - 1]));
      }
    }
    assertThatThrownBy(() -> SampleSize.of(2, 0, 0.95)).hasMessageContaining("margin");
  }

  /** Simulated for this project, 30 to 40 runs (indicative): 18 stations, 516 m², sill 4. */
  @Test
  void theSdOfAMapIsNearTheSimulatedOne() {
    NestedModel model = NestedModel.of(1.5, new Spherical(4, 10));
    Prediction p = Prediction.of(GREEN, grid(6, 3, 1), model);
    assertThat(p.meanSd()).isCloseTo(1.47, within(0.15));
    assertThat(p.explained()).isCloseTo(0.45, within(0.12));
    assertThat(p.largestSd()).isGreaterThan(p.meanSd());
  }

  @Test
  void moreStationsAndInsertionsMakeASharperMap() {
    NestedModel model = Prediction.borrowed(2);
    assertThat(model.sill()).isCloseTo(4, within(1e-12));
    double few = Prediction.of(GREEN, grid(4, 3, 1), model).meanSd();
    assertThat(Prediction.of(GREEN, grid(6, 5, 1), model).meanSd()).isLessThan(few);
    assertThat(Prediction.of(GREEN, grid(4, 3, 2), model).meanSd()).isLessThan(few);
    assertThatThrownBy(() -> Prediction.of(GREEN, List.of(), model))
        .hasMessageContaining("no station");
  }

  @Test
  void largerAndDrierSpotsAreFoundMoreOften() {
    Prediction p = Prediction.of(GREEN, grid(5, 4, 1), Prediction.borrowed(2));
    List<SpotDetection> spots = SpotDetection.of(p, new double[] {2, 5, 9}, 4, 7);
    assertThat(spots.get(0).found()).isLessThan(spots.get(1).found());
    assertThat(spots.get(1).found()).isLessThanOrEqualTo(spots.get(2).found());
    SpotDetection plain = SpotDetection.of(p, new double[] {9}, 40, 7).get(0);
    assertThat(plain.found()).isGreaterThan(0.9);
    assertThat(plain.wrongly()).isZero();
    assertThat(SpotDetection.of(p, new double[] {2, 5, 9}, 4, 7)).isEqualTo(spots);
    assertThat(new SpotDetection(5, 4, 0.81, 0).words())
        .isEqualTo("a round spot of 5 m, 4.0 % drier: 8 in 10");
    assertThat(new SpotDetection(2, 4, 0.1, 0).words()).endsWith("mostly missed");
  }
}
