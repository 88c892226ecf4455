package org.mottle.export.schema;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The layers and tables that a map is delivered in. Moisture is per cent by volume, its standard
 * deviation too; lengths m, areas m², both in the working CRS whatever CRS the file has.
 */
public final class Layers {

  private static final Field GREEN_ID = Field.text("green_id", 64, "green, as the site numbers it");
  private static final Field SURV_ID = Field.text("surv_id", 64, "survey, as the site names it");
  private static final Field RUN_ID =
      Field.text("run_id", 64, "run that made the row; its record is in prov");
  private static final Field CRS_NOTE =
      Field.text("crs_note", 80, "CRS in which areas, lengths, x and y were measured");
  private static final Field METHOD =
      Field.text("method", 32, "how the surface was made: kriging, inverse distance or none");
  private static final Field PURPOSE = Field.text("purpose", 64, "what the band is for");
  private static final Field LO_PCT = moisture("lo_pct", "lower limit of the band");
  private static final Field HI_PCT = moisture("hi_pct", "upper limit of the band");
  private static final Field CLS =
      Field.text("cls", 16, "dry, probably dry, in band, probably wet, wet or cannot tell");
  private static final Field CLS_NO =
      Field.whole(
          "cls_no",
          "",
          "class: 1 dry, 2 probably dry, 3 in band, 4 probably wet, 5 wet, 6 cannot tell");
  private static final Field AREA_M2 = Field.real("area_m2", 4, "m²", "area");
  private static final Field VWC_MEAN = moisture("vwc_mean", "mean moisture of the area");
  private static final Field VWC_SD =
      moisture("vwc_sd", "standard deviation of the error of that mean");

  /** Outlines of the greens. */
  public static final Layer GREEN =
      layer(
          "green",
          "outlines of the greens",
          GeometryKind.AREA,
          GREEN_ID,
          RUN_ID,
          Field.text("name", 120, "what people call the green"),
          AREA_M2,
          Field.real("perim_m", 3, "m", "length of the outline, holes included"),
          Field.text("build", 64, "build of the root zone"),
          Field.text("grass", 64, "species or mix"),
          Field.real("root_mm", 1, "mm", "depth of the roots"),
          moisture("fc_pct", "field capacity: moisture 12 to 24 h after soaking rain"),
          moisture("wp_pct", "wilt onset: moisture at the first signs of wilt"),
          moisture("poro_pct", "total pore space"),
          Field.text("bnd_src", 64, "where the outline comes from"),
          Field.real("acc_m", 3, "m", "standard error of a boundary point"),
          CRS_NOTE);

  /** Readings as taken and as used. */
  public static final Layer READING =
      layer(
          "reading",
          "insertions of the probe, used or not",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("st_id", 64, "station"),
          Field.whole("seq", "", "order in which the readings were taken"),
          Field.whole("rep", "", "insertion at the station, from 1"),
          Field.text("t_local", 32, "local time, ISO 8601 with offset"),
          moisture("vwc_raw", "moisture as read"),
          moisture("vwc_adj", "moisture after the adjustments of adj_note; the value mapped"),
          Field.text("adj_note", 254, "adjustments, in order"),
          Field.real("rod_mm", 1, "mm", "length of the rods"),
          Field.text("probe", 64, "probe"),
          Field.text("oper", 32, "operator, initials at most"),
          Field.text("calib", 64, "calibration curve"),
          Field.real("soil_c", 2, "°C", "soil temperature"),
          Field.real("ec_dsm", 3, "dS/m", "bulk electrical conductivity"),
          Field.real("x", 3, "m", "east"),
          Field.real("y", 3, "m", "north"),
          Field.real("z_m", 3, "m", "height"),
          Field.text("pos_src", 64, "where the position comes from"),
          Field.real("pos_sd_m", 3, "m", "standard error of the position per axis"),
          Field.real("edge_m", 3, "m", "distance to the outline; negative outside the green"),
          Field.text("role", 16, "why the station is there: plan, pair, poi, ctrl or infill"),
          Field.text("qa_code", 64, "findings of the review"),
          Field.text("qa_stat", 16, "ok, warn or reject"),
          Field.whole("used", "", "1 when the reading went into the map, else 0"),
          CRS_NOTE);

  /** Classes that tile each green. */
  public static final Layer ZONE =
      layer(
          "zone",
          "classes of moisture; together they tile the green without gap or overlap",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          PURPOSE,
          LO_PCT,
          HI_PCT,
          CLS,
          CLS_NO,
          AREA_M2,
          VWC_MEAN,
          VWC_SD,
          METHOD,
          CRS_NOTE);

  /** Connected dry and wet places. */
  public static final Layer PATCH =
      layer(
          "patch",
          "connected parts of the dry and the wet zone",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("patch_id", 64, "patch, unique in the green and survey"),
          Field.text("kind", 16, "dry or wet"),
          PURPOSE,
          LO_PCT,
          HI_PCT,
          AREA_M2,
          Field.real("width_m", 3, "m", "diameter of the largest circle inside"),
          VWC_MEAN,
          VWC_SD,
          Field.whole("n_st", "", "readings used inside the patch"),
          METHOD,
          CRS_NOTE);

  /** Lines of equal moisture. */
  public static final Layer ISO =
      layer(
          "iso",
          "lines of equal mean moisture",
          GeometryKind.LINE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          moisture("level_pct", "moisture along the line"),
          Field.real("length_m", 3, "m", "length"),
          CRS_NOTE);

  /** Cells of the surface, clipped to the green. */
  public static final Layer CELL =
      layer(
          "cell",
          "cells of the surface, clipped to the green",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.whole("row_no", "", "row, 0 is the northern row"),
          Field.whole("col_no", "", "column, 0 is the western column"),
          AREA_M2,
          moisture("vwc", "mean moisture"),
          moisture("sd", "standard deviation of its error"),
          CLS,
          CLS_NO,
          CRS_NOTE);

  /** What was surveyed, and what came of it. */
  public static final Layer SURVEY =
      layer(
          "survey",
          "one row a green and survey: what was read, how it was mapped or why it was not",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("t_start", 32, "first reading, ISO 8601 with offset"),
          Field.text("t_end", 32, "last reading, ISO 8601 with offset"),
          Field.text("oper", 64, "operators, initials at most"),
          Field.text("probe", 64, "probes"),
          Field.text("calib", 64, "calibration curves"),
          Field.real("rod_mm", 1, "mm", "length of the rods"),
          Field.whole("n_read", "", "readings"),
          Field.whole("n_used", "", "readings that went into the map"),
          PURPOSE,
          LO_PCT,
          HI_PCT,
          METHOD,
          Field.real("cell_m", 3, "m", "side of a cell"),
          Field.text(
              "reason", 254, "why this method, or why there is no map, and what to know of it"),
          Field.text("remedy", 254, "what would change that"));

  /** Evenness of the moisture. */
  public static final Layer EVEN =
      layer(
          "even",
          "evenness of the moisture, one row a green and survey; not evenness of irrigation",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.whole("n", "", "readings used"),
          moisture("mean", "mean of the readings"),
          moisture("sd", "standard deviation of the readings"),
          Field.real("cv_pct", 3, "%", "coefficient of variation of the readings"),
          moisture("iqr", "interquartile range of the readings"),
          moisture("area_mean", "mean of the surface over the green"),
          moisture("area_sd", "standard deviation of the error of that mean"),
          moisture("sd_med", "median over the green's cells of the surface's SD"),
          Field.real("lq_moist", 4, "", "mean of the driest quarter of the area over the mean"),
          Field.real("cu_moist", 3, "%", "100 (1 - mean absolute deviation / mean) of the area"),
          Field.real("dry_pct", 3, "%", "share of the area below the band"),
          Field.real("band_pct", 3, "%", "share of the area in the band"),
          Field.real("wet_pct", 3, "%", "share of the area above the band"));

  /** Variograms used. */
  public static final Layer VGM =
      layer(
          "vgm",
          "variograms used, one row a structure",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("pooled_of", 254, "greens whose pairs were pooled; green_id is empty then"),
          Field.whole("n_pairs", "", "pairs of readings behind the fit"),
          Field.real("c0_micro", 6, "%²", "micro-scale nugget, part of the soil"),
          Field.real("s2_err", 6, "%²", "variance of the measurement, not part of the soil"),
          Field.whole("struct_no", "", "structure, from 1; 0 when there is the nugget alone"),
          Field.text("model", 24, "shape of the structure"),
          Field.real("psill", 6, "%²", "partial sill of the structure"),
          Field.real("range_m", 4, "m", "range: the parameter a of the written formula"),
          Field.real("prac_m", 4, "m", "practical range: where 95 % of the partial sill is met"),
          Field.real("kappa", 4, "", "smoothness of a Matérn structure"),
          Field.real("azimuth", 3, "°", "clockwise from grid north, of the longest range"),
          Field.real("ratio", 4, "", "anisotropy: minor over major range"),
          Field.real("sill", 6, "%²", "nugget and all partial sills together"),
          Field.text("fit", 32, "where the parameters come from"),
          Field.real("wsse", 6, "", "weighted sum of squares of the fit"),
          Field.whole("cv_n", "", "readings predicted from the others"),
          moisture("cv_me", "mean error of those predictions"),
          moisture("cv_rmse", "root of their mean squared error"),
          Field.real("cv_msdr", 4, "", "mean squared standardised error; near 1 is right"),
          Field.real("cv_medz2", 4, "", "median squared standardised error; near 0.455 is right"),
          Field.text("note", 254, "what the fit found"));

  /** Record of the run. */
  public static final Layer PROV =
      layer(
          "prov",
          "record of the run: the same inputs, settings and seed give the same bytes",
          GeometryKind.NONE,
          RUN_ID,
          Field.text("engine", 32, "program"),
          Field.text("version", 64, "version of the program"),
          Field.text(
              "utc",
              32,
              "time of the last reading, ISO 8601, UTC: the same for every run of the same data"),
          Field.text("inputs", 254, "input files with size and SHA-256, JSON"),
          Field.text("params", 254, "settings in force, JSON"),
          Field.text("seed", 24, "seed of the random numbers"),
          Field.text("crs_code", 32, "working CRS"),
          Field.text("crs_name", 120, "its name"),
          Field.text("crs_wkt", 254, "its definition"),
          Field.text("credit", 254, "licence and credit of the data"),
          Field.text("disclaim", 254, "what the map is and is not"));

  /** Every layer and table, in the order of delivery. */
  public static final List<Layer> ALL =
      List.of(GREEN, READING, ZONE, PATCH, ISO, CELL, SURVEY, EVEN, VGM, PROV);

  private Layers() {}

  private static Field moisture(String name, String meaning) {
    return Field.real(name, 3, "% by volume", meaning);
  }

  private static Layer layer(String name, String meaning, GeometryKind kind, Field... fields) {
    return new Layer(name, meaning, kind, new ArrayList<>(Arrays.asList(fields)));
  }
}
