package org.mottle.engine.moisture;

import org.mottle.engine.check.Check;

/**
 * What a probe shows whose rods are in the ground by the share f of their length only: travel time
 * along the rods adds up, √ε shown = f √ε + (1 - f) · 1, with moisture by Topp, Davis & Annan
 * (1980). A pin half out reads about a quarter too low (common practice, no source).
 */
public final class InsertionDepth {
  private static final PermittivityCurve CURVE = new PermittivityCurve.Topp();

  private InsertionDepth() {}

  /**
   * @param pct moisture of the soil, % by volume
   * @param share f, 0 to 1
   * @return what is shown, % by volume
   */
  public static double shown(double pct, double share) {
    Check.within("share of the rods in the ground", share, 0, 1, "");
    double root = share * Math.sqrt(CURVE.permittivity(pct)) + 1 - share;
    return CURVE.pct(root * root);
  }

  /**
   * The share that turns one moisture into another: (√ε read - 1) / (√ε expected - 1); above 1
   * where more is read than expected.
   */
  public static double impliedShare(double readPct, double expectedPct) {
    return (Math.sqrt(CURVE.permittivity(readPct)) - 1)
        / (Math.sqrt(CURVE.permittivity(expectedPct)) - 1);
  }
}
