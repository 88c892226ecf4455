package org.mottle.engine.review;

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
    int full) {

  public static final ReviewSettings DEFAULT =
      new ReviewSettings(1, 45, 52, 5, -1.3, 3, 1.2, 1, 6, 0.5, 8, 12, 16);
}
