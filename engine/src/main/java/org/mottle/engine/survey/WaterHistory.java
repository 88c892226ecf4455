package org.mottle.engine.survey;

/**
 * What a visit can show, by the water before it: after rain the ground shows how it drains, after
 * irrigation how it is watered, after days without either how it dries. Visits of different
 * histories are not compared (common practice, no source).
 */
public enum WaterHistory {
  /** Soaking rain was the last water, no more than {@value #RECENT_H} h before. */
  AFTER_RAIN("after rain"),
  /** Irrigation was the last water, no more than {@value #RECENT_H} h before. */
  AFTER_IRRIGATION("after irrigation"),
  /** Neither was so recent. */
  DRYING("dry days"),
  /** Not recorded, or not whole. */
  UNKNOWN("water not recorded");

  /** Sand has drained and turf has drawn on it: what came earlier is no longer what is seen. */
  private static final double RECENT_H = 60;

  /** Less rain does not reach the depth that is read. */
  private static final double SOAKING_MM = 5;

  private final String label;

  WaterHistory(String label) {
    this.label = label;
  }

  /** In words. */
  public String label() {
    return label;
  }

  /** Of the water on record; irrigation that is not recorded is not taken for none. */
  public static WaterHistory of(Conditions.Water water) {
    boolean irrigated = water.irrigationHours() <= RECENT_H;
    boolean rained = water.rainHours() <= RECENT_H && !(water.rainMm() < SOAKING_MM);
    if (irrigated && (!rained || water.irrigationHours() <= water.rainHours())) {
      return AFTER_IRRIGATION;
    }
    boolean irrigationKnown = !Double.isNaN(water.irrigationHours()) || water.irrigationMm() == 0;
    if (rained && irrigationKnown) {
      return AFTER_RAIN;
    }
    return irrigationKnown && !Double.isNaN(water.rainHours()) ? DRYING : UNKNOWN;
  }
}
