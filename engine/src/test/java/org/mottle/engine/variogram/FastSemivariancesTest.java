package org.mottle.engine.variogram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Semivariances of many lags at once equal those of each lag. */
class FastSemivariancesTest {

  static Stream<VariogramModel> models() {
    return Stream.of(
        new Spherical(7.5, 13),
        new Exponential(7.5, 13),
        new Gaussian(7.5, 13),
        new Circular(7.5, 13),
        new Pentaspherical(7.5, 13),
        new Linear(7.5, 13),
        new Linear(0.75, 0),
        new Power(0.3, 0.7),
        new Power(0.3, 1.5));
  }

  @ParameterizedTest
  @MethodSource("models")
  void sameAsOneByOne(VariogramModel model) {
    Random random = new Random(21);
    int n = 5000;
    double[] squared = new double[n];
    double[] sum = new double[n];
    for (int i = 0; i < n; i++) {
      double lag = i == 0 ? 0 : Math.pow(10, random.nextDouble() * 9 - 5);
      squared[i] = lag * lag;
      sum[i] = 3;
    }
    model.addSemivariances(squared, n - 1, sum);
    double sill = model.bounded() ? model.partialSill() : 0;
    for (int i = 0; i < n - 1; i++) {
      double lag = Math.sqrt(squared[i]);
      double expected = 3 + model.semivariance(lag);
      assertThat(sum[i])
          .as("%s at %s m", model, lag)
          .isCloseTo(expected, within(1e-15 * (sill + expected)));
    }
    assertThat(sum[0]).isEqualTo(3);
    assertThat(sum[n - 1]).as("beyond the count").isEqualTo(3);
  }

  @Test
  void scaledExponential() {
    for (double x = 0; x > -40; x -= 0.0007) {
      double expected = Math.expm1(x);
      double actual = ScaledExp.minusOne(x * ScaledExp.SCALE);
      assertThat(actual).as("exp(%s) - 1", x).isCloseTo(expected, within(4e-16));
      assertThat(Math.abs(actual - expected)).isLessThanOrEqualTo(3e-15 * Math.abs(expected));
    }
    assertThat(ScaledExp.minusOne(0)).isZero();
    assertThat(ScaledExp.minusOne(ScaledExp.LOWEST)).isEqualTo(-1);
  }
}
