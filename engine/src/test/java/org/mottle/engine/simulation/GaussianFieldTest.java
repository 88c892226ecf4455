package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/** Realised variograms and covariances against the model. Lattice 20 x 14 cells of 0.5 m. */
class GaussianFieldTest {
  private static final CellGrid LATTICE = new CellGrid(100, 60, 0.5, 20, 14);
  private static final int PAIRS = 3000;
  private static final int[][] LAGS = {
    {1, 0}, {0, 1}, {2, 2}, {5, -3}, {10, 0}, {0, 9}, {13, 6}, {13, -6}, {19, 0}, {17, 12}
  };

  private static NestedModel of(VariogramModel model) {
    return NestedModel.of(0, model);
  }

  private static NestedModel turned(VariogramModel model, double azimuth, double ratio) {
    return new NestedModel(
        0, java.util.List.of(new Structure(model, new Anisotropy(new Azimuth(azimuth), ratio))));
  }

  static Stream<Arguments> models() {
    return Stream.of(
        Arguments.of("spherical, short", of(new Spherical(3, 4)), "circulant"),
        Arguments.of("spherical, long", of(new Spherical(3, 25)), "Cholesky"),
        Arguments.of("exponential", of(new Exponential(3, 1)), "circulant"),
        Arguments.of("Matérn 1.5", of(new Matern(3, 0.6, 1.5)), "circulant"),
        Arguments.of("Gaussian", of(new Gaussian(3, 2)), "circulant"),
        Arguments.of("anisotropic", turned(new Spherical(3, 6), 30, 0.4), "circulant"),
        Arguments.of(
            "nested",
            NestedModel.of(0, new Spherical(1, 2), new Exponential(2, 1.5)),
            "circulant"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("models")
  void covariances_are_those_of_the_model(String name, NestedModel model, String method) {
    GaussianField field = field(model, LATTICE, false);
    assertThat(field.method()).startsWith(method);
    assertThat(field.covarianceError()).isLessThanOrEqualTo(1e-3);
    double[] measured = measured(field, false);
    for (int k = 0; k < LAGS.length; k++) {
      double c = 3 - model.semivariance(LAGS[k][0] * 0.5, -LAGS[k][1] * 0.5);
      assertThat(measured[k])
          .as("%s %s lag %d %d", name, field.method(), LAGS[k][0], LAGS[k][1])
          .isCloseTo(c, within(0.003 + 4.5 * measured[LAGS.length + k]));
    }
  }

  static Stream<Arguments> longModels() {
    return Stream.of(
        Arguments.of("exponential", of(new Exponential(3, 8)), "intrinsic"),
        Arguments.of("exponential, very long", of(new Exponential(3, 300)), "intrinsic"),
        Arguments.of("spherical", of(new Spherical(3, 60)), "intrinsic"),
        Arguments.of("anisotropic", turned(new Exponential(3, 20), 70, 0.5), "intrinsic"),
        Arguments.of("Matérn 1.5", of(new Matern(3, 6, 1.5)), "Cholesky"),
        Arguments.of("Gaussian", of(new Gaussian(3, 10)), "Cholesky"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("longModels")
  void ranges_longer_than_the_lattice_keep_the_variogram(
      String name, NestedModel model, String method) {
    GaussianField field = field(model, LATTICE, true);
    assertThat(field.method()).startsWith(method);
    assertThat(field.covarianceError()).isLessThanOrEqualTo(1e-3);
    double[] measured = measured(field, true);
    for (int k = 0; k < LAGS.length; k++) {
      double gamma = model.semivariance(LAGS[k][0] * 0.5, -LAGS[k][1] * 0.5);
      assertThat(measured[k])
          .as("%s %s lag %d %d", name, field.method(), LAGS[k][0], LAGS[k][1])
          .isCloseTo(gamma, within(0.003 + 4.5 * measured[LAGS.length + k]));
    }
  }

  @Test
  void smooth_fields_on_large_lattices_come_from_few_nodes() {
    GaussianField field = field(of(new Gaussian(3, 30)), new CellGrid(0, 50, 0.5, 100, 90), false);
    assertThat(field.method()).contains("Cholesky").contains("one in 5");
    assertThat(field.covarianceError()).isLessThan(1e-3);
    double[] one = new double[9000];
    double[] other = new double[9000];
    double near = 0;
    double variance = 0;
    GaussianField.Sampler sampler = field.newSampler();
    for (int r = 0; r < 1500; r++) {
      sampler.drawPair(new NormalStream(4, r), one, other);
      near += Math.pow(one[4041] - one[4043], 2) + Math.pow(other[4041] - other[4043], 2);
      variance += one[8002] * one[8002] + other[8002] * other[8002];
    }
    double gamma = new Gaussian(3, 30).semivariance(1);
    // noise of interpolation is at most 1e-3 of the sill, here far less
    assertThat(near / 6000).isCloseTo(gamma, within(0.12 * gamma + 3 * field.covarianceError()));
    assertThat(variance / 3000).isCloseTo(3, within(0.35));
  }

  @Test
  void the_two_fields_of_a_pair_are_independent() {
    GaussianField field = field(of(new Spherical(3, 4)), LATTICE, false);
    double[] one = new double[280];
    double[] other = new double[280];
    double product = 0;
    for (int r = 0; r < 4000; r++) {
      field.newSampler().drawPair(new NormalStream(9, r), one, other);
      product += one[100] * other[100] + one[100] * other[103];
    }
    // standard error of each product is 3 / sqrt(4000)
    assertThat(product / 4000).isCloseTo(0, within(4.5 * 2 * 3 / Math.sqrt(4000)));
  }

  @Test
  void refuses_in_words_what_no_torus_holds() {
    FieldOutcome outcome =
        FieldOutcome.of(of(new Exponential(3, 500)), new CellGrid(0, 50, 0.05, 1000, 1000), false);
    assertThat(outcome).isInstanceOf(FieldOutcome.Refused.class);
    assertThat(((FieldOutcome.Refused) outcome).refusal().toString())
        .contains("1000 x 1000 cells")
        .contains("larger cell");
  }

  private static GaussianField field(NestedModel model, CellGrid lattice, boolean increments) {
    return (GaussianField) FieldOutcome.of(model, lattice, increments);
  }

  /** Mean products, or half squared differences, at the lags; then their standard errors. */
  private static double[] measured(GaussianField field, boolean differences) {
    double[] one = new double[LATTICE.size()];
    double[] other = new double[LATTICE.size()];
    double[] sum = new double[2 * LAGS.length];
    GaussianField.Sampler sampler = field.newSampler();
    for (int r = 0; r < PAIRS; r++) {
      sampler.drawPair(new NormalStream(11, r), one, other);
      for (double[] f : new double[][] {one, other}) {
        for (int k = 0; k < LAGS.length; k++) {
          double v = mean(f, LAGS[k][0], LAGS[k][1], differences);
          sum[k] += v;
          sum[LAGS.length + k] += v * v;
        }
      }
    }
    int n = 2 * PAIRS;
    for (int k = 0; k < LAGS.length; k++) {
      sum[k] /= n;
      sum[LAGS.length + k] = Math.sqrt((sum[LAGS.length + k] / n - sum[k] * sum[k]) / n);
    }
    return sum;
  }

  /** Mean over all pairs of nodes {@code dc} columns east and {@code dr} rows south. */
  private static double mean(double[] f, int dc, int dr, boolean differences) {
    double sum = 0;
    int count = 0;
    for (int row = Math.max(0, -dr); row < LATTICE.rows() - Math.max(0, dr); row++) {
      for (int column = 0; column < LATTICE.columns() - dc; column++) {
        double a = f[LATTICE.index(row, column)];
        double b = f[LATTICE.index(row + dr, column + dc)];
        sum += differences ? (a - b) * (a - b) / 2 : a * b;
        count++;
      }
    }
    return sum / count;
  }
}
