package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

/** The mean over an irregular area: linear in the points, its variance that of a mean. */
class AreaMeanTest {
  private static final NestedModel MODEL = NestedModel.of(0.7, new Exponential(6, 9));

  private static Observations survey(long seed) {
    Random random = new Random(seed);
    return Observations.of(
            random.doubles(45, 0, 30).toArray(),
            random.doubles(45, 0, 30).toArray(),
            random.doubles(45, 10, 30).toArray())
        .withCovariates(List.of(random.doubles(45).toArray()));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void theMeanOfTheMapIsTheMapOfTheMean(long seed) {
    Random random = new Random(100 + seed);
    double[] x = random.doubles(80, 5, 20).toArray();
    double[] y = random.doubles(80, 5, 12).toArray();
    double[] weight = random.doubles(80, 0, 3).toArray();
    Targets points = Targets.of(x, y).withCovariates(List.of(random.doubles(80).toArray()));
    for (Drift drift :
        List.of(
            Drift.knownMean(20),
            Drift.constant(),
            Drift.coordinates(),
            Drift.coordinatesAndCovariates())) {
      Predictor predictor = Kriging.ordinary(MODEL).with(drift).fit(survey(seed));
      Estimates map = predictor.estimate(points, 1, Progress.NONE);
      double total = Arrays.stream(weight).sum();
      double expected = 0;
      double pointVariance = 0;
      for (int k = 0; k < 80; k++) {
        expected += weight[k] / total * map.value(k);
        pointVariance += weight[k] / total * map.variance(k);
      }
      Estimate mean = predictor.mean(points, weight);
      assertThat(mean.value()).as(drift.toString()).isCloseTo(expected, within(1e-9));
      assertThat(mean.variance()).as(drift.toString()).isPositive().isLessThan(pointVariance);
    }
  }

  @Test
  void onePointIsThatPointWithoutItsNugget() {
    Predictor predictor = Kriging.ordinary(MODEL).fit(survey(1));
    Estimate point = predictor.at(14, 11);
    Estimate area = predictor.mean(new double[] {14}, new double[] {11}, new double[] {4});
    assertThat(area.value()).isCloseTo(point.value(), within(1e-12));
    assertThat(area.variance()).isCloseTo(point.variance() - 0.7, within(1e-12));
  }

  @Test
  void neighbourhoodsTakeTheUnionAroundTheArea() {
    double[] x = {3, 6, 9, 25};
    double[] y = {3, 8, 5, 25};
    double[] weight = {1, 1, 2, 0.5};
    Kriging kriging = Kriging.ordinary(MODEL);
    Estimate all = kriging.fit(survey(2)).mean(x, y, weight);
    Estimate wide = kriging.with(Neighbourhood.nearest(44)).fit(survey(2)).mean(x, y, weight);
    assertThat(wide.value()).isCloseTo(all.value(), within(1e-9));
    assertThat(wide.variance()).isCloseTo(all.variance(), within(1e-9));
    Estimate near = kriging.with(Neighbourhood.nearest(12)).fit(survey(2)).mean(x, y, weight);
    assertThat(near.variance()).isGreaterThan(all.variance());
    assertThat(
            kriging
                .with(Neighbourhood.ALL.within(0.5))
                .fit(survey(2))
                .mean(new double[] {200}, new double[] {200}, new double[] {1})
                .status())
        .isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
  }

  @Test
  void refusesWeightsOfNothing() {
    Predictor predictor = Kriging.ordinary(MODEL).fit(survey(1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> predictor.mean(new double[] {1}, new double[] {1}, new double[] {0}))
        .withMessageContaining("sum of the weights");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> predictor.mean(new double[] {1}, new double[] {1}, new double[] {1, 2}))
        .withMessage("there are 2 weights for 1 points of an area");
  }
}
