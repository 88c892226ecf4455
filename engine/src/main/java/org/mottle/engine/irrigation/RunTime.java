package org.mottle.engine.irrigation;

import org.mottle.engine.check.Check;

/**
 * By how much a run is lengthened for its unevenness, and how long it then is.
 *
 * @param multiplier 1 / DU_LH, DU_LH = 0.386 + 0.614 DU_LQ; 1 or more
 * @param alternative 1 / (0.4 + 0.6 DU_LQ), the other usual form
 * @param minutes 60 · need · multiplier / rate, min a day; NaN when need or rate is not known
 */
public record RunTime(double multiplier, double alternative, double minutes) {
  static final RunTime UNKNOWN = new RunTime(Double.NaN, Double.NaN, Double.NaN);

  /**
   * @param duLowQuarter 0 to 1
   */
  public static RunTime of(double duLowQuarter) {
    Check.within("duLowQuarter", duLowQuarter, 0, 1, "");
    return new RunTime(
        1 / (0.386 + 0.614 * duLowQuarter), 1 / (0.4 + 0.6 * duLowQuarter), Double.NaN);
  }

  /** For a need at a rate; without minutes when the rate is not above 0. */
  public RunTime with(WaterNeed need, double rateMmH) {
    double wanted = rateMmH > 0 ? 60 * need.netMm() * multiplier / rateMmH : Double.NaN;
    return new RunTime(multiplier, alternative, wanted);
  }
}
