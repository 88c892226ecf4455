package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

class ModelDrawTest {
  private final Observations survey = InventedGreen.survey(InventedGreen.outline(), 1, 6);
  private final ModelDraw draw = InventedGreen.draw(InventedGreen.MODEL, survey, 0.5);

  /** E exp(-r²/a²) over a plane Gaussian of s.d. s per axis is 1 / (1 + 2 s²/a²). */
  @Test
  void position_error_adds_twice_the_mean_semivariance() {
    double added =
        draw.withPositionError(NestedModel.of(0.3, new Gaussian(4, 3)), 0.8).readingVariance()
            - 0.5;
    double mean = 4 * (1 - 1 / (1 + 2 * 0.64 / 9));
    assertThat(added).isCloseTo(2 * mean, withPercentage(1));
  }

  /** Near the origin a spherical model rises by 1.5 c h/a, and E r = s √(π/2). */
  @Test
  void small_errors_add_what_a_linear_rise_does() {
    double added =
        draw.withPositionError(NestedModel.of(0, new Spherical(4, 100)), 0.3).readingVariance()
            - 0.5;
    assertThat(added)
        .isCloseTo(2 * 1.5 * 4 * 0.3 / 100 * Math.sqrt(Math.PI / 2), withPercentage(0.5));
  }

  @Test
  void exact_positions_add_nothing() {
    assertThat(draw.withPositionError(InventedGreen.MODEL, 0)).isEqualTo(draw);
  }
}
