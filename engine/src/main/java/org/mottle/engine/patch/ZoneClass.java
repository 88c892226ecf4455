package org.mottle.engine.patch;

import org.mottle.engine.survey.TargetBand;

/** Where moisture lies against a target band; its limits belong to the band. */
public enum ZoneClass {
  DRY("dry", 1),
  IN_BAND("in band", 2),
  WET("wet", 3),
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

  /** As it stands in rasters and tables: 1 dry, 2 in band, 3 wet, 0 no value. */
  public int number() {
    return number;
  }

  /** Class of a value; the limits belong to the band. */
  public static ZoneClass of(TargetBand band, double pct) {
    if (Double.isNaN(pct)) {
      return NO_VALUE;
    }
    return pct < band.lowPct() ? DRY : pct > band.highPct() ? WET : IN_BAND;
  }
}
