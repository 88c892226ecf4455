package org.mottle.demo.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.demo.random.Stream;

class SphericalFieldTest {

  private static final int N = Lattice.N;

  /** The transform of one wave is one peak. */
  @Test
  void fourierFindsAWave() {
    double[] re = new double[64];
    double[] im = new double[64];
    for (int row = 0; row < 8; row++) {
      for (int column = 0; column < 8; column++) {
        double phase = 2 * Math.PI * (3 * row + column) / 8;
        re[8 * row + column] = StrictMath.cos(phase);
        im[8 * row + column] = StrictMath.sin(phase);
      }
    }
    new Fourier(8).transform(re, im);
    for (int i = 0; i < 64; i++) {
      assertThat(re[i]).as("element " + i).isCloseTo(i == 8 * 3 + 1 ? 64 : 0, within(1e-12));
      assertThat(im[i]).as("element " + i).isCloseTo(0, within(1e-12));
    }
  }

  /** Covariances over 120 fields and all places, against the model, along both axes. */
  @ParameterizedTest
  @ValueSource(doubles = {12, 16})
  void covariancesAreThoseOfTheModel(double rangeM) {
    SphericalField field = new SphericalField(rangeM);
    int[] lags = {0, 2, 8, 16, 32, 48, 64};
    double[] sums = new double[lags.length];
    int fields = 0;
    for (int seed = 0; seed < 60; seed++) {
      for (double[] z : field.pair(Stream.of(seed, "field test"))) {
        fields++;
        for (int k = 0; k < lags.length; k++) {
          sums[k] += covariance(z, lags[k]);
        }
      }
    }
    for (int k = 0; k < lags.length; k++) {
      double model = field.correlation(lags[k] * Lattice.STEP_M);
      // one field of 64 m holds about 25 independent patches of a 12 m range: 5 standard errors
      assertThat(sums[k] / fields).as("lag " + lags[k]).isCloseTo(model, within(0.13));
    }
    assertThat(sums[0] / fields - sums[1] / fields)
        .as("semivariance at 0.5 m")
        .isCloseTo(1 - field.correlation(0.5), within(0.005));
  }

  @Test
  void theTwoFieldsOfAPairAreIndependent() {
    SphericalField field = new SphericalField(12);
    double sum = 0;
    for (int seed = 0; seed < 60; seed++) {
      double[][] two = field.pair(Stream.of(seed, "pair test"));
      for (int i = 0; i < N * N; i++) {
        sum += two[0][i] * two[1][i] / (N * N);
      }
    }
    assertThat(sum / 60).isCloseTo(0, within(0.12));
  }

  @Test
  void aRangeTooLongForTheTorusIsRefused() {
    assertThatThrownBy(() -> new SphericalField(40)).hasMessageContaining("40");
  }

  /** Mean product at a lag along x and y, round the torus; the mean of the field is known: 0. */
  private static double covariance(double[] z, int lag) {
    double sum = 0;
    for (int row = 0; row < N; row++) {
      for (int column = 0; column < N; column++) {
        double here = z[row * N + column];
        sum += here * z[row * N + (column + lag) % N];
        sum += here * z[(row + lag) % N * N + column];
      }
    }
    return sum / (2 * N * N);
  }
}
