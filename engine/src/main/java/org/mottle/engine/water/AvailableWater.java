package org.mottle.engine.water;

import org.mottle.engine.check.Check;

/**
 * Water the turf can draw from its root zone, mm, by FAO Irrigation and Drainage Paper 56 (Allen,
 * Pereira, Raes &amp; Smith 1998), equations 82 to 84, in the units of this project (% by volume,
 * mm; the paper has m³/m³ and m, hence its factor 1000):
 *
 * <pre>TAW = (FC - WP) / 100 · z            total available water (eq. 82)
 * p   = p_table + 0.04 (5 - ETc)       depletion without stress (note of table 22), 0.1 to 0.8
 * RAW = p · TAW                        readily available water (eq. 83)
 * Dr  = (FC - v) / 100 · z             depletion at a moisture v, 0 to TAW
 * Ks  = (TAW - Dr) / ((1 - p) TAW)     stress coefficient (eq. 84), 1 where Dr is below RAW</pre>
 *
 * p is of a crop that is to lose no growth; greens are often kept drier on purpose, so it informs
 * and sets no limit.
 *
 * @param fieldCapacityPct FC, % by volume
 * @param wiltingPointPct WP, % by volume
 * @param rootMm z, depth of the roots, mm
 */
public record AvailableWater(double fieldCapacityPct, double wiltingPointPct, double rootMm) {
  /** Crop evapotranspiration for which p is tabled, mm a day. */
  private static final double TABLED_ETC_MM = 5;

  private static final double P_PER_MM = 0.04;
  private static final double LEAST_P = 0.1;
  private static final double MOST_P = 0.8;

  public AvailableWater {
    Check.within("wilting point", wiltingPointPct, 0, 100, "% by volume");
    Check.within("field capacity", fieldCapacityPct, 0, 100, "% by volume");
    Check.above("field capacity", fieldCapacityPct, wiltingPointPct, "% by volume");
    Check.above("root depth", rootMm, 0, "mm");
  }

  /**
   * p: the share of the available water that turf draws before it suffers.
   *
   * @param tabled p at 5 mm a day
   * @param etcMm crop evapotranspiration, mm a day
   */
  public static double depletionShare(double tabled, double etcMm) {
    Check.within("tabled depletion share", tabled, 0, 1, "");
    Check.atLeast("crop evapotranspiration", etcMm, 0, "mm a day");
    return Math.max(LEAST_P, Math.min(MOST_P, tabled + P_PER_MM * (TABLED_ETC_MM - etcMm)));
  }

  /** TAW, mm. */
  public double totalMm() {
    return (fieldCapacityPct - wiltingPointPct) / 100 * rootMm;
  }

  /** RAW, mm, with p of {@link #depletionShare}. */
  public double readilyMm(double depletionShare) {
    return depletionShare * totalMm();
  }

  /** Dr, mm: what is lacking to field capacity; 0 above it, TAW below the wilting point. */
  public double depletionMm(double pct) {
    return Math.max(0, Math.min(totalMm(), (fieldCapacityPct - pct) / 100 * rootMm));
  }

  /**
   * Ks, from 1 (no stress) down to 0 (nothing left to draw).
   *
   * @param depletionMm Dr, mm
   * @param depletionShare p, from 0 to below 1
   */
  public double stress(double depletionMm, double depletionShare) {
    Check.atLeast("depletion", depletionMm, 0, "mm");
    Check.within("depletion share", depletionShare, 0, Math.nextDown(1.0), "");
    double total = totalMm();
    return Math.max(0, Math.min(1, (total - depletionMm) / ((1 - depletionShare) * total)));
  }
}
