package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.empirical.Meuse;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;
import org.mottle.engine.variogram.VariogramModel;

/** The fit finds what a variogram was made of, keeps to its bounds, and is blind to units. */
class WeightedLeastSquaresTest {
  private static final long SEED = 31;

  @ParameterizedTest
  @EnumSource(Shape.class)
  void findsEveryShapeAgain(Shape shape) {
    VariogramModel truth =
        switch (shape) {
          case POWER -> shape.model(0.03, 1.3, 1);
          case LINEAR -> shape.model(0.2, 0, 1);
          default -> shape.model(6, 14, 1.5);
        };
    for (Weighting weighting : Weighting.values()) {
      Fitted fitted =
          fitted(
              WeightedLeastSquares.of(shape).withWeighting(weighting),
              made(NestedModel.of(2, truth), 20, 2));
      VariogramModel found = fitted.model().structures().get(0).model();
      assertThat(fitted.model().nugget()).as("%s", weighting).isCloseTo(2, within(2e-6));
      assertThat(found.type()).isEqualTo(truth.type());
      assertThat(found.partialSill())
          .isCloseTo(truth.partialSill(), within(1e-6 * truth.partialSill()));
      assertThat(found.range()).isCloseTo(truth.range(), within(1e-6 * truth.range()));
      assertThat(fitted.weightedSse()).isLessThan(1e-9);
    }
  }

  @Test
  void findsALinearModelWithARange() {
    StructureSpec bounded = StructureSpec.of(Shape.LINEAR).withRange(Parameter.FREE);
    VariogramModel truth = Shape.LINEAR.model(6, 17.3, 1);
    Fitted fitted = fitted(WeightedLeastSquares.of(bounded), made(NestedModel.of(2, truth), 20, 2));
    assertThat(fitted.model().structures().get(0).model().range()).isCloseTo(17.3, within(1e-5));
  }

  @Test
  void findsTwoNestedStructures() {
    NestedModel truth = NestedModel.of(1, new Spherical(3, 9), new Spherical(4, 55));
    Fitted fitted =
        fitted(WeightedLeastSquares.of(Shape.SPHERICAL, Shape.SPHERICAL), made(truth, 30, 2.5));
    List<VariogramModel> found =
        fitted.model().structures().stream()
            .map(Structure::model)
            .sorted(java.util.Comparator.comparingDouble(VariogramModel::range))
            .toList();
    assertThat(fitted.model().nugget()).isCloseTo(1, within(1e-4));
    assertThat(found.get(0).range()).isCloseTo(9, within(1e-3));
    assertThat(found.get(0).partialSill()).isCloseTo(3, within(1e-3));
    assertThat(found.get(1).range()).isCloseTo(55, within(1e-3));
    assertThat(found.get(1).partialSill()).isCloseTo(4, within(1e-3));
  }

  @Test
  void nestingNeverFitsWorse() {
    for (String name : List.of("meuse_vgm_default", "meuse_vgm_1500_100")) {
      ExperimentalVariogram variogram = Meuse.published(name);
      double one = fitted(WeightedLeastSquares.of(Shape.SPHERICAL), variogram).weightedSse();
      double two =
          fitted(WeightedLeastSquares.of(Shape.SPHERICAL, Shape.EXPONENTIAL), variogram)
              .weightedSse();
      assertThat(two).as(name).isLessThanOrEqualTo(one * (1 + 1e-9));
    }
  }

  @Test
  void findsKappa() {
    NestedModel truth = NestedModel.of(1, new Matern(5, 8, 0.9));
    StructureSpec free = StructureSpec.of(Shape.MATERN).withKappa(Parameter.between(0.3, 3));
    Fitted fitted = fitted(WeightedLeastSquares.of(free), made(truth, 25, 2));
    Matern found = (Matern) fitted.model().structures().get(0).model();
    assertThat(found.kappa()).isCloseTo(0.9, within(1e-4));
    assertThat(found.range()).isCloseTo(8, within(1e-3));
  }

  @Test
  void findsAnisotropy() {
    NestedModel truth =
        new NestedModel(
            0.5,
            List.of(new Structure(new Exponential(4, 30), new Anisotropy(new Azimuth(112), 0.4))));
    List<Lag> lags = new ArrayList<>();
    for (int azimuth = 0; azimuth < 180; azimuth += 30) {
      double bearing = Math.toRadians(azimuth);
      for (double h = 3; h < 80; h += 6) {
        lags.add(
            new Lag(
                90,
                h,
                truth.semivariance(h * Math.sin(bearing), h * Math.cos(bearing)),
                Direction.of(azimuth, 15)));
      }
    }
    StructureSpec free =
        StructureSpec.of(Shape.EXPONENTIAL).withAnisotropy(Parameter.FREE, Parameter.FREE);
    Fitted fitted = fitted(WeightedLeastSquares.of(free), new ExperimentalVariogram(lags));
    Structure found = fitted.model().structures().get(0);
    assertThat(found.anisotropy().major().degrees()).isCloseTo(112, within(1e-3));
    assertThat(found.anisotropy().ratio()).isCloseTo(0.4, within(1e-5));
    assertThat(found.model().range()).isCloseTo(30, within(1e-3));
  }

  @Test
  void fixedParametersStayAndBoundsHold() {
    ExperimentalVariogram variogram = Meuse.published("meuse_vgm_default");
    StructureSpec spherical = StructureSpec.of(Shape.SPHERICAL);
    Fitted fixed =
        fitted(
            WeightedLeastSquares.of(
                    spherical
                        .withRange(Parameter.fixed(700))
                        .withPartialSill(Parameter.between(0.6, 0.7)))
                .withNugget(Parameter.fixed(0.1)),
            variogram);
    VariogramModel model = fixed.model().structures().get(0).model();
    assertThat(fixed.model().nugget()).isEqualTo(0.1);
    assertThat(model.range()).isEqualTo(700);
    assertThat(model.partialSill()).isCloseTo(0.6, within(1e-15));

    Fitted bounded =
        fitted(
            WeightedLeastSquares.of(spherical.withRange(Parameter.between(300, 800))), variogram);
    assertThat(bounded.model().structures().get(0).model().range()).isCloseTo(800, within(1e-6));
    assertThat(bounded.notes())
        .containsExactly("the range of the spherical structure lies at its bound of 800");

    Fitted free = fitted(WeightedLeastSquares.of(spherical), variogram);
    Fitted wide =
        fitted(WeightedLeastSquares.of(spherical.withRange(Parameter.between(1, 1e6))), variogram);
    assertThat(wide.weightedSse()).isCloseTo(free.weightedSse(), within(1e-12));
    assertThat(bounded.weightedSse()).isGreaterThan(free.weightedSse());
    assertThat(fixed.weightedSse()).isGreaterThan(bounded.weightedSse());
  }

  /** Wherever the search is told to look, as long as the optimum is there, it finds the same. */
  @Test
  void theBoundsOfTheSearchDoNotMatter() {
    Random random = new Random(SEED);
    for (Weighting weighting : Weighting.values()) {
      ExperimentalVariogram variogram = Meuse.published("meuse_vgm_1500_100");
      WeightedLeastSquares free = WeightedLeastSquares.of(Shape.GAUSSIAN).withWeighting(weighting);
      Fitted best = fitted(free, variogram);
      double range = best.model().structures().get(0).model().range();
      for (int i = 0; i < 25; i++) {
        Parameter around =
            Parameter.between(
                range * Math.exp(-5 * random.nextDouble()),
                range * Math.exp(5 * random.nextDouble()));
        Fitted other =
            fitted(
                new WeightedLeastSquares(
                    weighting,
                    Parameter.FREE,
                    List.of(StructureSpec.of(Shape.GAUSSIAN).withRange(around))),
                variogram);
        assertThat(other.weightedSse())
            .as("seed %s, %s, %s", SEED, weighting, around)
            .isCloseTo(best.weightedSse(), within(1e-9 * best.weightedSse()));
      }
    }
  }

  @Test
  void unitsDoNotMatter() {
    ExperimentalVariogram metres = Meuse.published("meuse_vgm_default");
    for (Weighting weighting : Weighting.values()) {
      WeightedLeastSquares wanted =
          WeightedLeastSquares.of(Shape.PENTASPHERICAL).withWeighting(weighting);
      Fitted plain = fitted(wanted, metres);
      for (double lag : new double[] {1e-3, 1, 1e5}) {
        for (double value : new double[] {1e-12, 1e-6, 1e12}) {
          ExperimentalVariogram scaled =
              new ExperimentalVariogram(
                  metres.lags().stream()
                      .map(l -> new Lag(l.pairs(), lag * l.distance(), value * l.semivariance()))
                      .toList());
          NestedModel model = fitted(wanted, scaled).model();
          VariogramModel expected = plain.model().structures().get(0).model();
          VariogramModel found = model.structures().get(0).model();
          assertThat(model.nugget() / value)
              .isCloseTo(plain.model().nugget(), within(1e-6 * plain.model().nugget()));
          assertThat(found.partialSill() / value)
              .isCloseTo(expected.partialSill(), within(1e-6 * expected.partialSill()));
          assertThat(found.range() / lag)
              .isCloseTo(expected.range(), within(1e-6 * expected.range()));
        }
      }
    }
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> Parameter.between(3, 2)).hasMessageContaining("were 3.0 and 2.0");
    assertThatThrownBy(() -> StructureSpec.of(Shape.SPHERICAL).withRange(Parameter.fixed(0)))
        .hasMessageContaining("not SPHERICAL");
    assertThatThrownBy(
            () ->
                StructureSpec.of(Shape.SPHERICAL)
                    .withAnisotropy(Parameter.fixed(0), Parameter.fixed(2)))
        .hasMessageContaining("was 2.0");
    assertThatThrownBy(
            () -> new WeightedLeastSquares(Weighting.EQUAL, Parameter.fixed(4), List.of()))
        .hasMessageContaining("fixed at 4.0");
  }

  static ExperimentalVariogram made(NestedModel model, int lags, double width) {
    List<Lag> made = new ArrayList<>();
    for (int i = 1; i <= lags; i++) {
      made.add(new Lag(40 + 7L * i, width * i, model.semivariance(0, width * i)));
    }
    return new ExperimentalVariogram(made);
  }

  private static Fitted fitted(WeightedLeastSquares wanted, ExperimentalVariogram variogram) {
    FitOutcome outcome = wanted.fit(variogram);
    assertThat(outcome).isInstanceOf(Fitted.class);
    return (Fitted) outcome;
  }
}
