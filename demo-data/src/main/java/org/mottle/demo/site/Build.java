package org.mottle.demo.site;

/** How a green is built, with the soil figures that hold for it over the whole invented course. */
public enum Build {
  SAND_OVER_GRAVEL("sand over gravel", 26, 10, 42, 150),
  SAND("sand without gravel", 26, 10, 42, 150),
  PUSH_UP_SOIL("push-up soil", 33, 15, 50, 200);

  private final String label;
  private final int fieldCapacityPct;
  private final int wiltOnsetPct;
  private final int porosityPct;
  private final int dryingLayerMm;

  Build(String label, int fieldCapacityPct, int wiltOnsetPct, int porosityPct, int dryingLayerMm) {
    this.label = label;
    this.fieldCapacityPct = fieldCapacityPct;
    this.wiltOnsetPct = wiltOnsetPct;
    this.porosityPct = porosityPct;
    this.dryingLayerMm = dryingLayerMm;
  }

  public String label() {
    return label;
  }

  /** Moisture 12-24 h after soaking rain, % by volume. */
  public int fieldCapacityPct() {
    return fieldCapacityPct;
  }

  /** Moisture at the first signs of wilt, % by volume. */
  public int wiltOnsetPct() {
    return wiltOnsetPct;
  }

  /** Pore space, and so the most water the ground can hold, % by volume. */
  public int porosityPct() {
    return porosityPct;
  }

  /** Depth that evaporation draws on, mm. */
  public int dryingLayerMm() {
    return dryingLayerMm;
  }

  /** Depth of the roots, mm. */
  public int rootDepthMm() {
    return 120;
  }
}
