package org.mottle.engine.patch;

import org.mottle.engine.survey.TargetBand;

/**
 * Where moisture lies against a target band. A map without probabilities knows dry, in band and wet
 * by the value alone, the limits belonging to the band; {@link ClassRule} says what the others are.
 */
public enum ZoneClass {
  DRY("dry", 1),
  PROBABLY_DRY("probably dry", 2),
  IN_BAND("in band", 3),
  PROBABLY_WET("probably wet", 4),
  WET("wet", 5),
  /** No class is likely, or the map knows no more there than the green's mean. */
  CANNOT_TELL("cannot tell", 6),
  /** Ground of a green for which the map has no value. */
  NO_VALUE("no value", 0);

  private final String code;
  private final int number;

  ZoneClass(String code, int number) {
    this.code = code;
    this.number = number;
  }

  /** As it stands in files. */
  public String code() {
    return code;
  }

  /**
   * As it stands in rasters and tables: 1 dry, 2 probably dry, 3 in band, 4 probably wet, 5 wet, 6
   * cannot tell, 0 no value.
   */
  public int number() {
    return number;
  }

  /** Class of a value known without error; the limits belong to the band. */
  public static ZoneClass of(TargetBand band, double pct) {
    if (Double.isNaN(pct)) {
      return NO_VALUE;
    }
    return pct < band.lowPct() ? DRY : pct > band.highPct() ? WET : IN_BAND;
  }
}
