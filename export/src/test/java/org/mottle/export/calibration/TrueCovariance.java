package org.mottle.export.calibration;

import java.util.List;
import java.util.function.Function;

/**
 * Kriging with the covariance of the generator: its model, nugget and the sill of every green in
 * every survey. What no survey can know, and so the mark the others are measured by. Slopes, edges
 * and faults are not in the covariance.
 *
 * @param positions whether the errors of position are known too; otherwise positions are taken as
 *     right
 */
record TrueCovariance(boolean positions) implements Method {

  @Override
  public String name() {
    return positions ? "true covariance and position error" : "true covariance";
  }

  @Override
  public Mapping map(List<GreenCase> course) {
    Function<GreenCase, MappedGreen> each = this::map;
    return new Mapping(course.stream().map(each).toList(), List.of());
  }

  private MappedGreen map(GreenCase green) {
    Known known = green.known();
    double jitter = positions ? known.jitterSd() : 0;
    double shift = positions ? known.shiftSd() : 0;
    return MappedGreen.of(
        green, new PositionKriging(green.stations(), known, jitter, shift).predict(green.cells()));
  }
}
