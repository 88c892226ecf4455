package org.mottle.export.schema;

import java.util.Arrays;

/** Fields that several layers share. */
final class Fields {
  static final Field GREEN_ID = Field.text("green_id", 64, "green, as the site numbers it");
  static final Field SURV_ID = Field.text("surv_id", 64, "survey, as the site names it");
  static final Field PLAN_ID = Field.text("plan_id", 64, "plan, unique in the green");
  static final Field RUN_ID =
      Field.text("run_id", 64, "run that made the row; its record is in prov");
  static final Field CRS_NOTE =
      Field.text("crs_note", 80, "CRS in which areas, lengths, x and y were measured");
  static final Field METHOD =
      Field.text("method", 32, "how the surface was made: kriging, inverse distance or none");
  static final Field PURPOSE = Field.text("purpose", 64, "what the band is for");
  static final Field LO_PCT = moisture("lo_pct", "lower limit of the band");
  static final Field HI_PCT = moisture("hi_pct", "upper limit of the band");
  static final Field CLS =
      Field.text(
          "cls",
          16,
          "dry or wet (probability 0.8 or more), probably dry or probably wet (0.5 or more), in"
              + " band, cannot tell, no value; by value alone on a map without probabilities");
  static final Field CLS_NO =
      Field.whole(
          "cls_no",
          "",
          "class: 1 dry, 2 probably dry, 3 in band, 4 probably wet, 5 wet, 6 cannot tell, 0 no value");
  static final Field AREA_M2 = Field.real("area_m2", 4, "m²", "area");
  static final Field VWC_MEAN = moisture("vwc_mean", "mean moisture of the area");
  static final Field VWC_SD = moisture("vwc_sd", "standard deviation of the error of that mean");
  static final Field STANDING =
      Field.text(
          "standing",
          16,
          "what the map is good for: patches, probabilities (no outlines), indicative or none");
  static final Field MAPBL =
      Field.whole("mapbl", "", "1 when the survey could outline it, 0 when it could not");
  static final Field P_EXIST =
      share("p_exist", "probability that such a place of 1 m² or more is there");
  static final Field AREA_EXP =
      Field.real("area_exp", 3, "m²", "expected area of such ground there");

  private Fields() {}

  static Field moisture(String name, String meaning) {
    return Field.real(name, 3, "% by volume", meaning);
  }

  /** A probability or a share, 0 to 1. */
  static Field share(String name, String meaning) {
    return Field.real(name, 4, "", meaning);
  }

  static Field area(String name, String meaning) {
    return Field.real(name, 3, "m²", meaning);
  }

  static Field variance(String name, String meaning) {
    return Field.real(name, 6, "%²", meaning);
  }

  static Layer layer(String name, String meaning, GeometryKind kind, Field... fields) {
    return new Layer(name, meaning, kind, Arrays.asList(fields));
  }
}
