package org.mottle.engine.variogram;

/**
 * Power: c h^p with 0 < p < 2; {@code range} holds the exponent p (Webster & Oliver 2007, ch. 5).
 * Unbounded.
 *
 * @param partialSill coefficient c, value² per m^p
 * @param range exponent p, in (0, 2)
 */
public record Power(double partialSill, double range) implements VariogramModel {

  public Power {
    org.mottle.engine.check.Check.atLeast("partialSill", partialSill, 0, "value²");
    if (!(range > 0 && range < 2)) {
      throw new IllegalArgumentException(
          "exponent of a power model must be in (0, 2), was " + range);
    }
  }

  @Override
  public String type() {
    return "power";
  }

  @Override
  public boolean bounded() {
    return false;
  }

  @Override
  public double practicalRange() {
    return Double.POSITIVE_INFINITY;
  }

  @Override
  public double semivariance(double lag) {
    return partialSill * Math.pow(lag, range);
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double half = range / 2;
    for (int i = 0; i < count; i++) {
      sum[i] += partialSill * Math.pow(squaredLag[i], half);
    }
  }

  @Override
  public Power with(double newPartialSill, double newExponent) {
    return new Power(newPartialSill, newExponent);
  }
}
