package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.observation.Observations;

/** Variograms that carry no model, or not the one asked for: a reason or a note, never nonsense. */
class OddVariogramTest {

  @ParameterizedTest
  @EnumSource(Shape.class)
  void flatIsANugget(Shape shape) {
    for (Weighting weighting : Weighting.values()) {
      Fitted fitted =
          (Fitted)
              WeightedLeastSquares.of(shape).withWeighting(weighting).fit(variogram(10, h -> 3));
      assertThat(fitted.model().structures()).as("%s", weighting).isEmpty();
      assertThat(fitted.model().nugget()).isCloseTo(3, within(1e-12));
      assertThat(fitted.model().nuggetShare()).isEqualTo(1);
      assertThat(fitted.notes())
          .containsExactly("no spatial structure found: a nugget alone fits as well");
    }
  }

  @ParameterizedTest
  @EnumSource(Weighting.class)
  void fallingIsANugget(Weighting weighting) {
    Fitted fitted = (Fitted) AutomaticFit.of(weighting).fit(variogram(12, h -> 9 - h / 5));
    assertThat(fitted.model().structures()).isEmpty();
    assertThat(fitted.model().nugget()).isBetween(4.0, 9.0);
    assertThat(fitted.notes())
        .containsExactly(
            "no spatial structure found: a nugget alone fits as well; the semivariance falls with"
                + " the lag");
  }

  @Test
  void flatWithoutNuggetSaysThatTheRangeIsNotSeen() {
    Fitted fitted =
        (Fitted)
            WeightedLeastSquares.of(Shape.SPHERICAL)
                .withNugget(Parameter.fixed(0))
                .fit(variogram(10, h -> 3));
    assertThat(fitted.model().sill()).isCloseTo(3, within(1e-9));
    assertThat(fitted.notes())
        .anySatisfy(note -> assertThat(note).contains("before the shortest lag of 2 m"));
  }

  @Test
  void twoLagsCannotCarryThreeParameters() {
    FitOutcome outcome = WeightedLeastSquares.of(Shape.SPHERICAL).fit(variogram(2, h -> 1 + h));
    assertThat(outcome)
        .isEqualTo(
            new NotFitted(
                "2 lags cannot carry 3 free parameters; fix some of them, or use narrower lags or a"
                    + " longer cutoff"));
  }

  @Test
  void twoLagsCarryTwoParametersWithANote() {
    Fitted fitted =
        (Fitted)
            WeightedLeastSquares.of(
                    StructureSpec.of(Shape.SPHERICAL).withRange(Parameter.fixed(10)))
                .fit(variogram(2, h -> 1 + h / 4));
    assertThat(fitted.weightedSse()).isLessThan(1e-20);
    assertThat(fitted.notes())
        .contains("as many free parameters as lags (2): the fit cannot be judged");
  }

  @Test
  void allZero() {
    assertThat(AutomaticFit.of(Weighting.CRESSIE).fit(variogram(9, h -> 0)))
        .isEqualTo(new NotFitted("all semivariances are 0: the values of every pair are equal"));
  }

  @Test
  void noLags() {
    assertThat(WeightedLeastSquares.of(Shape.SPHERICAL).fit(new ExperimentalVariogram(List.of())))
        .isEqualTo(new NotFitted("no lag holds a pair of observations; use a longer cutoff"));
  }

  @ParameterizedTest
  @EnumSource(Weighting.class)
  void zeroAtTheFirstLagsIsNoObstacle(Weighting weighting) {
    Fitted fitted =
        (Fitted)
            WeightedLeastSquares.of(Shape.SPHERICAL)
                .withWeighting(weighting)
                .fit(variogram(12, h -> Math.max(0, h - 4)));
    assertThat(fitted.weightedSse()).isFinite();
    assertThat(fitted.model().sill()).isBetween(1.0, 1e5);
  }

  @Test
  void risingWithoutEndSaysSo() {
    Fitted fitted =
        (Fitted) WeightedLeastSquares.of(Shape.SPHERICAL).fit(variogram(12, h -> 1 + h / 3));
    assertThat(fitted.notes())
        .anySatisfy(
            note -> assertThat(note).contains("does not level off within the longest lag of 24 m"));
    assertThat(fitted.model().semivariance(0, 12)).isCloseTo(5, within(0.05));
  }

  @Test
  void emptyLagsInBetween() {
    double[] x = {0, 1, 2, 3, 4, 50, 51, 52, 53, 54, 200};
    double[] z = {1, 2, 2.5, 4, 3, 8, 7, 7.5, 9, 8, 5};
    ExperimentalVariogram v =
        ExperimentalVariogram.of(
            List.of(Observations.of(x, new double[x.length], z)),
            new LagBins(60, 2),
            Estimator.MATHERON,
            Direction.ALL,
            1);
    assertThat(v.lags()).hasSizeLessThan(30);
    Fitted fitted = (Fitted) AutomaticFit.of(Weighting.PAIRS).fit(v);
    assertThat(fitted.model().semivariance(0, 50)).isBetween(5.0, 20.0);
  }

  @Test
  void anisotropyNeedsDirections() {
    StructureSpec turned =
        StructureSpec.of(Shape.SPHERICAL).withAnisotropy(Parameter.fixed(40), Parameter.fixed(0.5));
    assertThat(WeightedLeastSquares.of(turned).fit(variogram(12, h -> 1 + h)))
        .isInstanceOfSatisfying(
            NotFitted.class, n -> assertThat(n.reason()).contains("several directions"));
  }

  @Test
  void aStructureWithoutSillIsLeftOut() {
    Fitted fitted =
        (Fitted)
            WeightedLeastSquares.of(
                    StructureSpec.of(Shape.SPHERICAL),
                    StructureSpec.of(Shape.LINEAR).withPartialSill(Parameter.between(0, 1)))
                .fit(
                    variogram(
                        20, h -> 2 + Shape.SPHERICAL.model(5, 13, 1).semivariance(h) - h / 1000));
    assertThat(fitted.model().structures()).hasSize(1);
    assertThat(fitted.notes())
        .contains("the linear structure came out with sill 0 and is left out");
  }

  static ExperimentalVariogram variogram(int lags, DoubleUnaryOperator semivariance) {
    List<Lag> made = new ArrayList<>();
    for (int i = 1; i <= lags; i++) {
      made.add(new Lag(30 + i, 2.0 * i, semivariance.applyAsDouble(2.0 * i)));
    }
    return new ExperimentalVariogram(made);
  }
}
