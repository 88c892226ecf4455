package org.mottle.export.read;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.mottle.engine.survey.Conditions;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * Reads the protocol record: one row a survey and green ({@code green_id} empty: every green of the
 * survey). What is not in the table is not known; nothing is assumed for it.
 */
public final class ConditionsReader {
  private final FeatureTable table;
  private final Problems problems = new Problems();
  private final Columns columns;

  private ConditionsReader(FeatureTable table, InputOptions options) {
    this.table = table;
    this.columns = new Columns(table, options, problems);
  }

  /**
   * Those of one green before those of all greens of a survey, else in the order of the file.
   *
   * @param notes told of columns that are not read
   * @throws InputRefused with every problem of the file
   */
  public static List<Conditions> read(String file, InputOptions options, List<String> notes) {
    return new ConditionsReader(FeatureFile.readCells(file, options), options).read(notes);
  }

  private List<Conditions> read(List<String> notes) {
    problems.require(
        columns.find("surv_id").isPresent(),
        "%s has no column surv_id; its columns are %s: add it, or map it in the settings, like columns: {surv_id: Visit}",
        table.name(),
        columns.named());
    problems.throwIfAny();
    columns.requireMapped(FieldNames.ownOf(FieldNames.CONDITIONS));
    tellUnread(notes);
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
    requireNamed(survey);
    requireOnce(survey, green);
    requireForward(start, end);
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
    // what was recorded of a green counts before what was recorded of all
    all.sort(Comparator.comparing(c -> c.greenId().isEmpty()));
    return all;
  }

  private void tellUnread(List<String> notes) {
    Set<Integer> read = new HashSet<>();
    FieldNames.CONDITIONS.forEach(n -> columns.find(n).ifPresent(read::add));
    for (int i = 0; i < table.columns().size(); i++) {
      String heading = table.columns().get(i);
      if (!read.contains(i)) {
        String plain = heading.strip().toLowerCase(Locale.ROOT);
        notes.add(
            "%s: column %s is not read%s"
                .formatted(
                    table.name(),
                    heading,
                    Nearest.to(plain, FieldNames.CONDITIONS)
                        .map(n -> "; did you mean " + n + "?")
                        .orElse("")));
      }
    }
  }

  private void requireNamed(String[] survey) {
    List<Integer> empty = new ArrayList<>();
    for (int i = 0; i < survey.length; i++) {
      if (survey[i].isEmpty()) {
        empty.add(table.rows().get(i).number());
      }
    }
    problems.require(
        empty.isEmpty(),
        "%s: no surv_id in %s %s; say which survey the record is of",
        table.name(),
        table.unit(empty.size()),
        Problems.listed(empty));
  }

  private void requireForward(String[] start, String[] end) {
    for (int i = 0; i < start.length; i++) {
      Optional<OffsetDateTime> from = time(start[i]);
      Optional<OffsetDateTime> to = time(end[i]);
      problems.require(
          from.isEmpty() || to.isEmpty() || !to.get().isBefore(from.get()),
          "%s: t_end %s is before t_start %s; correct one",
          table.at(table.rows().get(i)),
          end[i],
          start[i]);
    }
  }

  private void requireOnce(String[] survey, String[] green) {
    Map<List<String>, Integer> seen = new HashMap<>();
    for (int i = 0; i < survey.length; i++) {
      int number = table.rows().get(i).number();
      Integer before = seen.putIfAbsent(List.of(survey[i], green[i]), number);
      problems.require(
          before == null,
          "%s: survey %s%s stands in rows %s and %s; keep one, or name their greens",
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
      problems.require(
          texts[i].isEmpty() || time(texts[i]).isPresent(),
          "%s: %s is no time with offset, was '%s'; write it like 2031-05-14T07:30:00+01:00",
          table.at(table.rows().get(i)),
          name,
          texts[i]);
    }
    return texts;
  }

  private static Optional<OffsetDateTime> time(String text) {
    try {
      return Optional.of(OffsetDateTime.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
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
