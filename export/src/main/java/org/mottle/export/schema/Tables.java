package org.mottle.export.schema;

import static org.mottle.export.schema.Fields.GREEN_ID;
import static org.mottle.export.schema.Fields.HI_PCT;
import static org.mottle.export.schema.Fields.LO_PCT;
import static org.mottle.export.schema.Fields.METHOD;
import static org.mottle.export.schema.Fields.PURPOSE;
import static org.mottle.export.schema.Fields.RUN_ID;
import static org.mottle.export.schema.Fields.SURV_ID;
import static org.mottle.export.schema.Fields.area;
import static org.mottle.export.schema.Fields.layer;
import static org.mottle.export.schema.Fields.moisture;
import static org.mottle.export.schema.Fields.share;
import static org.mottle.export.schema.Fields.variance;

/** The tables among the {@link Layers}. */
final class Tables {
  private Tables() {}

  private static final Field LIKE =
      Field.text("like_of", 160, "visits it is compared with: what they have in common");
  private static final Field UNLIKE = Field.text("like_no", 160, "why it is compared with none");
  private static final Field N_LIKE = Field.whole("n_like", "", "how many are compared");

  /** What was surveyed, and what came of it. */
  static final Layer SURVEY =
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
          Field.text("band_by", 64, "who set the band"),
          Field.text("band_on", 32, "when it was set, ISO 8601 date"),
          Field.text("band_prov", 254, "why the band is provisional; empty when it is not"),
          METHOD,
          Field.real("cell_m", 3, "m", "side of a cell"),
          Fields.STANDING,
          Field.whole("n_real", "", "realisations drawn"),
          Field.real("pos_sd_m", 3, "m", "position error a station, per axis, root mean square"),
          Field.real("shift_sd", 3, "m", "position error common to the visit, per axis"),
          Field.real("spacing_m", 3, "m", "spacing of the stations, as of a square grid"),
          area("min_patch", "smallest patch this survey could outline, on average over the green"),
          Field.real("min_width", 3, "m", "smallest width, from the errors of position"),
          area("dry_exp", "expected ground below the band; without a second population if apart"),
          area("dry_lo", "5 % of the realisations have less"),
          area("dry_hi", "5 % of the realisations have more"),
          area("wet_exp", "expected ground above the band; without a second population if apart"),
          area("wet_lo", "5 % of the realisations have less"),
          area("wet_hi", "5 % of the realisations have more"),
          area("mis_m2", "expected misclassified area, the sum of p (1 - p) over both limits"),
          area("mis_next", "the same once all stations of nextst are read"),
          Field.real("walk_m", 3, "m", "walk over the stations of nextst"),
          Field.text("nextstop", 64, "why nextst ends where it does"),
          Field.whole("cv_n", "", "readings predicted from the others of the green"),
          share("cv_c50", "share of them inside the 50 % interval"),
          share("cv_c90", "share of them inside the 90 % interval"),
          Field.real("cv_msdr", 4, "", "mean squared standardised error; near 1 is right"),
          Field.real("cv_medz2", 4, "", "median squared standardised error; near 0.455 is right"),
          Field.text("pop", 24, "populations of readings: apart, one or one; test"),
          Field.text("pop_seen", 254, "what the readings show of a second, drier population"),
          Field.text("pop_why", 254, "what that is consistent with"),
          Field.text("pop_next", 254, "what to check or consider"),
          Field.text("pop_core", 254, "stations a core is asked from, the driest first"),
          Field.text(
              "reason", 254, "why this method, or why there is no map, and what to know of it"),
          Field.text("remedy", 254, "what would change that"));

  /** Grades of a review. */
  static final Layer VISIT =
      layer(
          "visit",
          "one row a green and survey: how far its readings can be trusted",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.whole("n_read", "", "readings"),
          Field.whole("n_used", "", "readings that are used"),
          Field.whole("n_warn", "", "readings in doubt"),
          Field.whole("n_reject", "", "readings rejected"),
          Field.text("grade", 4, "A to D"),
          Field.text("means", 64, "what the grade means"),
          Field.text("why", 254, "what keeps it from a better grade; the page has it whole"),
          Field.text("raise", 254, "what would raise it"),
          Field.whole("mappable", "", "1 when the visit may be mapped, else 0"));

  /** Evenness of the moisture. */
  static final Layer EVEN =
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
          moisture("sd_corr", "standard deviation of the ground, errors of the readings taken out"),
          moisture("sdc_lo", "5 % of the realisations have less"),
          moisture("sdc_hi", "5 % of the realisations have more"),
          Field.real("cv_corr", 3, "%", "coefficient of variation of the ground"),
          Field.real("cvc_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("cvc_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("lq_moist", 4, "", "mean of the driest quarter of the area over the mean"),
          Field.real("lqm_lo", 4, "", "5 % of the realisations have less"),
          Field.real("lqm_hi", 4, "", "5 % of the realisations have more"),
          Field.real("lq_avail", 4, "", "the same of the water above wilt onset"),
          Field.real("lqa_lo", 4, "", "5 % of the realisations have less"),
          Field.real("lqa_hi", 4, "", "5 % of the realisations have more"),
          Field.real("cu_moist", 3, "%", "100 (1 - mean absolute deviation / mean) of the area"),
          Field.real("cum_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("cum_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("dry_pct", 3, "%", "expected share of the area below the band"),
          Field.real("dryp_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("dryp_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("band_pct", 3, "%", "expected share of the area in the band"),
          Field.real("band_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("band_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("wet_pct", 3, "%", "expected share of the area above the band"),
          Field.real("wetp_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("wetp_hi", 3, "%", "5 % of the realisations have more"),
          LIKE,
          UNLIKE,
          Field.whole("rank", "", "by cv_corr among its like, 1 the least even"),
          Field.whole("rank_lo", "", "it surely is no higher"),
          Field.whole("rank_hi", "", "it surely is no lower"),
          N_LIKE);

  /** All greens at a glance. */
  static final Layer COURSE =
      layer(
          "course",
          "one row a green by its last survey: the oldest survey first, then the poorest grade",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("t_last", 32, "last reading, ISO 8601 with offset"),
          Field.text("history", 24, "water before: after rain, after irrigation, dry days"),
          Field.text("grade", 4, "A to D by the review; empty where there was none"),
          Fields.STANDING,
          PURPOSE,
          LO_PCT,
          HI_PCT,
          Field.real("dry_pct", 3, "%", "expected share of the area below the band"),
          Field.real("dryp_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("dryp_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("wet_pct", 3, "%", "expected share of the area above the band"),
          Field.real("wetp_lo", 3, "%", "5 % of the realisations have less"),
          Field.real("wetp_hi", 3, "%", "5 % of the realisations have more"),
          Field.real("water_l", 3, "L", "one pass over all ground below the band"),
          Field.real("wat_lo", 3, "L", "5 % of the realisations want less"),
          Field.real("wat_hi", 3, "L", "5 % of the realisations want more"),
          Field.real("cv_corr", 3, "%", "coefficient of variation of the ground"),
          Field.real("taw_mm", 3, "mm", "total available water of the root zone (FAO-56)"),
          Field.real("raw_mm", 3, "mm", "readily available water (FAO-56)"),
          Field.real("depl_mm", 3, "mm", "what is lacking to field capacity, mean of the green"),
          LIKE,
          UNLIKE,
          Field.whole("rank_dry", "", "by share of dry ground among its like, 1 the largest"),
          Field.whole("rank_wet", "", "by share of wet ground"),
          Field.whole("rank_wat", "", "by water wanted"),
          Field.whole("rank_even", "", "by cv_corr, 1 the least even"),
          N_LIKE,
          Field.text("note", 254, "what is missing, and what would change that"));

  /** Variograms used. */
  static final Layer VGM =
      layer(
          "vgm",
          "variograms used, one row a pool and survey; lo and hi are ends of 90 % intervals",
          GeometryKind.NONE,
          GREEN_ID,
          SURV_ID,
          RUN_ID,
          Field.text("pooled_of", 254, "greens that were pooled; green_id is empty then"),
          Field.text("pooled_in", 254, "surveys that were pooled"),
          Field.whole("n_stat", "", "stations in the pool"),
          Field.whole("n_pairs", "", "pairs of stations up to the longest lag shown"),
          Field.whole("n_close", "", "pairs so near that they tell the nugget"),
          Field.whole("n_repl", "", "insertions beyond the first at their stations"),
          Field.real("deff", 3, "", "design effect: by which repeated surveys weigh less"),
          Field.real("gain", 3, "", "AICc without structure less that with; above 0: structure"),
          Field.whole("borrowed", "", "1 when the pool was so small that a prior entered"),
          Field.text("model", 24, "shape of the structure"),
          Field.real("kappa", 4, "", "smoothness of a Matérn structure"),
          Field.real("range_m", 4, "m", "range: the parameter a of the written formula"),
          Field.real("prac_m", 4, "m", "practical range: where 95 % of the partial sill is met"),
          Field.real("prac_lo", 4, "m", "its lower end"),
          Field.real("prac_hi", 4, "m", "its upper end"),
          variance("c0", "nugget of one insertion, soil and measurement together"),
          variance("c0_lo", "its lower end"),
          variance("c0_hi", "its upper end"),
          variance("c0_micro", "micro-scale nugget, part of the soil; empty when not known apart"),
          variance("s2_err", "variance of the measurement; empty when not known apart"),
          share("share", "nugget share of the mean sill of the surveys"),
          share("share_lo", "its lower end"),
          share("share_hi", "its upper end"),
          variance("psill", "partial sill of the structure in the survey"),
          variance("psill_lo", "its lower end"),
          variance("psill_hi", "its upper end"),
          variance("sill", "nugget and partial sill together"),
          Field.text("weights", 254, "shapes tried, each with its share in the draws and its AICc"),
          Field.text("fit", 48, "where the parameters come from"),
          Field.whole("cv_n", "", "readings predicted from the others of their green"),
          moisture("cv_me", "mean error of those predictions"),
          moisture("cv_rmse", "root of their mean squared error"),
          share("cv_c50", "share inside the 50 % interval"),
          share("cv_c90", "share inside the 90 % interval"),
          Field.real("cv_msdr", 4, "", "mean squared standardised error; near 1 is right"),
          Field.real("cv_medz2", 4, "", "median squared standardised error; near 0.455 is right"),
          Field.text("note", 254, "what the fit found, or why there is none"));

  /** What was planned, and what the readings could tell. */
  static final Layer PLAN =
      layer(
          "plan",
          "one row a green: its stations in figures and what their readings could find, or why"
              + " there are none",
          GeometryKind.NONE,
          GREEN_ID,
          RUN_ID,
          Fields.PLAN_ID,
          Field.text("design", 24, "how the places were chosen"),
          Field.whole("n_st", "", "stations, close pairs included, control stations not"),
          Field.whole("n_pair", "", "stations close to another, which tell the nugget"),
          Field.whole("n_twice", "", "stations read twice or more, control stations not counted"),
          Field.whole("n_ctrl", "", "control stations"),
          Field.whole("n_ins", "", "insertions of the probe in one walk"),
          Field.real("inset_m", 3, "m", "least distance of a station from the outline"),
          Field.real("spacing_m", 3, "m", "spacing of the stations, as of a square grid"),
          Field.real("walk_m", 3, "m", "walk from the first station to the last"),
          Field.real("minutes", 1, "min", "walk and insertions"),
          moisture("map_sd", "expected mean kriging standard deviation of the map"),
          Field.text("map_by", 16, "variogram that expects it: given or borrowed"),
          moisture("mean_pm", "half width of the 95 % interval of the green's mean"),
          Field.text("mean_by", 80, "what that interval is of, or why there is none"),
          Field.text("found", 254, "what the readings could find, and what not"),
          Field.text("note", 254, "what to know of the plan"),
          Field.text("reason", 254, "why there is no plan"),
          Field.text("remedy", 254, "what would change that"));

  /** Record of the run. */
  static final Layer PROV =
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
}
