package org.mottle.export.schema;

import static org.mottle.export.schema.Fields.AREA_M2;
import static org.mottle.export.schema.Fields.CLS;
import static org.mottle.export.schema.Fields.CLS_NO;
import static org.mottle.export.schema.Fields.CRS_NOTE;
import static org.mottle.export.schema.Fields.GREEN_ID;
import static org.mottle.export.schema.Fields.HI_PCT;
import static org.mottle.export.schema.Fields.LO_PCT;
import static org.mottle.export.schema.Fields.METHOD;
import static org.mottle.export.schema.Fields.PURPOSE;
import static org.mottle.export.schema.Fields.RUN_ID;
import static org.mottle.export.schema.Fields.SURV_ID;
import static org.mottle.export.schema.Fields.VWC_MEAN;
import static org.mottle.export.schema.Fields.VWC_SD;
import static org.mottle.export.schema.Fields.area;
import static org.mottle.export.schema.Fields.layer;
import static org.mottle.export.schema.Fields.moisture;
import static org.mottle.export.schema.Fields.share;
import static org.mottle.export.schema.Fields.variance;

import java.util.List;
import org.mottle.engine.position.PositionSource;

/**
 * The layers and tables that a map is delivered in. Moisture is per cent by volume, its standard
 * deviation too; lengths m, areas m², both in the working CRS whatever CRS the file has.
 */
public final class Layers {
  private static final Field PATCH_ID =
      Field.text("patch_id", 64, "patch, unique in the green and survey");
  private static final Field KIND = Field.text("kind", 16, "dry or wet");

  private static final Field WATER_L =
      Field.real("water_l", 3, "L", "water of one pass, losses included; of dry ground");
  private static final Field WAT_LO =
      Field.real("wat_lo", 3, "L", "5 % of the realisations want less");
  private static final Field WAT_HI =
      Field.real("wat_hi", 3, "L", "5 % of the realisations want more");
  private static final Field PASSES =
      Field.whole("passes", "", "passes that bring the whole depth");
  private static final Field HOSE_MIN =
      Field.real("hose_min", 3, "min", "one pass by the hose; empty without its flow");

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
          Field.text(
              "pos_src",
              64,
              "where the position comes from; known: "
                  + String.join(", ", PositionSource.allNames())),
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
          share("p_cls", "mean probability that the ground is as its class says"),
          AREA_M2,
          area("area_lo", "ground in the zone that is so: 5 % of the realisations have less"),
          area("area_hi", "ground in the zone that is so: 5 % of the realisations have more"),
          VWC_MEAN,
          VWC_SD,
          METHOD,
          Fields.STANDING,
          CRS_NOTE);

  /** Dry and wet places that can be outlined. */
  public static final Layer PATCH =
      layer(
          "patch",
          "dry and wet places that the survey could outline: drawn area is expected area",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          PATCH_ID,
          KIND,
          PURPOSE,
          LO_PCT,
          HI_PCT,
          share("p_mean", "mean over the patch of the probability that the ground is so"),
          Fields.P_EXIST,
          AREA_M2,
          Fields.AREA_EXP,
          area("area_lo", "5 % of the realisations have less such ground there"),
          area("area_hi", "5 % of the realisations have more such ground there"),
          Field.real("width_m", 3, "m", "diameter of the largest circle inside"),
          VWC_MEAN,
          VWC_SD,
          Field.whole("n_st", "", "stations used inside the patch"),
          Field.real("def_mm", 3, "mm", "mean depth that dry ground lacks to its target"),
          Field.real("def_lo", 3, "mm", "5 % of the realisations lack less"),
          Field.real("def_hi", 3, "mm", "5 % of the realisations lack more"),
          WATER_L,
          WAT_LO,
          WAT_HI,
          PASSES,
          HOSE_MIN,
          Fields.MAPBL,
          METHOD,
          CRS_NOTE);

  /** Where patches surely are. */
  public static final Layer CORE =
      layer(
          "core",
          "cores of the patches: with probability 0.9 all ground in all cores of a kind is so",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          PATCH_ID,
          KIND,
          AREA_M2,
          CRS_NOTE);

  /** Where patches surely end. */
  public static final Layer ENVEL =
      layer(
          "envel",
          "parts round the patches that, with those round spots, hold all such ground with probability 0.9; places under 1 m² left out",
          GeometryKind.AREA,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          PATCH_ID,
          KIND,
          AREA_M2,
          CRS_NOTE);

  /** Dry and wet places without an outline. */
  public static final Layer SPOT =
      layer(
          "spot",
          "dry, wet and water-repellent places that were seen but cannot be outlined; symbols",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("kind", 16, "dry, wet, or repel: of a second, drier population of readings"),
          Field.text("st_id", 64, "nearest station"),
          Field.real("dist_m", 3, "m", "distance to that station"),
          share(
              "p_exist",
              "probability that such a place of 1 m² or more is within one spacing; of repel, that"
                  + " the station is of the drier population"),
          Field.real("area_exp", 3, "m²", "expected area within one spacing; not known of repel"),
          Fields.MAPBL,
          Field.text("note", 254, "what to do"),
          CRS_NOTE);

  /** Where to hand water. */
  public static final Layer WATER =
      layer(
          "water",
          "dry places of the last survey of each green in walking order, for hand watering; look"
              + " first, the site decides",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.whole("stop", "", "order of the walk over the course, from 1"),
          Field.text("what", 16, "patch, spot (size not known) or repel (perhaps repellent)"),
          Field.text("patch_id", 64, "patch; empty of a spot"),
          Field.text("st_id", 64, "nearest station of a spot"),
          Fields.P_EXIST,
          AREA_M2,
          Field.real("def_mm", 3, "mm", "mean depth that the ground lacks to its target"),
          WATER_L,
          WAT_LO,
          WAT_HI,
          PASSES,
          HOSE_MIN,
          Field.text("caution", 254, "what to mind there, in short; the page has it whole"),
          CRS_NOTE);

  /** Where to read next. */
  public static final Layer NEXTST =
      layer(
          "nextst",
          "places to read next on the last survey of each green, the most telling first",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.whole("rank", "", "1 tells most"),
          Field.text("why", 24, "near a limit, far from readings, or both"),
          area(
              "gain_m2",
              "drop of the expected misclassified area, the sum of p (1 - p); not m² set right"),
          share("gain_part", "the same as a share of what there was before any new station"),
          variance("var_drop", "drop of the mean kriging variance over the green"),
          Field.whole("walk", "", "order of the walk, from 1"),
          Field.real("x", 3, "m", "east"),
          Field.real("y", 3, "m", "north"),
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
          share("p_dry", "probability that the ground is below the band"),
          share("p_wet", "probability that it is above"),
          share("p_band", "probability that it is in the band"),
          share("p_low", "probability of a second, drier population; where mapped apart"),
          CLS,
          CLS_NO,
          CRS_NOTE);

  /** Places where the probe is to be put in. */
  public static final Layer STATION =
      layer(
          "station",
          "planned places for the probe, in the order of the walk",
          GeometryKind.POINT,
          GREEN_ID,
          RUN_ID,
          Fields.PLAN_ID,
          Field.text("st_id", 64, "station, as it stands on the card"),
          Field.whole("seq", "", "order of the walk, from 1"),
          Field.text("role", 16, "why the station is there: plan, pair, poi, ctrl or infill"),
          Field.whole("insertions", "", "how often to insert, each in a hole of its own"),
          Field.real("step_m", 3, "m", "distance from the station before"),
          Field.real("step_deg", 1, "°", "direction from the station before, from grid north"),
          Field.real("edge_m", 3, "m", "distance to the outline"),
          Field.real("x", 3, "m", "east"),
          Field.real("y", 3, "m", "north"),
          CRS_NOTE);

  /** From station to station. */
  public static final Layer WALK =
      layer(
          "walk",
          "the walk over the stations of a plan, as the crow flies",
          GeometryKind.LINE,
          GREEN_ID,
          RUN_ID,
          Fields.PLAN_ID,
          Field.whole("n_st", "", "stations on it, control stations too"),
          Field.whole("n_ins", "", "insertions of the probe"),
          Field.real("length_m", 3, "m", "length"),
          Field.real("minutes", 1, "min", "walk and insertions"),
          CRS_NOTE);

  /** What was surveyed, and what came of it. */
  public static final Layer SURVEY = Tables.SURVEY;

  /** What a review found, where it lies. */
  public static final Layer FINDING =
      layer(
          "finding",
          "what a review found: a point for each reading it is about, else one on the green",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("st_id", 64, "station"),
          Field.text("qa_code", 64, "what was looked for"),
          Field.text("title", 120, "what that is, in words"),
          Field.text("qa_stat", 16, "note, warn or reject"),
          Field.whole("n_read", "", "readings the finding is about; 0: the whole visit or survey"),
          Field.text("reason", 254, "what was seen; the page has it whole"),
          Field.text("remedy", 254, "what would settle or mend it"),
          CRS_NOTE);

  /** One row a green and survey of a review. */
  public static final Layer VISIT = Tables.VISIT;

  /** Evenness of the moisture. */
  public static final Layer EVEN = Tables.EVEN;

  /** All greens at a glance. */
  public static final Layer COURSE = Tables.COURSE;

  /** Variograms used. */
  public static final Layer VGM = Tables.VGM;

  /** What was planned, and what the readings could tell. */
  public static final Layer PLAN = Tables.PLAN;

  /** Catch cans. */
  public static final Layer CATCH = IrrigationLayers.CATCH;

  /** Sprinkler heads. */
  public static final Layer HEAD = IrrigationLayers.HEAD;

  /** Ground by the heads that reach it. */
  public static final Layer COVER = IrrigationLayers.COVER;

  /** Uniformity of the water applied. */
  public static final Layer IRR = IrrigationLayers.IRR;

  /** Record of the run. */
  public static final Layer PROV = Tables.PROV;

  /** What the moisture says of heads. */
  public static final Layer SECTOR = IrrigationLayers.SECTOR;

  /** The ground at points of a grid. */
  public static final Layer TERRAIN = TerrainLayers.TERRAIN;

  /** Hollows. */
  public static final Layer DEPRESS = TerrainLayers.DEPRESS;

  /** Ways of surface water. */
  public static final Layer FLOW = TerrainLayers.FLOW;

  /** Lines of equal height. */
  public static final Layer CONTOUR = TerrainLayers.CONTOUR;

  /** Ground that stays wet or dry. */
  public static final Layer PERSIST = TerrainLayers.PERSIST;

  /** Why a place may stay wet. */
  public static final Layer HYPO = TerrainLayers.HYPO;

  /** Change between surveys. */
  public static final Layer CHANGE = TerrainLayers.CHANGE;

  /** Stations through the season. */
  public static final Layer REPAIR = TerrainLayers.REPAIR;

  /** Stations through a season. */
  public static final Layer STABLE = TerrainLayers.STABLE;

  /** Every layer and table, in the order of delivery. */
  public static final List<Layer> ALL =
      List.of(
          GREEN, READING, ZONE, PATCH, CORE, ENVEL, SPOT, WATER, NEXTST, ISO, CELL, STATION, WALK,
          SURVEY, EVEN, COURSE, VGM, FINDING, VISIT, PLAN, CATCH, HEAD, SECTOR, COVER, IRR, TERRAIN,
          DEPRESS, FLOW, CONTOUR, PERSIST, HYPO, CHANGE, STABLE, REPAIR, PROV);

  private Layers() {}
}
