package org.mottle.export.schema;

import static org.mottle.export.schema.Fields.AREA_M2;
import static org.mottle.export.schema.Fields.CRS_NOTE;
import static org.mottle.export.schema.Fields.GREEN_ID;
import static org.mottle.export.schema.Fields.RUN_ID;
import static org.mottle.export.schema.Fields.layer;
import static org.mottle.export.schema.Fields.moisture;
import static org.mottle.export.schema.Fields.share;

/** The shape of the ground, and what stays wet or dry through a season. */
final class TerrainLayers {
  private static final Field HISTORY =
      Field.text("history", 24, "water before: after rain, after irrigation, dry days");
  private static final Field CA_M2 =
      Field.real("ca_m2", 3, "m²", "contributing area, multiple flow directions");

  private TerrainLayers() {}

  static final Layer TERRAIN =
      layer(
          "terrain",
          "the ground at points of a square grid, from the smoothed elevation",
          GeometryKind.POINT,
          GREEN_ID,
          RUN_ID,
          height("z_m", "height"),
          Field.real("slope_pct", 3, "%", "slope (Horn)"),
          Field.real("aspect", 3, "°", "direction it falls to, clockwise from grid north"),
          Field.real("prof_curv", 6, "1/m", "curvature along the fall; above 0: hollow"),
          Field.real(
              "plan_curv", 6, "1/m", "curvature across the fall; above 0: hollow, gathers water"),
          Field.real("fill_mm", 3, "mm", "depth of water that stands before it spills"),
          CA_M2,
          Field.real("twi", 3, "", "wetness index, ln(a / tan slope); a: area per m of width"),
          CRS_NOTE);

  static final Layer DEPRESS =
      layer(
          "depress",
          "hollows from which surface water cannot run off, at least 10 mm and twice the noise of"
              + " the elevation deep, 1 m² or more",
          GeometryKind.AREA,
          GREEN_ID,
          RUN_ID,
          Field.text("dep_id", 64, "hollow, unique in the green"),
          Field.real("depth_mm", 3, "mm", "greatest depth below the spill"),
          Field.real("vol_l", 3, "L", "water it holds when it spills"),
          AREA_M2,
          height("spill_z", "height at which it spills"),
          CRS_NOTE);

  static final Layer FLOW =
      layer(
          "flow",
          "ways surface water takes, downhill",
          GeometryKind.LINE,
          GREEN_ID,
          RUN_ID,
          CA_M2,
          Field.real("length_m", 3, "m", "length along the ground plan"),
          Field.real("drop_m", 3, "m", "height lost from start to end"),
          CRS_NOTE);

  static final Layer CONTOUR =
      layer(
          "contour",
          "lines of equal height of the smoothed elevation, 50 mm apart",
          GeometryKind.LINE,
          GREEN_ID,
          RUN_ID,
          height("z_m", "height"),
          CRS_NOTE);

  static final Layer PERSIST =
      layer(
          "persist",
          "ground that was wet or dry in survey after survey of one water history; lo and hi are"
              + " ends of 90 % intervals",
          GeometryKind.AREA,
          GREEN_ID,
          RUN_ID,
          Field.text("kind", 16, "wet or dry"),
          HISTORY,
          Field.whole("n_surv", "", "surveys of that history"),
          share("wet_share", "share of surveys in which it is wet, weighed by grade"),
          share("ws_lo", "5 % below"),
          share("ws_hi", "5 % above"),
          share("dry_share", "share of surveys in which it is dry, weighed by grade"),
          share("ds_lo", "5 % below"),
          share("ds_hi", "5 % above"),
          AREA_M2,
          Field.real("sure_m2", 3, "m²", "part of it where the interval lies above one half"),
          CRS_NOTE);

  static final Layer HYPO =
      layer(
          "hypo",
          "why a place may stay wet: evidence for a check on the ground, not a verdict; locate"
              + " buried services before any digging, and leave the design to a licensed"
              + " professional",
          GeometryKind.AREA,
          GREEN_ID,
          RUN_ID,
          Field.text("place_id", 64, "place, unique in the green"),
          Field.whole(
              "rank",
              "",
              "among the causes of the place, 1 the best supported; none of these has none"),
          Field.text("kind", 80, "hypothesis"),
          Field.text(
              "verdict", 24, "of the place: the first is suggested, or insufficient evidence"),
          Field.text("for_txt", 254, "what speaks for it; the page has it whole"),
          Field.text("against", 254, "what speaks against it"),
          Field.real("score", 3, "", "sum of the log evidence ratios (natural logarithms)"),
          share("p_hypo", "share of the evidence among the hypotheses weighed for the place"),
          Field.text("next_test", 254, "what would decide"),
          Field.text("not_known", 254, "what is missing"),
          CRS_NOTE);

  /** Of pairs of surveys. */
  static final Layer CHANGE =
      layer(
          "change",
          "one row a green and pair of surveys: change of moisture, later less earlier",
          GeometryKind.NONE,
          GREEN_ID,
          RUN_ID,
          Field.text("surv_a", 64, "earlier survey"),
          Field.text("surv_b", 64, "later survey"),
          moisture("dvwc", "change of the green's mean"),
          moisture("dvwc_lo", "its 5 % end"),
          moisture("dvwc_hi", "its 95 % end"),
          moisture("limit_pct", "change beyond which ground counts as fallen or risen"),
          share("fallen", "share of the area that fell beyond the limit with P of 0.8 or more"),
          share("risen", "share of the area that rose beyond the limit with P of 0.8 or more"),
          Field.text("why_not", 254, "why they are not compared; empty when they are"),
          Field.real("days", 3, "d", "time between, where a rate can be told"),
          Field.real("k_pct_d", 3, "% by volume a day", "dry-down rate of the green"),
          Field.real("k_lo", 3, "% by volume a day", "its 5 % end"),
          Field.real("k_hi", 3, "% by volume a day", "its 95 % end"),
          Field.real("k_et", 3, "% by volume a day", "what evapotranspiration explains"),
          Field.text("why_no_k", 254, "why there is no dry-down rate"));

  /** Before and after a repair. */
  static final Layer REPAIR =
      layer(
          "repair",
          "before and after a repair, one row a green: the change of the repaired ground less that"
              + " of the rest of the green",
          GeometryKind.NONE,
          GREEN_ID,
          RUN_ID,
          Field.text("surv_a", 64, "survey before"),
          Field.text("surv_b", 64, "survey after"),
          Field.text("wanted", 16, "what it was to bring: drier or wetter"),
          moisture("effect", "change of the repaired ground less that of the rest"),
          moisture("effect_lo", "its 5 % end"),
          moisture("effect_hi", "its 95 % end"),
          share("p_improved", "probability that it changed the way that was wanted"),
          Field.text("words", 254, "in words"),
          Field.text("why_not", 254, "why it cannot be said"));

  /** Of stations read again and again. */
  static final Layer STABLE =
      layer(
          "stable",
          "one row a green and station: how it stands to its green's mean through the season",
          GeometryKind.NONE,
          GREEN_ID,
          RUN_ID,
          Field.text("st_id", 64, "station"),
          Field.whole("n_surv", "", "surveys in which it was read"),
          Field.real("mrd", 4, "", "mean relative difference: (value - mean) / mean"),
          Field.real("sdrd", 4, "", "standard deviation of the relative difference"),
          Field.real("its", 4, "", "index of time stability: root of mrd² + sdrd²"),
          Field.whole("rank", "", "by mrd in the green, 1 the driest"),
          Field.whole(
              "represent", "", "1 for the station of least its, which stands for the mean"));

  private static Field height(String name, String meaning) {
    return Field.real(name, 3, "m", meaning);
  }
}
