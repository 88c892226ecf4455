package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.moisture.PermittivityCurve;
import org.mottle.engine.survey.Reading;
import org.mottle.export.problem.Problems;

/** The attributes of readings, row by row, out of the columns of a table. */
final class ReadingColumns {
  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final InputOptions options;
  private final Problems problems;
  private final Columns columns;

  final String[] green;
  final String[] survey;
  private final String[] station;
  private final int[] sequence;
  private final int[] replicate;
  private final String[] time;
  private final double[] raw;
  private final double[] adjusted;
  private final String[] note;
  private final double[] rod;
  private final String[] probe;
  private final String[] operator;
  private final String[] calibration;
  private final double[] soilC;
  private final double[] conductivity;
  private final double[] height;
  final String[] positionSource;
  final double[] positionSd;
  final Reading.Role[] role;
  private final String[] finding;
  private final String[] status;
  private final boolean[] used;

  ReadingColumns(FeatureTable table, InputOptions options, Problems problems) {
    this.table = table;
    this.options = options;
    this.problems = problems;
    this.columns = new Columns(table, options, problems);
    columns.requireMapped(FieldNames.READING);
    this.green = columns.texts("green_id");
    this.survey = columns.texts("surv_id");
    this.station = columns.texts("st_id");
    this.sequence = columns.wholes("seq", 0);
    this.replicate = columns.wholes("rep", 1);
    this.time = columns.texts("t_local");
    this.raw = raw();
    this.adjusted = scaled(columns.numbers("vwc_adj"));
    this.note = columns.texts("adj_note");
    this.rod = columns.numbers("rod_mm");
    this.probe = columns.texts("probe");
    this.operator = columns.texts("oper");
    this.calibration = columns.texts("calib");
    this.soilC = columns.numbers("soil_c");
    this.conductivity = columns.numbers("ec_dsm");
    this.height = columns.numbers("z_m");
    this.positionSource = columns.texts("pos_src");
    this.positionSd = columns.numbers("pos_sd_m");
    checkPositionSd();
    this.role = Roles.of(columns, table, problems);
    this.finding = columns.texts("qa_code");
    this.status = columns.texts("qa_stat");
    this.used = used();
  }

  private void checkPositionSd() {
    for (int i = 0; i < positionSd.length; i++) {
      if (positionSd[i] < 0 || positionSd[i] > PositionSettings.MOST_M) {
        problems.add(
            "%s: pos_sd_m must lie between 0 and %.0f m, was %s; correct it, or leave it empty where"
                + " it is not known",
            table.at(table.rows().get(i)), PositionSettings.MOST_M, positionSd[i]);
      }
    }
  }

  Reading reading(int i, double x, double y, double z, String greenId) {
    FeatureTable.Row row = table.rows().get(i);
    double pct = Double.isNaN(adjusted[i]) ? raw[i] : adjusted[i];
    return new Reading(
        new Reading.Label(greenId, survey[i], station[i], sequence[i], replicate[i], row.number()),
        new Reading.Position(
            x, y, Double.isNaN(height[i]) ? z : height[i], positionSource[i], positionSd[i]),
        new Reading.Moisture(raw[i], pct, note[i]),
        new Reading.Protocol(
            time[i], rod[i], probe[i], operator[i], calibration[i], soilC[i], conductivity[i]),
        role[i],
        new Reading.Quality(finding[i], status[i], used[i]));
  }

  private double[] raw() {
    OptionalInt column = columns.find("vwc_raw");
    if (column.isEmpty() && columns.find("perm_raw").isPresent()) {
      return ofPermittivity(columns.numbers("perm_raw"));
    }
    if (column.isEmpty()) {
      problems.require(
          columns.isMapped("vwc_raw"),
          "%s has no column vwc_raw; its columns are %s: map the one that holds the moisture in the settings, like columns: {vwc_raw: \"Moisture %%\"}",
          table.name(),
          columns.named());
      double[] none = new double[table.rows().size()];
      Arrays.fill(none, Double.NaN);
      return none;
    }
    int before = problems.lines().size();
    double[] values = columns.numbers(column.getAsInt());
    if (problems.lines().size() == before) {
      requireValues(values, table.columns().get(column.getAsInt()));
    }
    return scaled(values);
  }

  /** Moisture by the curve of the settings: there is none that is right for every soil. */
  private double[] ofPermittivity(double[] permittivity) {
    if (options.curve().isEmpty()) {
      problems.add(
          "%s holds permittivities (perm_raw) and no curve is named: say calibration: {curve: topp}"
              + " in the settings; known are topp, ledieu, malicki, roth",
          table.name());
      return permittivity;
    }
    List<String> wrong = new ArrayList<>();
    double[] pct = new double[permittivity.length];
    for (int i = 0; i < pct.length; i++) {
      double e = permittivity[i];
      if (!(e >= PermittivityCurve.LEAST && e <= PermittivityCurve.MOST)) {
        wrong.add("%d (%s)".formatted(table.rows().get(i).number(), e));
      }
      pct[i] = options.curve().get().pct(e);
    }
    problems.require(
        wrong.isEmpty(),
        "%s: perm_raw must lie between 1 and 81, as of air and water, in %s %s; correct it or delete"
            + " the rows",
        table.name(),
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
    return pct;
  }

  private void requireValues(double[] values, String heading) {
    List<Integer> empty = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        empty.add(table.rows().get(i).number());
      }
    }
    problems.require(
        empty.isEmpty(),
        "%s: no value of %s in %s %s; fill them in or delete the rows",
        table.name(),
        heading,
        table.unit(empty.size()),
        Problems.listed(empty));
    boolean fractions = values.length > 0 && Arrays.stream(values).allMatch(v -> v < 1 && v >= 0);
    problems.require(
        !fractions
            || options.moistureUnit() != InputOptions.MoistureUnit.ASK
            || Arrays.stream(values).allMatch(v -> v == 0),
        "%s: all %d values of %s are below 1, the largest %s: fractions or %% by volume? Say so in the settings, with unit: fraction or unit: percent",
        table.name(),
        values.length,
        heading,
        Arrays.stream(values).max().orElse(Double.NaN));
  }

  private double[] scaled(double[] values) {
    return options.moistureUnit() == InputOptions.MoistureUnit.FRACTION
        ? Arrays.stream(values).map(v -> 100 * v).toArray()
        : values;
  }

  private boolean[] used() {
    String[] texts = columns.texts("used");
    boolean[] used = new boolean[texts.length];
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < texts.length; i++) {
      switch (texts[i].toLowerCase(Locale.ROOT)) {
        case "", "1", "true", "yes" -> used[i] = true;
        case "0", "false", "no" -> used[i] = false;
        default -> wrong.add("%d ('%s')".formatted(table.rows().get(i).number(), texts[i]));
      }
    }
    problems.require(
        wrong.isEmpty(),
        "%s: used is neither 1 nor 0 in %s %s",
        table.name(),
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
    return used;
  }
}
