package org.mottle.engine.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.VariogramModel;

/** Nodes 0.5 m apart; places seeded 31. */
class NodeStencilTest {
  private static final double SPACING = 0.5;

  /** The model and the largest error of a covariance with nodes further away, share of the sill. */
  static Stream<Arguments> models() {
    return Stream.of(
        Arguments.of(new Exponential(4, 8), 2e-3),
        Arguments.of(new Exponential(4, 1), 1.5e-2),
        Arguments.of(new Spherical(4, 10), 2e-3),
        Arguments.of(new Matern(4, 3, 1.5), 5e-4),
        Arguments.of(new Gaussian(4, 6), 1e-5));
  }

  @ParameterizedTest
  @MethodSource("models")
  void simple_weights_keep_variance_and_covariances(VariogramModel model, double tolerance) {
    StructuralCovariance c = new StructuralCovariance(NestedModel.of(0, model));
    NodeStencil stencil = new NodeStencil(c, SPACING, false);
    NodeStencil.Place place = new NodeStencil.Place();
    Random random = new Random(31);
    for (int trial = 0; trial < 60; trial++) {
      double fx = random.nextDouble();
      double fy = random.nextDouble();
      stencil.place(fx, fy, place);
      assertThat(variance(c, place)).as("variance").isCloseTo(4, within(4e-7));
      for (int column = -6; column <= 7; column++) {
        for (int row = -6; row <= 7; row++) {
          boolean own = column >= -1 && column <= 2 && row >= -1 && row <= 2;
          double exact = c.at((column - fx) * SPACING, (fy - row) * SPACING);
          assertThat(withNode(c, place, column, row))
              .as("%s, place %s %s, node %d %d", model, fx, fy, column, row)
              .isCloseTo(exact, within(own ? 4e-7 : 4 * tolerance));
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("models")
  void ordinary_weights_sum_to_one_and_keep_the_variogram(VariogramModel model, double tolerance) {
    StructuralCovariance c = new StructuralCovariance(NestedModel.of(0, model));
    NodeStencil stencil = new NodeStencil(c, SPACING, true);
    NodeStencil.Place place = new NodeStencil.Place();
    Random random = new Random(32);
    for (int trial = 0; trial < 60; trial++) {
      double fx = random.nextDouble();
      double fy = random.nextDouble();
      stencil.place(fx, fy, place);
      assertThat(java.util.Arrays.stream(place.weight).sum()).isCloseTo(1, within(1e-7));
      double variance = variance(c, place);
      for (int k = 0; k < NodeStencil.NODES; k++) {
        double gamma = (variance + 4) / 2 - withNode(c, place, k % 4 - 1, k / 4 - 1);
        double exact = 4 - c.at((k % 4 - 1 - fx) * SPACING, (fy - k / 4 + 1) * SPACING);
        assertThat(gamma)
            .as("%s, place %s %s, node %d", model, fx, fy, k)
            .isCloseTo(exact, within(4e-7));
      }
    }
  }

  private static double variance(StructuralCovariance c, NodeStencil.Place place) {
    double sum = place.residual;
    for (int k = 0; k < NodeStencil.NODES; k++) {
      sum += place.weight[k] * withNode(c, place, k % 4 - 1, k / 4 - 1);
    }
    return sum;
  }

  /** Covariance of the weighted sum with a node. */
  private static double withNode(
      StructuralCovariance c, NodeStencil.Place place, int column, int row) {
    double sum = 0;
    for (int k = 0; k < NodeStencil.NODES; k++) {
      sum += place.weight[k] * c.at((k % 4 - 1 - column) * SPACING, (row - k / 4 + 1) * SPACING);
    }
    return sum;
  }

  @ParameterizedTest
  @MethodSource("models")
  void at_a_node_it_is_the_node(VariogramModel model, double tolerance) {
    NodeStencil stencil =
        new NodeStencil(new StructuralCovariance(NestedModel.of(0, model)), SPACING, true);
    NodeStencil.Place place = new NodeStencil.Place();
    stencil.place(0, 1, place);
    assertThat(place.residual).isZero();
    // column 0, row 1 of the columns and rows -1 to 2
    double[] value = {3, -1, 4, 1, -5, 9, 2, 6, -5, 3.5, 8, 9, 7, 9, 3, 2};
    double sum = 0;
    for (int k = 0; k < NodeStencil.NODES; k++) {
      sum += place.weight[k] * value[k];
    }
    assertThat(sum).isEqualTo(3.5);
  }

  /** Two readings at one spot read one value of the field. */
  @ParameterizedTest
  @MethodSource("models")
  void what_two_places_lack_is_the_same_where_they_meet(VariogramModel model, double tolerance) {
    NodeStencil stencil =
        new NodeStencil(new StructuralCovariance(NestedModel.of(0, model)), SPACING, true);
    NodeStencil.Place a = new NodeStencil.Place();
    NodeStencil.Place b = new NodeStencil.Place();
    stencil.place(0.3, 0.6, a);
    stencil.place(0.3, 0.6, b);
    assertThat(stencil.residualCovariance(a, b, 0, 0)).isCloseTo(a.residual, within(1e-9));
    stencil.place(0.9, 0.1, b);
    assertThat(Math.abs(stencil.residualCovariance(a, b, 0.3, 0.25)))
        .isLessThan(Math.sqrt(a.residual * b.residual) + 1e-9);
  }
}
