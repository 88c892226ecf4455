package org.mottle.engine.fit;

import org.mottle.engine.variogram.Circular;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Linear;
import org.mottle.engine.variogram.Matern;
import org.mottle.engine.variogram.Pentaspherical;
import org.mottle.engine.variogram.Power;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.VariogramModel;

/** The shapes a structure can be fitted with. */
public enum Shape {
  SPHERICAL,
  EXPONENTIAL,
  GAUSSIAN,
  MATERN,
  CIRCULAR,
  PENTASPHERICAL,
  /** Unbounded with range 0 (the default of a specification), bounded with a range. */
  LINEAR,
  /** Its range is the exponent. */
  POWER;

  /**
   * The model of this shape.
   *
   * @param kappa smoothness, of the Matérn alone
   */
  public VariogramModel model(double partialSill, double range, double kappa) {
    return switch (this) {
      case SPHERICAL -> new Spherical(partialSill, range);
      case EXPONENTIAL -> new Exponential(partialSill, range);
      case GAUSSIAN -> new Gaussian(partialSill, range);
      case MATERN -> new Matern(partialSill, range, kappa);
      case CIRCULAR -> new Circular(partialSill, range);
      case PENTASPHERICAL -> new Pentaspherical(partialSill, range);
      case LINEAR -> new Linear(partialSill, range);
      case POWER -> new Power(partialSill, range);
    };
  }
}
