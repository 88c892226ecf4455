package org.mottle.engine.irrigation;

import org.mottle.engine.check.Check;

/**
 * What a day's irrigation is to replace: ET0 · Kc - P (FAO-56 crop coefficient).
 *
 * @param et0MmD reference evapotranspiration, mm/d
 * @param kc crop coefficient of the turf
 * @param rainMm effective rain of the day, mm
 */
public record WaterNeed(double et0MmD, double kc, double rainMm) {
  public WaterNeed {
    Check.within("et0", et0MmD, 0, 20, "mm/d");
    Check.within("kc", kc, 0, 2, "");
    Check.within("rain", rainMm, 0, 1000, "mm");
  }

  /** Net depth, mm a day; 0 when rain covers it. */
  public double netMm() {
    return Math.max(0, et0MmD * kc - rainMm);
  }
}
