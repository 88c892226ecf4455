package org.mottle.engine.fit;

/**
 * What a fit may do with a parameter: hold it at a value, keep it between bounds, or choose it.
 * Bounds are inclusive.
 *
 * @param lower least value
 * @param upper greatest value, may be infinite; equal to {@code lower} for a fixed parameter
 */
public record Parameter(double lower, double upper) {

  /** Chosen by the fit. */
  public static final Parameter FREE = new Parameter(0, Double.POSITIVE_INFINITY);

  public Parameter {
    if (!(lower >= 0 && lower <= upper && lower < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "bounds of a parameter must be 0 <= lower <= upper, were " + lower + " and " + upper);
    }
  }

  public static Parameter fixed(double value) {
    return new Parameter(value, value);
  }

  public static Parameter between(double lower, double upper) {
    return new Parameter(lower, upper);
  }

  public boolean isFixed() {
    return lower == upper;
  }
}
