package org.mottle.engine.empirical;

import org.mottle.engine.check.Check;

/**
 * One lag of an experimental variogram.
 *
 * @param pairs number of pairs
 * @param distance mean separation of the pairs, m; not the middle of the class
 * @param semivariance value²
 * @param direction the separations that were counted
 */
public record Lag(long pairs, double distance, double semivariance, Direction direction) {

  public Lag {
    if (pairs < 1) {
      throw new IllegalArgumentException("a lag needs at least 1 pair, had " + pairs);
    }
    Check.above("distance of a lag", distance, 0, "m");
    Check.atLeast("semivariance of a lag", semivariance, 0, "value²");
  }

  /** A lag of pairs in any direction. */
  public Lag(long pairs, double distance, double semivariance) {
    this(pairs, distance, semivariance, Direction.ALL);
  }
}
