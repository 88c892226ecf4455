package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.variogram.Spherical;

/** Against the spherical model itself, and its mean over drawn errors. */
class SpotCorrelationTest {

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3, 1.7, 2.9, 3, 8})
  void withoutErrorItIsSpherical(double lag) {
    assertThat(new SpotCorrelation(3, 0).at(lag))
        .isCloseTo(1 - new Spherical(1, 3).semivariance(lag), within(1e-15));
  }

  /** 400,000 drawn errors know the mean to 0.001; the quadrature adds some thousandths. */
  @ParameterizedTest
  @CsvSource({"0,0.6", "1,0.6", "2.5,0.6", "0,2", "2,2", "4,2"})
  void withErrorItIsTheMeanOverErrors(double lag, double sd) {
    Random random = new Random(61);
    int draws = 400_000;
    double sum = 0;
    for (int i = 0; i < draws; i++) {
      double dx = lag + sd * random.nextGaussian();
      double dy = sd * random.nextGaussian();
      sum += 1 - new Spherical(1, 3).semivariance(Math.hypot(dx, dy));
    }
    assertThat(new SpotCorrelation(3, sd).at(lag))
        .as("seed 61, lag %s, error %s", lag, sd)
        .isCloseTo(sum / draws, within(0.01));
  }
}
