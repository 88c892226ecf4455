package org.mottle.engine.fit;

/**
 * One structure to be fitted: its shape and what may be done with each parameter.
 *
 * @param shape the formula
 * @param partialSill c, value²
 * @param range parameter a of the formula along the major axis, m; the exponent of a power model
 * @param kappa smoothness of a Matérn model; idle otherwise
 * @param azimuth direction of the longest range, degrees in [0, 180]
 * @param ratio minor range / major range, in (0, 1]
 */
public record StructureSpec(
    Shape shape,
    Parameter partialSill,
    Parameter range,
    Parameter kappa,
    Parameter azimuth,
    Parameter ratio) {

  public StructureSpec {
    if (shape != Shape.MATERN) {
      kappa = Parameter.fixed(1);
    }
    if (range.isFixed() && range.lower() == 0 && shape != Shape.LINEAR) {
      throw new IllegalArgumentException(
          "only a linear structure can have a range fixed at 0, not " + shape);
    }
    if (ratio.isFixed() && !(ratio.lower() > 0 && ratio.lower() <= 1)) {
      throw new IllegalArgumentException("ratio must be in (0, 1], was " + ratio.lower());
    }
    if (azimuth.isFixed() && azimuth.lower() > 180) {
      throw new IllegalArgumentException("azimuth must be in [0, 180], was " + azimuth.lower());
    }
    if (kappa.isFixed() && kappa.lower() == 0) {
      throw new IllegalArgumentException("kappa must be > 0, was " + kappa.lower());
    }
  }

  /** Isotropic, sill and range free; a Matérn with kappa 1.5; a linear model unbounded. */
  public static StructureSpec of(Shape shape) {
    return new StructureSpec(
        shape,
        Parameter.FREE,
        shape == Shape.LINEAR ? Parameter.fixed(0) : Parameter.FREE,
        Parameter.fixed(1.5),
        Parameter.fixed(0),
        Parameter.fixed(1));
  }

  public StructureSpec withPartialSill(Parameter newPartialSill) {
    return new StructureSpec(shape, newPartialSill, range, kappa, azimuth, ratio);
  }

  public StructureSpec withRange(Parameter newRange) {
    return new StructureSpec(shape, partialSill, newRange, kappa, azimuth, ratio);
  }

  public StructureSpec withKappa(Parameter newKappa) {
    return new StructureSpec(shape, partialSill, range, newKappa, azimuth, ratio);
  }

  /** Needs a variogram of several directions unless both are fixed. */
  public StructureSpec withAnisotropy(Parameter newAzimuth, Parameter newRatio) {
    return new StructureSpec(shape, partialSill, range, kappa, newAzimuth, newRatio);
  }

  boolean isotropic() {
    return ratio.isFixed() && ratio.lower() == 1;
  }
}
