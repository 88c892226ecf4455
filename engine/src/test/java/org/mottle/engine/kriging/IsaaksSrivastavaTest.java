package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Structure;

/**
 * The worked example of ordinary kriging with seven readings, Isaaks & Srivastava 1989, ch. 12, and
 * its variants; all digits from validation/isaaks_ok.csv.
 */
class IsaaksSrivastavaTest {
  private static final ValidationTable DATA = ValidationTable.read("isaaks_data.csv");
  private static final ValidationTable EXPECTED = ValidationTable.read("isaaks_ok.csv");
  private static final double TOLERANCE = 1e-9;

  private static NestedModel model(int row) {
    return switch (row) {
      case 0 -> NestedModel.of(0, new Exponential(10, 10 / 3.0));
      case 1 -> NestedModel.of(0, new Exponential(20, 10 / 3.0));
      case 2 -> NestedModel.of(0, new Gaussian(10, 10 / Math.sqrt(3)));
      case 3 -> NestedModel.of(5, new Exponential(5, 10 / 3.0));
      case 4 -> NestedModel.of(10);
      case 5 -> NestedModel.of(0, new Exponential(10, 20 / 3.0));
      case 6 -> anisotropic(0, 10);
      case 7 -> anisotropic(45, 10);
      case 8 -> anisotropic(135, 5);
      default -> throw new IllegalArgumentException("no case " + row);
    };
  }

  private static NestedModel anisotropic(double azimuth, double minor) {
    Anisotropy anisotropy = new Anisotropy(new Azimuth(azimuth), minor / 20);
    return new NestedModel(0, List.of(new Structure(new Exponential(10, 20 / 3.0), anisotropy)));
  }

  @ParameterizedTest(name = "row {0}")
  @CsvSource({"0", "1", "2", "3", "4", "5", "6", "7", "8"})
  void weightsMultiplierEstimateAndVariance(int row) {
    Observations data = Observations.of(DATA.column("x"), DATA.column("y"), DATA.column("v"));
    GlobalPredictor predictor = (GlobalPredictor) Kriging.ordinary(model(row)).fit(data);
    String name = EXPECTED.text("case", row);
    Targets target = Targets.of(new double[] {65}, new double[] {137});

    GlobalPredictor.Multiplied weights = predictor.weights(target, 0);
    for (int i = 0; i < 7; i++) {
      assertThat(weights.weight()[i])
          .as(name + " weight " + (i + 1))
          .isCloseTo(EXPECTED.number("w" + (i + 1), row), within(TOLERANCE));
    }
    assertThat(weights.multiplier()[0])
        .as(name + " multiplier")
        .isCloseTo(EXPECTED.number("lagrange", row), within(TOLERANCE));

    Estimate estimate = predictor.at(65, 137);
    assertThat(estimate.status()).isEqualTo(CellStatus.ESTIMATED);
    assertThat(estimate.value())
        .as(name)
        .isCloseTo(EXPECTED.number("estimate", row), within(TOLERANCE * 1000));
    assertThat(estimate.variance())
        .as(name)
        .isCloseTo(EXPECTED.number("variance", row), within(TOLERANCE));
  }

  /** The figures printed in the book: weights to three, the estimate to one, variance to two. */
  @Test
  void publishedFiguresOfTheFirstCase() {
    Observations data = Observations.of(DATA.column("x"), DATA.column("y"), DATA.column("v"));
    GlobalPredictor predictor = (GlobalPredictor) Kriging.ordinary(model(0)).fit(data);
    Targets target = Targets.of(new double[] {65}, new double[] {137});
    double[] published = {0.173, 0.318, 0.129, 0.086, 0.151, 0.057, 0.086};
    assertThat(predictor.weights(target, 0).weight()).containsExactly(published, within(0.0005));
    assertThat(predictor.at(65, 137).value()).isCloseTo(592.7, within(0.05));
    assertThat(predictor.at(65, 137).variance()).isCloseTo(8.96, within(0.005));
  }
}
