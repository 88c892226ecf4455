package org.mottle.engine.review;

import java.util.List;
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

  /** "S1, green G9: Q01 reject, station 1: 0.6 % is ...; remedy". */
  public String line() {
    String where =
        (surveyId.isEmpty() ? "" : surveyId)
            + (greenId.isEmpty() ? "" : (surveyId.isEmpty() ? "" : ", ") + "green " + greenId);
    return (where.isEmpty() ? "" : where + ": ")
        + rule.code()
        + " "
        + severity.label()
        + ": "
        + reason
        + (remedy.isEmpty() ? "" : "; " + remedy);
  }
}
