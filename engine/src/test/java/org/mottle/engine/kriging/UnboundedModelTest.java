package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Linear;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Power;

/** Models without a sill: solved through a stand-in for it, which may not show in the result. */
class UnboundedModelTest {

  static List<NestedModel> models() {
    return List.of(
        NestedModel.of(0.3, new Linear(0.2, 0)),
        NestedModel.of(0, new Power(0.05, 0.6)),
        NestedModel.of(0.1, new Power(0.05, 1.5)),
        NestedModel.of(0.1, new Power(0.05, 1.9), new Exponential(1, 4)));
  }

  private static Observations survey() {
    Random random = new Random(3);
    return Observations.of(
        random.doubles(50, 0, 40).toArray(),
        random.doubles(50, 0, 40).toArray(),
        random.doubles(50, 10, 30).toArray());
  }

  @ParameterizedTest
  @MethodSource("models")
  void theBorderedSemivarianceSystemGivesTheSame(NestedModel model) {
    Observations data = survey();
    Kriging kriging = Kriging.ordinary(model);
    Targets target = Targets.of(new double[] {13.5}, new double[] {22.25});
    double[] expected = bySemivariances(model, data, 13.5, 22.25);
    Estimate all = kriging.fit(data).at(13.5, 22.25);
    Estimate near = kriging.with(Neighbourhood.ALL.within(500)).fit(data).at(13.5, 22.25);
    for (Estimate estimate : List.of(all, near)) {
      assertThat(estimate.status()).isEqualTo(CellStatus.ESTIMATED);
      assertThat(estimate.value()).isCloseTo(expected[0], within(1e-8));
      assertThat(estimate.variance()).isCloseTo(expected[1], within(1e-8));
    }
    for (double pseudoSill : new double[] {2, 3, 50, 1000}) {
      KrigingSystem system = new KrigingSystem(model, Drift.constant(), data, pseudoSill);
      Estimate other =
          new GlobalPredictor(system, BlockSupport.POINT)
              .estimate(target, 1, org.mottle.engine.progress.Progress.NONE)
              .get(0);
      assertThat(other.value()).as("sill " + pseudoSill).isCloseTo(expected[0], within(1e-8));
      assertThat(other.variance()).as("sill " + pseudoSill).isCloseTo(expected[1], within(1e-8));
    }
  }

  /** [G 1; 1 0] [w; m] = [g; 1]: estimate wᵀz, variance wᵀg + m (Webster & Oliver 2007, ch. 8). */
  private static double[] bySemivariances(
      NestedModel model, Observations data, double x, double y) {
    int n = data.size();
    double[][] a = new double[n + 1][n + 1];
    double[] b = new double[n + 1];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        a[i][j] = model.semivariance(data.x(i) - data.x(j), data.y(i) - data.y(j));
      }
      a[i][n] = 1;
      a[n][i] = 1;
      b[i] = model.semivariance(data.x(i) - x, data.y(i) - y);
    }
    b[n] = 1;
    double[] s =
        new LUDecomposition(new Array2DRowRealMatrix(a))
            .getSolver()
            .solve(new ArrayRealVector(b))
            .toArray();
    double value = 0;
    double variance = s[n];
    for (int i = 0; i < n; i++) {
      value += s[i] * data.value(i);
      variance += s[i] * b[i];
    }
    return new double[] {value, variance};
  }

  @ParameterizedTest
  @MethodSource("models")
  void blocksAndAreasToo(NestedModel model) {
    Observations data = survey();
    Kriging kriging = Kriging.ordinary(model);
    BlockSupport block = new BlockSupport(3, 2);
    double[] x = new double[16];
    double[] y = new double[16];
    double[] weight = new double[16];
    for (int p = 0; p < 16; p++) {
      x[p] = 20 + block.dx(p);
      y[p] = 11 + block.dy(p);
      weight[p] = block.weight(p);
    }
    Estimate byBlock = kriging.with(block).fit(data).at(20, 11);
    Estimate byArea = kriging.fit(data).mean(x, y, weight);
    assertThat(byArea.value()).isCloseTo(byBlock.value(), within(1e-9));
    assertThat(byArea.variance()).isCloseTo(byBlock.variance(), within(1e-9));
  }

  @Test
  void simpleKrigingIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(
            () -> Kriging.ordinary(NestedModel.of(0, new Linear(1, 0))).with(Drift.knownMean(20)))
        .withMessageContaining("needs a variogram that levels off")
        .withMessageContaining("Linear[partialSill=1.0, range=0.0]");
  }
}
