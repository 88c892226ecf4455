package org.mottle.engine.contour;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.Raster;

/**
 * Tiles an outline by the value of one surface: a {@link Tiling} of one layer, whose tiles are the
 * bands between its limits.
 *
 * <p>The surface is {@link LinearSurface}. Ground exactly at a limit belongs to the band above it,
 * at the last of several limits to the band below it: with two limits low and high, "dry" is v &lt;
 * low, "in band" low &le; v &le; high, "wet" v &gt; high. Limits beyond the data draw nothing.
 */
public final class Bands {
  private Bands() {}

  /**
   * The bands of an outline.
   *
   * @param outline valid polygon or multipolygon, holes allowed, m
   * @param surface values at cell centres; where it has none, or does not reach, the ground becomes
   *     the band {@link Band#NO_VALUE}
   * @param limits ascending; none gives one band
   * @return the bands that exist, by ascending index
   */
  public static List<Band> tile(Geometry outline, Raster surface, double[] limits) {
    return tile(Contours.of(outline, surface), limits);
  }

  static List<Band> tile(Contours contours, double[] limits) {
    return new Tiling(contours, List.<Level[]>of(Level.ofLimits(limits)))
        .by(passed -> passed[0], 0);
  }
}
