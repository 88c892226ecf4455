package org.mottle.engine.plan;

import org.mottle.engine.check.Check;
import org.mottle.engine.kriging.KrigingSystem;

/**
 * One set of parameters the survey is compatible with.
 *
 * @param system the readings kriged with these parameters
 * @param readingVariance variance of a new reading about the local mean at its station, value²: the
 *     nugget over the number of insertions, and whatever position error adds
 */
public record ModelDraw(KrigingSystem system, double readingVariance) {
  public ModelDraw {
    Check.atLeast("variance of a new reading", readingVariance, 0, "value²");
  }
}
