package org.mottle.engine.variogram;

/**
 * Geometric anisotropy: the range is longest along {@code major} and shorter by {@code ratio}
 * across it.
 *
 * @param major azimuth of the longest range
 * @param ratio minor range / major range, in (0, 1]
 */
public record Anisotropy(Azimuth major, double ratio) {

  public static final Anisotropy NONE = new Anisotropy(Azimuth.NORTH, 1);

  public Anisotropy {
    if (!(ratio > 0 && ratio <= 1)) {
      throw new IllegalArgumentException("anisotropy ratio must be in (0, 1], was " + ratio);
    }
  }

  public boolean isotropic() {
    return ratio == 1;
  }

  /** Squared lag on the scale of the major range, m²: along² + (across / ratio)². */
  public double squaredLag(double dx, double dy) {
    if (isotropic()) {
      return dx * dx + dy * dy;
    }
    double sin = Math.sin(major.radians());
    double cos = Math.cos(major.radians());
    double along = dx * sin + dy * cos;
    double across = (dx * cos - dy * sin) / ratio;
    return along * along + across * across;
  }
}
