package org.mottle.engine.neighbour;

import org.mottle.engine.check.Check;

/**
 * Which observations take part in an estimate: the nearest ones, within a radius. Distance is that
 * on the ground, also under an anisotropic model; an observation exactly at the radius takes part;
 * of two at the same distance the one with the smaller row number is the nearer.
 *
 * @param nearest how many at most; {@link Integer#MAX_VALUE} for no limit
 * @param radius m; infinite for no limit
 */
public record Neighbourhood(int nearest, double radius) {

  /** Every observation, wherever it lies. */
  public static final Neighbourhood ALL =
      new Neighbourhood(Integer.MAX_VALUE, Double.POSITIVE_INFINITY);

  public Neighbourhood {
    if (nearest < 1) {
      throw new IllegalArgumentException("nearest must be at least 1, was " + nearest);
    }
    if (radius != Double.POSITIVE_INFINITY) {
      Check.above("radius", radius, 0, "m");
    }
  }

  public static Neighbourhood nearest(int count) {
    return new Neighbourhood(count, Double.POSITIVE_INFINITY);
  }

  public Neighbourhood within(double newRadius) {
    return new Neighbourhood(nearest, newRadius);
  }

  /** Whether every one of {@code observations} takes part everywhere. */
  public boolean global(int observations) {
    return nearest >= observations && radius == Double.POSITIVE_INFINITY;
  }
}
