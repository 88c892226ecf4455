package org.mottle.export.schema;

import static org.mottle.export.schema.Fields.CRS_NOTE;
import static org.mottle.export.schema.Fields.GREEN_ID;
import static org.mottle.export.schema.Fields.RUN_ID;
import static org.mottle.export.schema.Fields.SURV_ID;
import static org.mottle.export.schema.Fields.layer;

/** What is known of the irrigation: cans, heads, the ground they reach, and how even it is. */
final class IrrigationLayers {
  private static final Field AUDIT_ON = Field.text("audit_on", 64, "day or name of the test run");

  private IrrigationLayers() {}

  static final Layer CATCH =
      layer(
          "catch",
          "catch cans of an irrigation audit; those without a place have no point",
          GeometryKind.POINT,
          GREEN_ID,
          AUDIT_ON,
          RUN_ID,
          Field.text("can_id", 64, "can"),
          Field.real("ml", 3, "ml", "caught"),
          Field.real("mouth_cm2", 3, "cm²", "area of the can's mouth"),
          Field.real("min_run", 3, "min", "how long the water ran"),
          Field.real("mm", 3, "mm", "depth, 10 ml / cm²"),
          Field.real("mm_h", 3, "mm/h", "rate"),
          Field.real("wind_ms", 3, "m/s", "wind"),
          Field.real("rel", 4, "", "catch over the mean of its area and run"),
          Field.whole("low_q", "", "1 when the can counts to the lowest quarter, 0 when not"),
          CRS_NOTE);

  static final Layer HEAD =
      layer(
          "head",
          "sprinkler heads, and how each stands to the others of its green",
          GeometryKind.POINT,
          GREEN_ID,
          RUN_ID,
          Field.text("head_id", 64, "head"),
          Field.text("stn", 32, "station of the controller"),
          Field.real("rad_m", 3, "m", "reach of the throw"),
          Field.real("arc_from", 3, "°", "where the arc starts, clockwise from grid north"),
          Field.real("arc_to", 3, "°", "where the arc ends, going clockwise"),
          Field.real("rate_mmh", 3, "mm/h", "rate given for heads in a square, head to head"),
          Field.real("kpa", 3, "kPa", "pressure at the head"),
          Field.text("state", 64, "state, as recorded"),
          Field.real("near_m", 3, "m", "distance to the nearest other head of the green"),
          Field.real("near_rad", 4, "", "that over the reach; 1 or less is head to head"),
          Field.whole("head_head", "", "1 when it throws as far as another head, in its arc"),
          Field.whole("reached_n", "", "heads that throw as far as this one, in their arcs"),
          CRS_NOTE);

  static final Layer COVER =
      layer(
          "cover",
          "the green cut up by the heads that reach it, by radius and arc alone",
          GeometryKind.AREA,
          GREEN_ID,
          RUN_ID,
          Field.text("head_id", 254, "heads that reach it"),
          Field.whole("overlap_n", "", "how many"),
          Field.real("theo_mmh", 3, "mm/h", "theoretical rate: the sum of rate_mmh / pi over them"),
          Fields.AREA_M2,
          CRS_NOTE);

  static final Layer IRR =
      layer(
          "irr",
          "uniformity of the water applied, one row a green and test run; lo and hi are ends of 90 %"
              + " intervals",
          GeometryKind.NONE,
          GREEN_ID,
          AUDIT_ON,
          RUN_ID,
          Field.whole("n_cans", "", "cans"),
          Field.text("basis", 8, "unit in which catches were compared"),
          Field.text("lq_rule", 16, "how a quarter of a count that does not divide is taken"),
          Field.real("mm", 3, "mm", "mean depth"),
          Field.real("min_run", 3, "min", "how long the water ran"),
          Field.real("mm_h", 3, "mm/h", "mean rate"),
          Field.real("wind_ms", 3, "m/s", "highest wind recorded"),
          Field.real("du_lq", 4, "", "distribution uniformity: mean of the lowest quarter / mean"),
          Field.real("du_lo", 4, "", "5 % below"),
          Field.real("du_hi", 4, "", "5 % above"),
          Field.real("du_lh", 4, "", "mean of the lowest half / mean"),
          Field.real("cu", 3, "%", "Christiansen: 100 (1 - mean absolute deviation / mean)"),
          Field.real("cu_lo", 3, "%", "5 % below"),
          Field.real("cu_hi", 3, "%", "5 % above"),
          Field.real("cv_pct", 3, "%", "coefficient of variation"),
          Field.text("reading", 16, "usual reading of du_lq: good (0.80), acceptable (0.70), low"),
          Field.real("sc1", 4, "", "scheduling coefficient, driest 1 % of the area"),
          Field.real("sc2", 4, "", "of the driest 2 %"),
          Field.real("sc5", 4, "", "of the driest 5 %"),
          Field.real("rtm", 4, "", "run-time multiplier, 1 / (0.386 + 0.614 du_lq)"),
          Field.real("rtm_alt", 4, "", "the other usual form, 1 / (0.4 + 0.6 du_lq)"),
          Field.real("run_min", 3, "min", "run a day for the need given; empty when none was"),
          Field.text("missing", 254, "figures that could not be given, and why"),
          Field.text("caution", 254, "what to know first; the page has it whole"));

  /** What the moisture says of heads. */
  static final Layer SECTOR =
      layer(
          "sector",
          "what the moisture says of each head in each survey: where to look, never that one is at"
              + " fault",
          GeometryKind.POINT,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("head_id", 64, "head"),
          Field.text("stn", 32, "station of the controller"),
          Field.text("history", 24, "water before: after rain, after irrigation, dry days"),
          Field.text("verdict", 32, "what is suggested"),
          Field.real("p_head", 4, "", "probability that this head gives too little, this survey"),
          Field.real("p_comb", 4, "", "the same with all surveys after irrigation; it decides"),
          Field.real(
              "effect_pct", 3, "% by volume", "shortfall where the head's share is greatest"),
          Field.real("effect_sd", 3, "% by volume", "its standard deviation"),
          Field.real("p_ground", 4, "", "probability that its ground is dry whatever it is given"),
          Field.real("p_spot", 4, "", "probability of one dry or wet place of another cause"),
          Field.whole("rank", "", "among the heads of the green in the survey, 1 the first"),
          Field.text("speaks_for", 254, "what speaks for a shortfall"),
          Field.text("against", 254, "what speaks against it, or for another cause"),
          Field.text("next_test", 254, "what to check or consider next"),
          CRS_NOTE);
}
