package org.mottle.engine.water;

import org.mottle.engine.check.Check;

/**
 * How much water is wanted where, and how it is given. {@link #defaults()} and the {@code with}
 * methods build one. The defaults are proposals of this project (common practice, no source).
 *
 * @param targetShare where in the band dry ground is to be brought: 0 its lower limit, 1 its upper
 * @param efficiency share of the water given that reaches the roots' depth, above 0 to 1
 * @param capMm most water in one pass, mm
 * @param flowLMin flow of the hose as measured with a bucket, L/min; NaN when not measured
 * @param rootMm depth of the roots where a green's own is not recorded, mm; NaN when not known
 * @param outlook weather the water has to last through
 */
public record WateringSettings(
    double targetShare,
    double efficiency,
    double capMm,
    double flowLMin,
    double rootMm,
    Outlook outlook) {

  /**
   * Weather from the readings to the next watering.
   *
   * @param turfMm what the turf draws: crop coefficient times reference evapotranspiration, mm
   * @param rainMm rain that reaches the roots, mm
   */
  public record Outlook(double turfMm, double rainMm) {
    /** No more than the readings show is made good. */
    public static final Outlook NONE = new Outlook(0, 0);

    public Outlook {
      Check.within("water drawn by the turf", turfMm, 0, 1000, "mm");
      Check.within("rain", rainMm, 0, 1000, "mm");
    }

    /** What the ground loses on the whole, mm; below 0: what it gains. */
    public double lossMm() {
      return turfMm - rainMm;
    }
  }

  public WateringSettings {
    Check.within("target share", targetShare, 0, 1, "");
    Check.above("efficiency", efficiency, 0, "");
    Check.within("efficiency", efficiency, 0, 1, "");
    Check.above("most water in one pass", capMm, 0, "mm");
    if (!Double.isNaN(flowLMin)) {
      Check.above("flow", flowLMin, 0, "L/min");
    }
    if (!Double.isNaN(rootMm)) {
      Check.above("root depth", rootMm, 0, "mm");
    }
  }

  public static WateringSettings defaults() {
    return new WateringSettings(1.0 / 3, 0.9, 6, Double.NaN, Double.NaN, Outlook.NONE);
  }

  public WateringSettings withFlow(double litresPerMinute) {
    return new WateringSettings(targetShare, efficiency, capMm, litresPerMinute, rootMm, outlook);
  }

  public WateringSettings withOutlook(Outlook newOutlook) {
    return new WateringSettings(targetShare, efficiency, capMm, flowLMin, rootMm, newOutlook);
  }

  /** Minutes of the hose; NaN without a measured flow. */
  public double minutes(double litres) {
    return litres / flowLMin;
  }
}
