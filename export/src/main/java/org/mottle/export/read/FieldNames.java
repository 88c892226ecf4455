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

  static final List<String> PLAN =
      List.of("plan_id", "green_id", "st_id", "seq", "role", "insertions");

  static final List<String> CAN =
      List.of("green_id", "can_id", "date", "ml", "mouth_cm2", "min_run", "mm_h", "wind_ms");

  static final List<String> HEAD =
      List.of(
          "head_id", "green_id", "stn", "rad_m", "arc_from", "arc_to", "rate_mmh", "kpa", "state");

  static final List<String> MARK = List.of("mark_id", "head_id", "green_id");

  static final List<String> TIE =
      List.of("mark_id", "head_id", "surv_id", "green_id", "oper", "t_local", "pos_src");

  static final List<String> CONDITIONS =
      List.of(
          "surv_id",
          "green_id",
          "t_start",
          "t_end",
          "oper",
          "probe",
          "rod_mm",
          "calib",
          "rain_h",
          "rain_mm",
          "irr_h",
          "irr_mm",
          "et0_mm_d",
          "dew",
          "soil_c",
          "ec_dsm",
          "maint",
          "pos_src",
          "shift_sd_m",
          "plan_id",
          "note");

  private static final List<List<String>> TABLES =
      List.of(READING, GREEN, CONDITIONS, PLAN, MARK, TIE, CAN, HEAD, CoresReader.NAMES);

  private FieldNames() {}

  /** Every name that can be mapped, each once, those of readings first. */
  public static List<String> all() {
    return Stream.concat(TABLES.stream(), Stream.of(X, Y, LON, LAT))
        .flatMap(List::stream)
        .distinct()
        .toList();
  }

  /** Whether several tables have the name, so that a mapping of it may be meant for another. */
  static boolean isShared(String name) {
    return TABLES.stream().filter(t -> t.contains(name)).count() > 1;
  }

  /** Those of a table's names that no other table has. */
  static List<String> ownOf(List<String> table) {
    return table.stream().filter(n -> !isShared(n)).toList();
  }
}
