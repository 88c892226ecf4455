package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/**
 * Circular: c (1 - (2/pi) (acos r - r sqrt(1 - r²))) for r = h/a < 1, then c (Webster & Oliver
 * 2007, ch. 5).
 */
public record Circular(double partialSill, double range) implements VariogramModel {

  /** 1 but for rounding, so that the semivariance at lag 0 is exactly 0. */
  private static final double AT_ONE = smoothPart(1);

  public Circular {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "circular";
  }

  @Override
  public double practicalRange() {
    return range;
  }

  @Override
  public double semivariance(double lag) {
    double r = lag / range;
    if (r >= 1) {
      return partialSill;
    }
    // asin for 1 - (2/pi) acos: no cancellation at short lags
    return partialSill * (2 / Math.PI) * (Math.asin(r) + r * Math.sqrt((1 - r) * (1 + r)));
  }

  /**
   * {@inheritDoc}
   *
   * <p>With s = 1 - r the correlation is s^1.5 g(s), g smooth on [0, 1]; here g is a polynomial in
   * 2 s - 1, the Chebyshev interpolant of degree 17 worked out with 50 digits. Within 1e-15 of the
   * partial sill, and free of the arc sine, which has no vector instruction.
   */
  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double c = partialSill;
    double perRange = 1 / range;
    for (int i = 0; i < count; i++) {
      double s = 1 - Math.min(Math.sqrt(squaredLag[i]) * perRange, 1);
      sum[i] += c * (AT_ONE - s * Math.sqrt(s) * smoothPart(2 * s - 1));
    }
  }

  /** g as above, t = 2 s - 1. */
  private static double smoothPart(double t) {
    double g = -3.1112491627037324e-12;
    g = Math.fma(g, t, -1.0778152191898491e-11);
    g = Math.fma(g, t, -2.3673219699814047e-11);
    g = Math.fma(g, t, -8.452689239590027e-11);
    g = Math.fma(g, t, -3.319421170673405e-10);
    g = Math.fma(g, t, -1.212942982787599e-09);
    g = Math.fma(g, t, -4.4814427848648566e-09);
    g = Math.fma(g, t, -1.7003372928575843e-08);
    g = Math.fma(g, t, -6.612178244595573e-08);
    g = Math.fma(g, t, -2.649041501718955e-07);
    g = Math.fma(g, t, -1.1023540242429571e-06);
    g = Math.fma(g, t, -4.820198795141472e-06);
    g = Math.fma(g, t, -2.254626055400008e-05);
    g = Math.fma(g, t, -0.00011623474094004388);
    g = Math.fma(g, t, -0.000698837433216929);
    g = Math.fma(g, t, -0.005589066336873583);
    g = Math.fma(g, t, -0.09948832042832373);
    g = Math.fma(g, t, 1.1059212819304507);
    return g;
  }

  @Override
  public Circular with(double newPartialSill, double newRange) {
    return new Circular(newPartialSill, newRange);
  }
}
