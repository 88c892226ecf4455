package org.mottle.engine.variogram;

/**
 * A direction on the ground without a sense: degrees clockwise from grid north, in [0, 180).
 *
 * @param degrees any finite angle; stored modulo 180
 */
public record Azimuth(double degrees) {

  public static final Azimuth NORTH = new Azimuth(0);

  public Azimuth {
    if (!Double.isFinite(degrees)) {
      throw new IllegalArgumentException("azimuth must be finite degrees, was " + degrees);
    }
    degrees = degrees % 180;
    if (degrees < 0) {
      degrees += 180;
    }
    // -1e-20 % 180 + 180 rounds to 180 itself; -0.0 is 0
    degrees = degrees >= 180 ? 0 : degrees + 0.0;
  }

  public double radians() {
    return Math.toRadians(degrees);
  }
}
