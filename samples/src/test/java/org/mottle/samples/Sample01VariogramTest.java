package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;

class Sample01VariogramTest {

  @Test
  void the_textbook_prints_the_same() {
    // Isaaks & Srivastava 1989, ch. 12: 592.7 and 8.96
    Estimate e = Sample01Variogram.textbook();
    assertThat(e.value()).isCloseTo(592.7, within(0.05));
    assertThat(e.variance()).isCloseTo(8.96, within(0.005));
  }

  @Test
  void a_lag_is_half_the_mean_squared_difference_of_its_pairs() {
    Observations o = Sample01Variogram.readings();
    double sum = 0;
    double distance = 0;
    int pairs = 0;
    for (int i = 0; i < o.size(); i++) {
      for (int j = 0; j < i; j++) {
        double h = Math.hypot(o.x(i) - o.x(j), o.y(i) - o.y(j));
        if (h > 4 && h <= 6) {
          sum += Math.pow(o.value(i) - o.value(j), 2) / 2;
          distance += h;
          pairs++;
        }
      }
    }
    Lag third = Sample01Variogram.variogram(o).lags().get(2);
    assertThat(third.pairs()).isEqualTo(pairs);
    assertThat(third.distance()).isCloseTo(distance / pairs, within(1e-9));
    assertThat(third.semivariance()).isCloseTo(sum / pairs, within(1e-9));
  }

  @Test
  void the_model_is_that_of_a_green() {
    NestedModel model =
        Sample01Variogram.model(Sample01Variogram.variogram(Sample01Variogram.readings()));
    assertThat(model.structures()).hasSize(1);
    assertThat(model.structures().get(0).model().range()).isBetween(5.0, 28.0);
    assertThat(model.nuggetShare()).isLessThan(0.5);
  }

  @Test
  void it_runs() {
    Sample01Variogram.main(new String[0]);
  }
}
