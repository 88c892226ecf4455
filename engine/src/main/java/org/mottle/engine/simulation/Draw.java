package org.mottle.engine.simulation;

import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;

/**
 * One draw of the parameters, and the observations as they are under it.
 *
 * @param model the variogram of what is mapped, bounded, its nugget 0
 * @param observations with their measurement variances, errors of position and errors in common
 */
public record Draw(NestedModel model, Observations observations) {

  public Draw {
    if (model.nugget() != 0) {
      throw new IllegalArgumentException(
          "a field has no nugget, was "
              + model.nugget()
              + " value²; give it to the observations as measurement variance");
    }
    if (!model.bounded()) {
      throw new IllegalArgumentException(
          "a field needs a variogram that levels off, was " + model + "; use a bounded model");
    }
  }
}
