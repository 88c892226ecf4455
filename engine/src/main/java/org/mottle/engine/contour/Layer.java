package org.mottle.engine.contour;

import org.mottle.engine.grid.Raster;

/**
 * One of the surfaces a {@link Tiling} is cut by: values at cell centres and the limits to cut at.
 * Ground has an index in every layer: how many of the limits it has passed. Immutable.
 */
public final class Layer {
  private final Raster raster;
  private final Level[] levels;

  private Layer(Raster raster, Level[] levels) {
    this.raster = raster;
    this.levels = levels;
  }

  /**
   * Ground exactly at a limit has passed it: index k where limit[k - 1] &le; v &lt; limit[k].
   *
   * @param limits ascending; may be none
   */
  public static Layer atLeast(Raster raster, double... limits) {
    return new Layer(raster, Level.ascending(limits, true));
  }

  /**
   * Ground exactly at a limit has not passed it: index k where limit[k - 1] &lt; v &le; limit[k].
   *
   * @param limits ascending; may be none
   */
  public static Layer above(Raster raster, double... limits) {
    return new Layer(raster, Level.ascending(limits, false));
  }

  Raster raster() {
    return raster;
  }

  Level[] levels() {
    return levels;
  }
}
