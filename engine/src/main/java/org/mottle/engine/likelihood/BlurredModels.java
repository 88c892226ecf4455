package org.mottle.engine.likelihood;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.VariogramModel;

/**
 * A model of sill 1 seen through several deviations of position. Each is tabulated once for all
 * samples, which would else be most of the cost. Shared by threads.
 */
final class BlurredModels {
  private final VariogramModel unit;
  private final Map<Double, BlurredModel> bySd = new ConcurrentHashMap<>();

  BlurredModels(VariogramModel unit) {
    this.unit = unit;
  }

  /**
   * @param sdM standard deviation of the separation per axis, m
   */
  BlurredModel at(double sdM) {
    return bySd.computeIfAbsent(sdM, sd -> BlurredModel.of(unit, sd));
  }
}
