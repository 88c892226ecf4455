package org.mottle.engine.survey;

/**
 * How a green is built and what its soil holds. Text that is not known is empty, a figure that is
 * not known is NaN.
 *
 * @param build sand over gravel, sand without gravel, push-up soil, ...
 * @param grass species or mix
 * @param rootDepthMm depth of the roots, mm
 * @param fieldCapacityPct moisture 12-24 h after soaking rain, % by volume
 * @param wiltOnsetPct moisture at the first signs of wilt, % by volume
 * @param porosityPct total pore space, % by volume
 */
public record RootZone(
    String build,
    String grass,
    double rootDepthMm,
    double fieldCapacityPct,
    double wiltOnsetPct,
    double porosityPct) {

  /** Nothing recorded. */
  public static final RootZone UNKNOWN =
      new RootZone("", "", Double.NaN, Double.NaN, Double.NaN, Double.NaN);
}
