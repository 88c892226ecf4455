package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.mottle.engine.survey.Reading;

/**
 * Something found in the review.
 *
 * @param rule what was looked for
 * @param severity what it means
 * @param surveyId the survey; empty when about none
 * @param greenId the green; empty when about the whole survey
 * @param readings those it is about; empty when about the whole visit or survey
 * @param reason what was seen, with the values
 * @param remedy what would settle or mend it
 */
public record Finding(
    Rule rule,
    Severity severity,
    String surveyId,
    String greenId,
    List<Reading> readings,
    String reason,
    String remedy) {
  public Finding {
    readings = List.copyOf(readings);
  }

  /** Of more rows than these the first are named, and how many. */
  private static final int ROWS_NAMED = 4;

  /**
   * "S1, green G9: Q01 reject: station 1: 0.6 % is ...; remedy"; where several files were read with
   * the rows, as "S1, green G9, readings_S1.csv row 182: ...".
   */
  public String line() {
    String where =
        (surveyId.isEmpty() ? "" : surveyId)
            + (greenId.isEmpty() ? "" : (surveyId.isEmpty() ? "" : ", ") + "green " + greenId);
    String rows = String.join(", ", rows());
    where += where.isEmpty() || rows.isEmpty() ? rows : ", " + rows;
    return (where.isEmpty() ? "" : where + ": ")
        + rule.code()
        + " "
        + severity.label()
        + ": "
        + reason
        + (remedy.isEmpty() ? "" : "; " + remedy);
  }

  /** "readings_S3.csv rows 12, 14", one a file; empty where only one file was read. */
  public List<String> rows() {
    Map<String, List<Integer>> byFile = new LinkedHashMap<>();
    for (Reading r : readings) {
      if (!r.label().file().isEmpty()) {
        byFile.computeIfAbsent(r.label().file(), k -> new ArrayList<>()).add(r.label().row());
      }
    }
    return byFile.entrySet().stream().map(e -> e.getKey() + rows(e.getValue())).toList();
  }

  private static String rows(List<Integer> rows) {
    if (rows.size() == 1) {
      return " row " + rows.get(0);
    }
    String named =
        rows.stream().limit(ROWS_NAMED).map(String::valueOf).collect(Collectors.joining(", "));
    return " rows "
        + named
        + (rows.size() > ROWS_NAMED ? " and %d more".formatted(rows.size() - ROWS_NAMED) : "");
  }
}
