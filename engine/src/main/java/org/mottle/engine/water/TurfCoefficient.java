package org.mottle.engine.water;

import org.mottle.engine.check.Check;

/**
 * Crop coefficients of turf: ETc = Kc · ET0, ET0 the reference evapotranspiration of FAO-56, mm.
 * The tabled values are those of FAO Irrigation and Drainage Paper 56 (Allen et al. 1998): Kc of
 * table 12, p of table 22. The usual values are proposals of this project for closely mown greens
 * the season through; published monthly values of turf range from 0.05 to 1.05 (cool season) and
 * from 0.28 to 0.99 (warm season; Romero &amp; Dukes 2016), so a value of the site's own is better.
 */
public enum TurfCoefficient {
  COOL_SEASON("cool season", new Tabled(0.90, 0.95, 0.95, 0.40), 0.90),
  WARM_SEASON("warm season", new Tabled(0.80, 0.85, 0.85, 0.50), 0.75);

  /**
   * What FAO-56 has for a turf.
   *
   * @param initialKc Kc of the initial stage
   * @param midKc Kc of the mid season
   * @param endKc Kc of the late season
   * @param depletionShare p, share of the available water that is drawn without stress at 5 mm/d
   */
  public record Tabled(double initialKc, double midKc, double endKc, double depletionShare) {}

  private final String label;
  private final Tabled tabled;
  private final double usualKc;

  TurfCoefficient(String label, Tabled tabled, double usualKc) {
    this.label = label;
    this.tabled = tabled;
    this.usualKc = usualKc;
  }

  public String label() {
    return label;
  }

  /** The published values. */
  public Tabled tabled() {
    return tabled;
  }

  /** Kc that is taken where the site gives none: a proposal of this project, not published. */
  public double usualKc() {
    return usualKc;
  }

  /** ETc of this turf with {@link #usualKc}, in the unit of {@code et0Mm}. */
  public double etcMm(double et0Mm) {
    return etcMm(usualKc, et0Mm);
  }

  /** ETc with a coefficient of the site's own, in the unit of {@code et0Mm}. */
  public static double etcMm(double kc, double et0Mm) {
    return Check.within("crop coefficient", kc, 0, 2, "")
        * Check.atLeast("reference evapotranspiration", et0Mm, 0, "mm");
  }
}
