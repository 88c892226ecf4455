package org.mottle.engine.irrigation;

import java.util.Optional;
import org.mottle.engine.survey.Refusal;

/**
 * A scheduling coefficient, or why there is none.
 *
 * @param share of the area that the window has, as 0.05
 * @param value mean / mean of the driest window; NaN when refused
 * @param sideM side of the window, m
 * @param x centre of the driest window, east, m
 * @param y north, m
 * @param refusal why there is no value
 */
public record Scheduling(
    double share, double value, double sideM, double x, double y, Optional<Refusal> refusal) {

  static Scheduling refused(double share, String reason, String remedy) {
    return new Scheduling(
        share,
        Double.NaN,
        Double.NaN,
        Double.NaN,
        Double.NaN,
        Optional.of(new Refusal(reason, remedy)));
  }
}
