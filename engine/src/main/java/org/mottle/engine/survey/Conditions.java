package org.mottle.engine.survey;

/**
 * The protocol record of one green in one survey: what was recorded about the visit beside its
 * readings. Nothing here has a default: text that is not recorded is empty, a figure that is not
 * recorded is NaN, and what needs it asks for it by name.
 *
 * @param surveyId the survey
 * @param greenId the green; empty: every green of the survey
 * @param visit when, and by which plan
 * @param crew who read, with what
 * @param water what the ground had received before
 * @param ground how the ground was
 */
public record Conditions(
    String surveyId, String greenId, Visit visit, Crew crew, Water water, Ground ground) {

  /**
   * @param start ISO 8601 with offset; empty when not recorded
   * @param end ISO 8601 with offset; empty when not recorded
   * @param planId plans followed, joined by +; empty when not recorded
   * @param positionSource GNSS, order, track, ...; empty when not recorded
   * @param shiftSdM standard error per axis of a shift common to the visit, m; NaN when not known
   */
  public record Visit(
      String start, String end, String planId, String positionSource, double shiftSdM) {}

  /**
   * @param operator initials at most; empty when not recorded
   * @param probe which probe; empty when not recorded
   * @param rodMm length of the rods, mm; NaN when not recorded
   * @param calibration curve used; empty when not recorded
   */
  public record Crew(String operator, String probe, double rodMm, String calibration) {}

  /**
   * @param rainHours hours since the last rain of 2 mm or more; NaN when not recorded
   * @param rainMm how much fell, mm
   * @param irrigationHours hours since irrigation; NaN when not recorded or none since the rain
   * @param irrigationMm how much was given, mm; 0 when there was none
   * @param et0MmDay reference evapotranspiration since, mm a day
   */
  public record Water(
      double rainHours,
      double rainMm,
      double irrigationHours,
      double irrigationMm,
      double et0MmDay) {}

  /**
   * @param dew y or n; empty when not recorded
   * @param soilC soil temperature, degrees Celsius; NaN when not recorded
   * @param conductivityDsM bulk electrical conductivity, dS/m; NaN when not recorded
   * @param maintenance mowing, aeration, topdressing, wetting agent, with dates; empty when not
   *     recorded
   * @param note anything else
   */
  public record Ground(
      String dew, double soilC, double conductivityDsM, String maintenance, String note) {}

  /** Whether the record is about this green in this survey. */
  public boolean isOf(String survey, String green) {
    return surveyId.equals(survey) && (greenId.isEmpty() || greenId.equals(green));
  }
}
