package org.mottle.engine.empirical;

import org.mottle.engine.check.Check;
import org.mottle.engine.variogram.Azimuth;

/**
 * Which separations count: those whose azimuth differs from {@code azimuth} by at most {@code
 * tolerance}, either sense. Boundaries are inclusive, rounding included (1e-12 of the cosine).
 *
 * @param azimuth clockwise from grid north
 * @param tolerance half the opening angle, degrees, in [0, 90]; 90 takes every direction
 */
public record Direction(Azimuth azimuth, double tolerance) {

  /** Every direction. */
  public static final Direction ALL = new Direction(Azimuth.NORTH, 90);

  public Direction {
    Check.within("tolerance of a direction", tolerance, 0, 90, "degrees");
  }

  public static Direction of(double azimuthDegrees, double toleranceDegrees) {
    return new Direction(new Azimuth(azimuthDegrees), toleranceDegrees);
  }

  public boolean omnidirectional() {
    return tolerance == 90;
  }

  /** Least |cosine| between a separation and the azimuth. */
  double leastCosine() {
    return Math.cos(Math.toRadians(tolerance)) - 1e-12;
  }
}
