package org.mottle.export.read;

import java.util.List;
import java.util.stream.Stream;

/**
 * The names under which the readers look for columns; a settings file may map each to a heading.
 * Where a list holds several names for one thing the first that a file has counts.
 */
public final class FieldNames {
  static final List<String> X = List.of("x", "easting");
  static final List<String> Y = List.of("y", "northing");
  static final List<String> LON = List.of("lon", "longitude", "long");
  static final List<String> LAT = List.of("lat", "latitude");

  /** Stands in the files of the greens and of the readings. */
  static final String SHARED = "green_id";

  static final List<String> READING =
      List.of(
          "green_id",
          "surv_id",
          "st_id",
          "seq",
          "rep",
          "t_local",
          "vwc_raw",
          "perm_raw",
          "vwc_adj",
          "adj_note",
          "rod_mm",
          "probe",
          "oper",
          "calib",
          "soil_c",
          "ec_dsm",
          "z_m",
          "pos_src",
          "pos_sd_m",
          "role",
          "qa_code",
          "qa_stat",
          "used");

  static final List<String> GREEN =
      List.of(
          "green_id",
          "name",
          "build",
          "grass",
          "root_mm",
          "fc_pct",
          "wp_pct",
          "poro_pct",
          "bnd_src",
          "acc_m");

  static final List<String> PLAN = List.of("plan_id", "insertions");

  private FieldNames() {}

  /** Every name that can be mapped, each once, those of readings first. */
  public static List<String> all() {
    return Stream.of(
            READING,
            GREEN,
            ConditionsReader.NAMES,
            MarksReader.NAMES,
            PLAN,
            CoresReader.NAMES,
            X,
            Y,
            LON,
            LAT)
        .flatMap(List::stream)
        .distinct()
        .toList();
  }
}
