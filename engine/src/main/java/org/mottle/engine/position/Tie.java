package org.mottle.engine.position;

/**
 * A position recorded at a mark during a visit, from which the shift common to the visit is told.
 *
 * @param surveyId the survey
 * @param greenId the green of the visit
 * @param operator who; empty when not recorded
 * @param markId at which mark
 * @param x recorded east, m
 * @param y recorded north, m
 * @param source how the position came about; empty when not recorded
 * @param row line of the file, for messages; 0 when from no file
 */
public record Tie(
    String surveyId,
    String greenId,
    String operator,
    String markId,
    double x,
    double y,
    String source,
    int row) {}
