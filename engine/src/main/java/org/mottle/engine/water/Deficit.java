package org.mottle.engine.water;

import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;

/**
 * Depth of water that brings ground to its target, mm. With moisture v and field capacity FC in %
 * by volume and root depth z in mm:
 *
 * <pre>target   the band's lower limit + share · its width, at most FC
 * wanted   (target - v) / 100 · z + what turf draws and rain does not bring until then
 * room     (FC - v) / 100 · z
 * depth    wanted, at least 0, at most room
 * pass     mean depth of the ground that is watered, at most the most of one pass</pre>
 *
 * 1 % by volume over 100 mm is 1 mm, and 1 mm on 1 m² is 1 L. Immutable.
 *
 * @param targetPct % by volume
 * @param rootMm depth of the roots, mm
 * @param fieldCapacityPct % by volume; NaN when not known: no room is kept
 * @param lossMm what the ground loses until the water is wanted again, mm
 * @param capMm most water in one pass, mm
 */
public record Deficit(
    double targetPct, double rootMm, double fieldCapacityPct, double lossMm, double capMm) {

  /** Of a green whose root depth is known. */
  public static Deficit of(RootZone soil, double rootMm, TargetBand band, WateringSettings s) {
    double fc = soil.fieldCapacityPct();
    double target = band.lowPct() + s.targetShare() * (band.highPct() - band.lowPct());
    return new Deficit(
        Double.isNaN(fc) ? target : Math.min(fc, target),
        rootMm,
        fc,
        s.outlook().lossMm(),
        s.capMm());
  }

  /** Depth at a moisture, passes not counted, mm. */
  public double depthMm(double pct) {
    double wanted = Math.max(0, (targetPct - pct) / 100 * rootMm + lossMm);
    return Double.isNaN(fieldCapacityPct)
        ? wanted
        : Math.min(wanted, Math.max(0, (fieldCapacityPct - pct) / 100 * rootMm));
  }

  /** What one pass gives of a mean depth, mm. */
  public double passMm(double meanDepthMm) {
    return Math.min(capMm, meanDepthMm);
  }
}
