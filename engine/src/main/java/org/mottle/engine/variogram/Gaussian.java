package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/** Gaussian: c (1 - exp(-(h/a)²)); 95 % at 1.7308 a (Webster & Oliver 2007, ch. 5). */
public record Gaussian(double partialSill, double range) implements VariogramModel {

  public Gaussian {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "gaussian";
  }

  @Override
  public double practicalRange() {
    return Math.sqrt(-Math.log(0.05)) * range;
  }

  @Override
  public double semivariance(double lag) {
    double r = lag / range;
    return -partialSill * Math.expm1(-r * r);
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double c = partialSill;
    double scale = -ScaledExp.SCALE / (range * range);
    for (int i = 0; i < count; i++) {
      double t = Math.max(squaredLag[i] * scale, ScaledExp.LOWEST);
      sum[i] -= c * ScaledExp.minusOne(t);
    }
  }

  @Override
  public Gaussian with(double newPartialSill, double newRange) {
    return new Gaussian(newPartialSill, newRange);
  }
}
