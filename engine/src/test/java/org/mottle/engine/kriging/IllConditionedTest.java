package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/** Systems that cannot be solved soundly end in a status and a reason: no garbage, no exception. */
class IllConditionedTest {
  private static final NestedModel EXPONENTIAL = NestedModel.of(0, new Exponential(10, 8));

  private static Observations grid(int side, double spacing) {
    int n = side * side;
    double[] x = new double[n];
    double[] y = new double[n];
    Arrays.setAll(x, i -> i % side * spacing);
    Arrays.setAll(y, i -> i / side * spacing);
    return Observations.of(x, y, new Random(1).doubles(n, 10, 30).toArray());
  }

  private static Observations pair(double apart) {
    double[] x = {0, 10, 20, 20 + apart, 35};
    double[] y = {0, 12, 5, 5, 30};
    return Observations.of(x, y, new double[] {20, 22, 18, 25, 30});
  }

  private static void refused(Kriging kriging, Observations data, String inReason) {
    Predictor predictor = kriging.fit(data);
    assertThat(predictor.soundness().status()).isEqualTo(CellStatus.ILL_CONDITIONED);
    assertThat(predictor.soundness().reason()).contains(inReason);
    assertThat(predictor.conditionEstimate()).isGreaterThan(1e12);
    Estimates estimates =
        predictor.estimate(Targets.of(new double[] {3, 7}, new double[] {4, 8}), 2, Progress.NONE);
    assertThat(estimates.count(CellStatus.ILL_CONDITIONED)).isEqualTo(2);
    assertThat(estimates.values()).containsOnly(Double.NaN);
    assertThat(estimates.variances()).containsOnly(Double.NaN);
    assertThat(estimates.conditionEstimate()).isGreaterThan(1e12);
    assertThat(predictor.mean(new double[] {1}, new double[] {1}, new double[] {1}).status())
        .isEqualTo(CellStatus.ILL_CONDITIONED);
    assertThat(kriging.leaveOneOut(data, 1, Progress.NONE).count(CellStatus.ESTIMATED)).isZero();
  }

  @Test
  void gaussianWithoutNugget() {
    refused(
        Kriging.ordinary(NestedModel.of(0, new Gaussian(10, 40))),
        grid(12, 1),
        "covariance matrix is n");
  }

  @Test
  void twoReadingsOneHole() {
    Kriging kriging = Kriging.ordinary(EXPONENTIAL);
    refused(kriging, pair(0), "observations are 3 and 4, 0.00 m apart");
    refused(kriging, pair(1e-13), "merge observations that share a place");
  }

  @Test
  void anHonestErrorOfTheProbeMendsIt() {
    double[] variance = {0.5, 0.5, 0.5, 0.5, 0.5};
    Observations measured = pair(0).withMeasurementVariance(variance);
    Predictor predictor = Kriging.ordinary(EXPONENTIAL).fit(measured);
    assertThat(predictor.soundness().sound()).isTrue();
    // two readings of one place with equal errors: as one with their mean and half the variance
    Observations merged =
        Observations.of(
                new double[] {0, 10, 20, 35},
                new double[] {0, 12, 5, 30},
                new double[] {20, 22, 21.5, 30})
            .withMeasurementVariance(new double[] {0.5, 0.5, 0.25, 0.5});
    Estimate expected = Kriging.ordinary(EXPONENTIAL).fit(merged).at(18, 9);
    assertThat(predictor.at(18, 9).value()).isCloseTo(expected.value(), within(1e-10));
    assertThat(predictor.at(18, 9).variance()).isCloseTo(expected.variance(), within(1e-10));
  }

  @Test
  void neighbourhoodsMarkOnlyTheCellsConcerned() {
    double[] x = {0, 0, 1, 50, 51, 52};
    double[] y = {0, 0, 1, 50, 52, 50};
    Observations data = Observations.of(x, y, new double[] {1, 2, 3, 4, 5, 6});
    Estimates estimates =
        Kriging.ordinary(EXPONENTIAL)
            .with(Neighbourhood.nearest(3))
            .fit(data)
            .estimate(Targets.of(new double[] {2, 51}, new double[] {2, 51}), 1, Progress.NONE);
    assertThat(estimates.status(0)).isEqualTo(CellStatus.ILL_CONDITIONED);
    assertThat(estimates.value(0)).isNaN();
    assertThat(estimates.status(1)).isEqualTo(CellStatus.ESTIMATED);
    assertThat(estimates.conditionEstimate()).isInfinite();
  }

  @Test
  void closePairsStillSolvableAreSolved() {
    Predictor predictor = Kriging.ordinary(EXPONENTIAL).fit(pair(0.001));
    assertThat(predictor.soundness().sound()).isTrue();
    assertThat(predictor.conditionEstimate()).isBetween(1e3, 1e6);
    assertThat(predictor.at(20, 5).value()).isCloseTo(18, within(1e-8));
  }

  @Test
  void driftsThatCannotBeToldApart() {
    double[] line = {0, 1, 2, 3, 4, 5};
    Observations onALine = Observations.of(line, line, new double[] {3, 4, 6, 5, 7, 9});
    refused(
        Kriging.ordinary(EXPONENTIAL).with(Drift.coordinates()),
        onALine,
        "terms of the drift cannot be told apart");
    Observations constant =
        grid(3, 5).withCovariates(List.of(new double[] {7, 7, 7, 7, 7, 7, 7, 7, 7}));
    Predictor predictor = Kriging.ordinary(EXPONENTIAL).with(Drift.covariates()).fit(constant);
    assertThat(predictor.soundness().reason()).contains("covariate is constant");
  }

  @Test
  void tooFewObservations() {
    Observations none = Observations.of(new double[0], new double[0], new double[0]);
    Observations two =
        Observations.of(new double[] {1, 2}, new double[] {1, 5}, new double[] {3, 4});
    Kriging kriging = Kriging.ordinary(EXPONENTIAL);
    assertThat(kriging.fit(none).at(0, 0).status()).isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
    assertThat(kriging.with(Neighbourhood.ALL.within(9)).fit(none).at(0, 0).status())
        .isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
    Predictor plane = kriging.with(Drift.coordinates()).fit(two);
    assertThat(plane.at(0, 0).status()).isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
    assertThat(plane.soundness().reason()).isEqualTo("2 observations for a drift of 3 terms");
  }

  @Test
  void oneObservationIsItsOwnMean() {
    Observations one = Observations.of(new double[] {5}, new double[] {5}, new double[] {12});
    Estimate estimate = Kriging.ordinary(EXPONENTIAL).fit(one).at(500, 500);
    assertThat(estimate.value()).isCloseTo(12, within(1e-12));
    assertThat(estimate.variance()).isCloseTo(20, within(1e-12));
  }

  @Test
  void allEqualValuesGiveThatValue() {
    double[] same = new double[25];
    Arrays.fill(same, 17.3);
    Estimates estimates =
        Kriging.ordinary(EXPONENTIAL)
            .fit(grid(5, 3).withValues(same))
            .estimate(Targets.of(new double[] {1, 80}, new double[] {2, 90}), 1, Progress.NONE);
    assertThat(estimates.values()).containsExactly(new double[] {17.3, 17.3}, within(1e-12));
  }

  @Test
  void aSillOfNothingIsNotSolvable() {
    refused(
        Kriging.ordinary(NestedModel.of(0, new Spherical(0, 10))),
        grid(3, 5),
        "not positive definite");
  }

  @Test
  void tooManyAtOnceIsRefusedBeforeTheMemoryIs() {
    int n = 20_001;
    double[] x = new double[n];
    Arrays.setAll(x, i -> i);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Kriging.ordinary(EXPONENTIAL).fit(Observations.of(x, x, x)))
        .withMessageContaining("20001 observations at once needs 3.2 GB")
        .withMessageContaining("set a neighbourhood");
  }

  @Test
  void covariatesMustBeThere() {
    Kriging kriging = Kriging.ordinary(EXPONENTIAL).with(Drift.covariates());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> kriging.fit(grid(3, 5)))
        .withMessageContaining("at least 1 covariate, had 0");
    Predictor predictor =
        kriging.fit(grid(3, 5).withCovariates(List.of(new Random(4).doubles(9).toArray())));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> predictor.at(1, 1))
        .withMessage("the drift has 1 covariates and the targets have 0");
  }
}
