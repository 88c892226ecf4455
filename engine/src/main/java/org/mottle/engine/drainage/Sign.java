package org.mottle.engine.drainage;

/**
 * What can be seen of a wet place that tells one reason from another. Signs of one family say
 * partly the same, and are not counted as if they were independent.
 */
public enum Sign {
  WET_AFTER_RAIN(
      Family.TIME,
      "wet in the days after soaking rain",
      "not wet in the days after soaking rain",
      "a survey 24 to 48 h after 10 mm of rain or more"),
  WET_LATER(
      Family.TIME,
      "still wet 2 to 4 days after the water",
      "no longer wet 2 to 4 days after the water",
      "a survey 2 to 4 days later, without water between"),
  WET_IN_HEAT(Family.TIME, "wet in heat", "not wet in heat", "a survey in hot, dry days"),
  WET_ALWAYS(
      Family.TIME,
      "wet in every survey, whatever the water before",
      "not wet in every survey",
      "surveys after rain, after irrigation and in dry days"),
  ONLY_IRRIGATED(
      Family.TIME,
      "wet after irrigation but not after rain",
      "not wet after irrigation alone",
      "a survey after rain and one after irrigation"),
  GAP_GROWS(
      Family.DRYING,
      "the gap to the rest of the green grows while it dries",
      "the gap to the rest of the green does not grow while it dries",
      "two surveys of the same stations, some days apart, without water between"),
  DRIES_SLOWLY(
      Family.DRYING,
      "it dries slower than 0.6 of what the turf draws",
      "it does not dry slower than 0.6 of what the turf draws",
      "two surveys of the same stations, some days apart, without water between"),
  DRIES_WELL(
      Family.DRYING,
      "it dries at 0.8 of what the turf draws, or faster",
      "it dries slower than 0.8 of what the turf draws",
      "two surveys of the same stations, some days apart, without water between"),
  IN_HOLLOW(
      Family.FORM,
      "it lies in a closed hollow",
      "it lies in no closed hollow",
      "levels to 10 mm or better"),
  WATER_GATHERS(
      Family.FORM,
      "it lies where surface water gathers",
      "it does not lie where surface water gathers",
      "levels of the green and its surrounds"),
  UPHILL_EDGE(
      Family.SETTING,
      "it lies at the uphill edge of the green",
      "it does not lie at the uphill edge of the green",
      "levels of the green"),
  SURROUNDS_DRAIN_IN(
      Family.SETTING,
      "the surrounds drain towards it",
      "the surrounds do not drain towards it",
      "levels of 30 m of surrounds"),
  LOW_END(
      Family.SETTING,
      "it lies at the low end of the green",
      "it does not lie at the low end of the green",
      "levels of the green"),
  ALONG_DRAIN(
      Family.PIPES,
      "it lies along a drain or at its outlet end",
      "it lies along no drain",
      "the drains as built"),
  NEAR_HEAD(
      Family.PIPES,
      "it lies within 3 m of a head or a pressure pipe",
      "no head or pressure pipe is within 3 m",
      "heads and pipes as built"),
  TOP_WETTER(
      Family.PROFILE,
      "the top is wetter than what is below",
      "the top is not wetter than what is below",
      "readings with short and long rods at the same stations"),
  DEEPER_WETTER(
      Family.PROFILE,
      "it is wetter below than at the top",
      "it is not wetter below than at the top",
      "readings with short and long rods at the same stations"),
  SLOW_INFILTRATION(
      Family.PROFILE,
      "water goes in slowly",
      "water goes in as fast as beside it",
      "infiltration with a ring, inside and beside the place"),
  DIFFUSE(
      Family.OUTLINE, "it has no clear edge", "it has a clear edge", "more stations at its edge"),
  SHADED(
      Family.LIGHT,
      "it is shaded",
      "it is not shaded",
      "a note of shade by the hour, or light measured");

  /** Signs that say partly the same. */
  public enum Family {
    TIME,
    DRYING,
    FORM,
    SETTING,
    PIPES,
    PROFILE,
    OUTLINE,
    LIGHT
  }

  private final Family family;
  private final String statement;
  private final String otherwise;
  private final String wants;

  Sign(Family family, String statement, String otherwise, String wants) {
    this.family = family;
    this.statement = statement;
    this.otherwise = otherwise;
    this.wants = wants;
  }

  public Family family() {
    return family;
  }

  /** What it says when it holds. */
  public String statement() {
    return statement;
  }

  /** What is so when it does not hold. */
  public String otherwise() {
    return otherwise;
  }

  /** What would have to be known for it. */
  public String wants() {
    return wants;
  }
}
