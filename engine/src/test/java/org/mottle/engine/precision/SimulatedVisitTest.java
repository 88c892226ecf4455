package org.mottle.engine.precision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.simulation.NormalStream;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

class SimulatedVisitTest {
  private static final long SEED = 5;
  private static final int VISITS = 20_000;
  private static final Spherical STRUCTURE = new Spherical(4, 10);
  private static final NestedModel MODEL = NestedModel.of(2, STRUCTURE);

  /** Stations in a row, 0, 3, 7 and 30 m, read twice each. */
  private static final double[] X = {0, 3, 7, 30};

  private static double[][] covariance(PositionError error, double[] x, double noise) {
    double[] variance = new double[x.length];
    Arrays.fill(variance, noise);
    Observations stations =
        Observations.of(x, new double[x.length], new double[x.length])
            .withMeasurementVariance(variance)
            .withPositionError(error);
    SimulatedVisit visit = new SimulatedVisit(stations, MODEL);
    double[][] sum = new double[x.length][x.length];
    for (int v = 0; v < VISITS; v++) {
      visit.draw(new NormalStream(SEED, v));
      for (int i = 0; i < x.length; i++) {
        for (int j = 0; j < x.length; j++) {
          sum[i][j] += visit.value(i) * visit.value(j) / VISITS;
        }
      }
    }
    return sum;
  }

  /** Sum of squares of a product of normals of variances up to 5: four standard errors at most. */
  private static final double CHANCE = 4 * Math.sqrt(2 * 25.0 / VISITS);

  @Test
  void readingsHaveTheCovarianceOfTheModel() {
    double[][] seen = covariance(new PositionError(new double[4], 0), X, 1);
    for (int i = 0; i < X.length; i++) {
      for (int j = 0; j < X.length; j++) {
        double expected = i == j ? 5 : 4 - STRUCTURE.semivariance(Math.abs(X[i] - X[j]));
        assertThat(seen[i][j]).as("seed %d, %d %d", SEED, i, j).isCloseTo(expected, within(CHANCE));
      }
    }
  }

  /**
   * Two stations recorded at one place, each off by its own error: the semivariance between them
   * for a spherical model of sill 4, range 10 m, by numerical integration of the project's own.
   */
  @ParameterizedTest
  @CsvSource({"0.5, 0.53", "1, 1.04", "2, 1.96", "3, 2.64", "5, 3.34"})
  void errorsOfPlacesTurnPatternIntoNoise(double sdM, double semivariance) {
    double[] jitter = {sdM, sdM};
    double[][] seen = covariance(new PositionError(jitter, 0), new double[2], 0);
    assertThat((seen[0][0] + seen[1][1]) / 2 - seen[0][1])
        .as("seed %d", SEED)
        .isCloseTo(semivariance, within(CHANCE));
  }

  /** A shift common to all leaves the pattern between the stations as it is. */
  @Test
  void shiftIsCommonToAVisit() {
    double[][] seen = covariance(new PositionError(new double[4], 3), X, 0);
    assertThat(seen[0][1]).isCloseTo(4 - STRUCTURE.semivariance(3), within(CHANCE));
  }
}
