package org.mottle.engine.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Meuse;
import org.mottle.engine.variogram.NestedModel;

class AutomaticFitTest {

  @ParameterizedTest
  @EnumSource(Weighting.class)
  void takesTheLeastSumOfSquares(Weighting weighting) {
    ExperimentalVariogram variogram = Meuse.published("meuse_vgm_default");
    AutomaticFit automatic = AutomaticFit.of(weighting);
    Fitted best = (Fitted) automatic.fit(variogram);
    for (WeightedLeastSquares candidate : automatic.candidates()) {
      assertThat(((Fitted) candidate.fit(variogram)).weightedSse())
          .as("%s", candidate)
          .isGreaterThanOrEqualTo(best.weightedSse());
    }
    assertThat(weighting.sumOfSquares(variogram, best.model())).isEqualTo(best.weightedSse());
  }

  @Test
  void theDefaultMeuseVariogramIsPentaspherical() {
    Fitted best =
        (Fitted)
            AutomaticFit.of(Weighting.PAIRS_OVER_LAG_SQUARED)
                .fit(Meuse.published("meuse_vgm_default"));
    assertThat(best.model().structures().get(0).model().type()).isEqualTo("pentaspherical");
  }

  @Test
  void findsTheShapeAVariogramWasMadeOf() {
    for (Shape shape : List.of(Shape.SPHERICAL, Shape.EXPONENTIAL, Shape.CIRCULAR)) {
      ExperimentalVariogram made =
          WeightedLeastSquaresTest.made(NestedModel.of(1, shape.model(5, 15, 1)), 20, 2);
      Fitted best = (Fitted) AutomaticFit.of(Weighting.PAIRS).fit(made);
      assertThat(best.model().structures().get(0).model().type())
          .isEqualTo(shape.model(1, 1, 1).type());
    }
  }

  @Test
  void ofEqualsTheEarlier() {
    WeightedLeastSquares exponential = WeightedLeastSquares.of(Shape.EXPONENTIAL);
    WeightedLeastSquares matern =
        WeightedLeastSquares.of(StructureSpec.of(Shape.MATERN).withKappa(Parameter.fixed(0.5)));
    ExperimentalVariogram variogram = Meuse.published("meuse_vgm_1500_100");
    Fitted best = (Fitted) new AutomaticFit(List.of(exponential, matern)).fit(variogram);
    assertThat(best.model().structures().get(0).model().type()).isEqualTo("exponential");
  }

  @Test
  void needsACandidate() {
    assertThatThrownBy(() -> new AutomaticFit(List.of())).hasMessageContaining("had 0");
  }
}
