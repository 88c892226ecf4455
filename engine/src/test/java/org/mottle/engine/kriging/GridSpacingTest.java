package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * Kriging variance at the centre of a cell of square and triangular grids of equal density
 * (McBratney & Webster 1981), grid_spacing_okvar.csv: computed with gstat 2.1.0, R 4.2.2.
 */
class GridSpacingTest {
  private static final ValidationTable EXPECTED = ValidationTable.read("grid_spacing_okvar.csv");
  private static final Kriging KRIGING = Kriging.ordinary(NestedModel.of(2, new Spherical(8, 15)));

  private static Observations square(double spacing, int side) {
    double[] x = new double[side * side];
    double[] y = new double[side * side];
    for (int i = 0; i < x.length; i++) {
      x[i] = (i % side - (side - 1) / 2.0) * spacing;
      y[i] = (i / side - (side - 1) / 2.0) * spacing;
    }
    return Observations.of(x, y, new double[x.length]);
  }

  /** The 18 points of a triangular lattice nearest to the centre of a triangle. */
  private static Observations triangular(double side) {
    double[][] points =
        IntStream.range(0, 169)
            .mapToObj(
                k -> {
                  int i = k % 13 - 6;
                  int j = k / 13 - 6;
                  double x = side * (i + j / 2.0) - side / 2;
                  double y = side * j * Math.sqrt(3) / 2 - side * Math.sqrt(3) / 6;
                  return new double[] {x, y};
                })
            .sorted(Comparator.comparingDouble(p -> p[0] * p[0] + p[1] * p[1]))
            .limit(18)
            .toArray(double[][]::new);
    double[] x = Arrays.stream(points).mapToDouble(p -> p[0]).toArray();
    double[] y = Arrays.stream(points).mapToDouble(p -> p[1]).toArray();
    return Observations.of(x, y, new double[18]);
  }

  private static double variance(Kriging kriging, Observations observations) {
    return kriging.fit(observations).at(0, 0).variance();
  }

  @Test
  void everySpacing() {
    assertThat(EXPECTED.size()).isEqualTo(11);
    for (int r = 0; r < EXPECTED.size(); r++) {
      double d = EXPECTED.number("spacing", r);
      Kriging block = KRIGING.with(BlockSupport.square(1));
      double side = EXPECTED.number("tri_side_equal_area", r);
      close("sq16_point", r, variance(KRIGING, square(d, 4)), 1e-9);
      close("sq4_point", r, variance(KRIGING, square(d, 2)), 1e-9);
      close("sq16_block1m", r, variance(block, square(d, 4)), 1e-6);
      close("tri18_point", r, variance(KRIGING, triangular(side)), 1e-9);
    }
  }

  private static void close(String column, int row, double actual, double relative) {
    double expected = EXPECTED.number(column, row);
    assertThat(actual)
        .as(column + " at " + EXPECTED.text("spacing", row) + " m")
        .isCloseTo(expected, within(relative * expected));
  }
}
