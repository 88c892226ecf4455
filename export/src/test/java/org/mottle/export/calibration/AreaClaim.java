package org.mottle.export.calibration;

import java.util.Optional;

/**
 * How much of a green is said to be beyond a limit, m².
 *
 * @param expected mean
 * @param interval from 5 to 95 %, where the method has one
 */
record AreaClaim(double expected, Optional<Span> interval) {

  /** The sum of the cells' probabilities; it needs no joint distribution, an interval does. */
  static AreaClaim ofProbabilities(double[] p, double cellM2) {
    double sum = 0;
    for (double each : p) {
      sum += each * cellM2;
    }
    return new AreaClaim(sum, Optional.empty());
  }
}
