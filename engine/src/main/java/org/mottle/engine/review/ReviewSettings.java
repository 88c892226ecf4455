package org.mottle.engine.review;

import java.util.Locale;
import org.mottle.engine.survey.RootZone;

/**
 * Limits of the review (proposals of this project for want of published ones; common practice, no
 * source).
 *
 * @param airPct a probe in air reads about this or less, % by volume
 * @param sandPoresPct pore space where none is recorded and the build is sand, % by volume
 * @param soilPoresPct pore space where none is recorded otherwise, % by volume
 * @param overPoresPct allowance above the pore space, % by volume
 * @param lowZ standardised residual below which a reading is low
 * @param highZ standardised residual above which a reading is high
 * @param replicateSdPct standard deviation of insertions at one station where fewer than ten pairs
 *     tell, % by volume
 * @param rejectHours rain or irrigation nearer than this: not for mapping, h
 * @param warnHours rain or irrigation nearer than this: with care, h
 * @param edgeM nearer to the outline than this is at the edge, m
 * @param fewest stations: fewer are a summary, no map
 * @param indicative stations: fewer make an indicative map
 * @param full stations: fewer keep a visit from the best grade
 * @param unitSaid whether somebody said what unit the readings are in: then nobody is asked
 */
public record ReviewSettings(
    double airPct,
    double sandPoresPct,
    double soilPoresPct,
    double overPoresPct,
    double lowZ,
    double highZ,
    double replicateSdPct,
    double rejectHours,
    double warnHours,
    double edgeM,
    int fewest,
    int indicative,
    int full,
    boolean unitSaid) {

  public static final ReviewSettings DEFAULT =
      new ReviewSettings(1, 45, 52, 5, -1.3, 3, 1.2, 1, 6, 0.5, 8, 12, 16, false);

  public ReviewSettings withUnitSaid(boolean said) {
    return new ReviewSettings(
        airPct,
        sandPoresPct,
        soilPoresPct,
        overPoresPct,
        lowZ,
        highZ,
        replicateSdPct,
        rejectHours,
        warnHours,
        edgeM,
        fewest,
        indicative,
        full,
        said);
  }

  /** Pore space on record, else what is usual for the build, % by volume. */
  public double poresPct(RootZone zone) {
    if (!Double.isNaN(zone.porosityPct())) {
      return zone.porosityPct();
    }
    boolean sand = zone.build().toLowerCase(Locale.ROOT).startsWith("sand");
    return sand ? sandPoresPct : soilPoresPct;
  }
}
