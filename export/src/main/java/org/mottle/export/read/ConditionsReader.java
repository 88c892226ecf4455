package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.mottle.engine.survey.Conditions;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * Reads the protocol record: one row a survey and green ({@code green_id} empty: every green of the
 * survey). What is not in the table is not known; nothing is assumed for it.
 */
public final class ConditionsReader {
  /** The columns that are looked for. */
  public static final List<String> NAMES =
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

  private final FeatureTable table;
  private final Problems problems = new Problems();
  private final Columns columns;

  private ConditionsReader(FeatureTable table, InputOptions options) {
    this.table = table;
    this.columns = new Columns(table, options, problems);
  }

  /**
   * @param notes told of columns that are not known
   * @throws InputRefused with every problem of the file
   */
  public static List<Conditions> read(String file, InputOptions options, List<String> notes) {
    Path path = Path.of(file);
    if (!Files.isRegularFile(path)) {
      throw new InputRefused("%s: no such file".formatted(file));
    }
    try {
      FeatureTable table = new CsvReader(path, options).readCells();
      return new ConditionsReader(table, options).read(notes);
    } catch (IOException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(file, e.getMessage()));
    }
  }

  private List<Conditions> read(List<String> notes) {
    problems.require(
        columns.find("surv_id").isPresent(),
        "%s has no column surv_id; its columns are %s",
        table.name(),
        columns.named());
    problems.throwIfAny();
    for (String heading : table.columns()) {
      String plain = heading.strip().toLowerCase(java.util.Locale.ROOT);
      if (!NAMES.contains(plain)) {
        notes.add(
            "%s: column %s is not read%s"
                .formatted(
                    table.name(),
                    heading,
                    Nearest.to(plain, NAMES).map(n -> "; did you mean " + n + "?").orElse("")));
      }
    }
    String[] survey = columns.texts("surv_id");
    String[] green = columns.texts("green_id");
    String[] start = times("t_start");
    String[] end = times("t_end");
    String[] operator = columns.texts("oper");
    String[] probe = columns.texts("probe");
    double[] rod = positive("rod_mm");
    String[] calibration = columns.texts("calib");
    double[] rainH = positive("rain_h");
    double[] rainMm = positive("rain_mm");
    double[] irrH = positive("irr_h");
    double[] irrMm = positive("irr_mm");
    double[] et0 = positive("et0_mm_d");
    String[] dew = columns.texts("dew");
    double[] soilC = columns.numbers("soil_c");
    double[] ec = positive("ec_dsm");
    String[] maintenance = columns.texts("maint");
    String[] source = columns.texts("pos_src");
    double[] shift = positive("shift_sd_m");
    String[] plan = columns.texts("plan_id");
    String[] note = columns.texts("note");
    requireOnce(survey, green);
    problems.throwIfAny();
    List<Conditions> all = new ArrayList<>();
    for (int i = 0; i < survey.length; i++) {
      all.add(
          new Conditions(
              survey[i],
              green[i],
              new Conditions.Visit(start[i], end[i], plan[i], source[i], shift[i]),
              new Conditions.Crew(operator[i], probe[i], rod[i], calibration[i]),
              new Conditions.Water(rainH[i], rainMm[i], irrH[i], irrMm[i], et0[i]),
              new Conditions.Ground(dew[i], soilC[i], ec[i], maintenance[i], note[i])));
    }
    return all;
  }

  private void requireOnce(String[] survey, String[] green) {
    Map<List<String>, Integer> seen = new HashMap<>();
    for (int i = 0; i < survey.length; i++) {
      int number = table.rows().get(i).number();
      Integer before = seen.putIfAbsent(List.of(survey[i], green[i]), number);
      problems.require(
          before == null,
          "%s: survey %s%s stands in rows %s and %s; keep one",
          table.name(),
          survey[i],
          green[i].isEmpty() ? "" : ", green " + green[i],
          before,
          number);
    }
  }

  private String[] times(String name) {
    String[] texts = columns.texts(name);
    for (int i = 0; i < texts.length; i++) {
      if (!texts[i].isEmpty()) {
        try {
          OffsetDateTime.parse(texts[i]);
        } catch (DateTimeParseException e) {
          problems.add(
              "%s: %s is no time with offset, was '%s'; write it like 2031-05-14T07:30:00+01:00",
              table.at(table.rows().get(i)), name, texts[i]);
        }
      }
    }
    return texts;
  }

  private double[] positive(String name) {
    double[] values = columns.numbers(name);
    for (int i = 0; i < values.length; i++) {
      problems.require(
          !(values[i] < 0),
          "%s: %s must not be below 0, was %s; leave it empty where it is not known",
          table.at(table.rows().get(i)),
          name,
          values[i]);
    }
    return values;
  }
}
