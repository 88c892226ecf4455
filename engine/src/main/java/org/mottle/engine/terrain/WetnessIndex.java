package org.mottle.engine.terrain;

import org.mottle.engine.check.Check;
import org.mottle.engine.grid.Raster;

/**
 * Topographic wetness index ln(a / tan beta) of Beven & Kirkby (1979, Hydrological Sciences
 * Bulletin 24): a is the contributing area for each metre of contour, m. It says where the surface
 * gathers water, not how wet the root zone is: drains, thatch and mixes are not in it.
 */
public final class WetnessIndex {
  /** On flatter ground the index would follow the noise of the heights. */
  public static final double LEAST_SLOPE = 0.001;

  private WetnessIndex() {}

  /**
   * @param specificM contributing area for each metre of contour, m
   * @param tanBeta slope, rise over run; less than {@link #LEAST_SLOPE} counts as that
   */
  public static double of(double specificM, double tanBeta) {
    Check.above("specificM", specificM, 0, "m");
    Check.atLeast("tanBeta", tanBeta, 0, "");
    return Math.log(specificM / Math.max(LEAST_SLOPE, tanBeta));
  }

  /** Of every cell; NaN where area or slope is not known. */
  public static Raster of(ContributingArea area, GroundSlope slope) {
    if (!area.grid().equals(slope.grid())) {
      throw new IllegalArgumentException(
          "area and slope must lie on one grid, were " + area.grid() + " and " + slope.grid());
    }
    double[] index = new double[area.grid().size()];
    for (int i = 0; i < index.length; i++) {
      double a = area.specificM(i);
      double tanBeta = slope.ratio(i);
      boolean known = a > 0 && tanBeta >= 0;
      index[i] = known ? Math.log(a / Math.max(LEAST_SLOPE, tanBeta)) : Double.NaN;
    }
    return new Raster(area.grid(), index);
  }
}
