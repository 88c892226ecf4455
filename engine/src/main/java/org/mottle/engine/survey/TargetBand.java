package org.mottle.engine.survey;

/**
 * The moisture the site's agronomist wants on a green for a purpose: dry below {@code lowPct}, wet
 * above {@code highPct}, in band between them (limits included).
 *
 * @param purpose what for, in the site's words
 * @param lowPct lower limit, % by volume
 * @param highPct upper limit, % by volume
 * @param by who set it; empty when not recorded
 * @param on when, ISO 8601 date; empty when not recorded
 */
public record TargetBand(String purpose, double lowPct, double highPct, String by, String on) {
  public TargetBand {
    if (!(lowPct < highPct) || Double.isInfinite(lowPct) || Double.isInfinite(highPct)) {
      throw new IllegalArgumentException(
          "the lower limit of a band must be below its upper limit, were "
              + lowPct
              + " and "
              + highPct);
    }
  }

  /** Limits of which nothing else is recorded. */
  public static TargetBand of(double lowPct, double highPct) {
    return new TargetBand("", lowPct, highPct, "", "");
  }
}
