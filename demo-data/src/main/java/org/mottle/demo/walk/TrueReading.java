package org.mottle.demo.walk;

import org.mottle.demo.site.Point;

/**
 * One line of the truth beside a line of a file.
 *
 * @param greenId as it truly is
 * @param logged as the file has it
 * @param place where the probe truly was, EPSG:32628
 * @param soil what was there
 */
public record TrueReading(String greenId, LoggedReading logged, Point place, Soil soil) {

  /**
   * @param startPct moisture of the ground at the start of the survey, without micro scatter
   * @param microPct scatter of this insertion
   * @param probePct error of the probe in this insertion
   */
  public record Soil(double startPct, double microPct, double probePct) {}
}
