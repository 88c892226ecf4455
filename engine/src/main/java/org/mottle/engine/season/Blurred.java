package org.mottle.engine.season;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.mottle.engine.position.BlurredModel;
import org.mottle.engine.variogram.VariogramModel;

/**
 * A correlation seen through several deviations of position, to the centimetre so that stations,
 * surveys and greens share their tables. Shared by threads.
 */
final class Blurred {
  private static final double PER_M = 100;

  private final VariogramModel unit;
  private final Map<Long, BlurredModel> byCentimetre = new ConcurrentHashMap<>();

  Blurred(VariogramModel unit) {
    this.unit = unit;
  }

  VariogramModel unit() {
    return unit;
  }

  /**
   * @param variance of the separation per axis, m²
   */
  BlurredModel at(double variance) {
    return byCentimetre.computeIfAbsent(
        Math.round(PER_M * Math.sqrt(variance)), cm -> BlurredModel.of(unit, cm / PER_M));
  }
}
