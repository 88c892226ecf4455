package org.mottle.engine.season;

import org.locationtech.jts.geom.Geometry;

/**
 * Connected ground that is wet, or dry, in more than half of the surveys after such water.
 *
 * @param outline polygon, m
 * @param areaM2 its area
 * @param share weighted share of surveys in which it was so, mean over its area
 * @param sureM2 area of the part where the lower end of the share's interval lies above one half
 */
public record PersistentPlace(Geometry outline, double areaM2, double share, double sureM2) {

  /** Whether the surveys suffice to call some of it persistent, a square metre at least. */
  public boolean sure() {
    return sureM2 >= 1;
  }
}
