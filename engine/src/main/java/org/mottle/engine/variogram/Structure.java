package org.mottle.engine.variogram;

/**
 * A model with its own anisotropy, one term of a nested variogram.
 *
 * @param model shape, partial sill and range along the major axis
 * @param anisotropy direction and ratio of the ranges
 */
public record Structure(VariogramModel model, Anisotropy anisotropy) {

  public static Structure isotropic(VariogramModel model) {
    return new Structure(model, Anisotropy.NONE);
  }

  /** Semivariance of a separation, value². */
  public double semivariance(double dx, double dy) {
    return model.semivariance(Math.sqrt(anisotropy.squaredLag(dx, dy)));
  }
}
