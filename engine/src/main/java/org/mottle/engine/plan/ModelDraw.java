package org.mottle.engine.plan;

import org.mottle.engine.check.Check;
import org.mottle.engine.kriging.KrigingSystem;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.NestedModel;

/**
 * One set of parameters the survey is compatible with.
 *
 * @param system the readings kriged with these parameters
 * @param readingVariance variance of a new reading about the local mean at its station, value²: the
 *     nugget over the number of insertions, and what the error of its position adds
 */
public record ModelDraw(KrigingSystem system, double readingVariance) {
  public ModelDraw {
    Check.atLeast("variance of a new reading", readingVariance, 0, "value²");
  }

  /**
   * The same draw for readings taken some way off their stations. A reading at S(c + ε) in place of
   * S(c) is off by a variance of 2 E γ(ε), with γ the structured part of the model, which is taken
   * as noise of the reading. That is a little optimistic at the station itself: where E γ is a
   * tenth of the sill and the noise three, a first reading explains 0.62 of the variance there and
   * is taken to explain 0.67.
   *
   * @param model the model of the draw, the same in all directions
   * @param sdM standard deviation of the position per axis, m
   */
  public ModelDraw withPositionError(NestedModel model, double sdM) {
    Check.atLeast("position error of a new reading", sdM, 0, "m");
    double sum =
        model.structures().stream()
            .mapToDouble(s -> BlurredModel.of(s.model(), sdM).semivariance(0))
            .sum();
    return new ModelDraw(system, readingVariance + 2 * sum);
  }
}
