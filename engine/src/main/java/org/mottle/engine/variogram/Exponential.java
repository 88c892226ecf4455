package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/** Exponential: c (1 - exp(-h/a)); 95 % at 2.9957 a (Webster & Oliver 2007, ch. 5). */
public record Exponential(double partialSill, double range) implements VariogramModel {

  public Exponential {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "exponential";
  }

  @Override
  public double practicalRange() {
    return -Math.log(0.05) * range;
  }

  @Override
  public double semivariance(double lag) {
    return -partialSill * Math.expm1(-lag / range);
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double c = partialSill;
    double scale = -ScaledExp.SCALE / range;
    for (int i = 0; i < count; i++) {
      double t = Math.max(Math.sqrt(squaredLag[i]) * scale, ScaledExp.LOWEST);
      sum[i] -= c * ScaledExp.minusOne(t);
    }
  }

  @Override
  public Exponential with(double newPartialSill, double newRange) {
    return new Exponential(newPartialSill, newRange);
  }
}
