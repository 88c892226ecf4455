package org.mottle.engine.review;

import java.util.List;
import org.mottle.engine.survey.Reading;

/**
 * Everything that was brought back from the field.
 *
 * @param visits one a green and survey; older surveys first
 * @param controls readings of control stations, of any survey
 * @param elsewhere readings that lie where their green is not
 * @param before what was found when the readings were placed
 */
public record FieldRecord(
    List<GreenVisit> visits,
    List<Reading> controls,
    List<Elsewhere> elsewhere,
    List<Finding> before) {

  /**
   * @param reading as read; its green is what the file names
   * @param nearestGreen the green it lies in, or the nearest
   * @param distanceM from the outline of that green, m; 0 inside it
   */
  public record Elsewhere(Reading reading, String nearestGreen, double distanceM) {}

  public FieldRecord {
    visits = List.copyOf(visits);
    controls = List.copyOf(controls);
    elsewhere = List.copyOf(elsewhere);
    before = List.copyOf(before);
  }
}
