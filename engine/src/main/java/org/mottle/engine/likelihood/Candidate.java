package org.mottle.engine.likelihood;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.variogram.VariogramModel;

/**
 * A shape of the correlation that is tried. Immutable.
 *
 * @param shape a shape that levels off
 * @param kappa smoothness, of the Matérn alone
 */
public record Candidate(Shape shape, double kappa) {

  /** Spherical, exponential (the Matérn of smoothness 0.5), and a smoother Matérn. */
  public static final List<Candidate> DEFAULTS =
      List.of(
          new Candidate(Shape.SPHERICAL, 0.5),
          new Candidate(Shape.EXPONENTIAL, 0.5),
          new Candidate(Shape.MATERN, 1.5));

  public Candidate {
    if (!shape.model(1, 1, kappa).bounded()) {
      throw new IllegalArgumentException(
          "the likelihood needs a variogram that levels off, was " + shape);
    }
  }

  public static Candidate of(Shape shape) {
    return new Candidate(shape, shape == Shape.MATERN ? 1.5 : 0.5);
  }

  /** The model of a sill, value², that reaches 95 % of it at a lag, m. */
  public VariogramModel model(double sill, double practicalRange) {
    double unit = shape.model(1, 1, kappa).practicalRange();
    return shape.model(sill, practicalRange / unit, kappa);
  }

  /** As it stands in tables: matern 1.5, spherical, ... */
  public String label() {
    String name = shape.name().toLowerCase(Locale.ROOT);
    return shape == Shape.MATERN ? name + " " + kappa : name;
  }
}
