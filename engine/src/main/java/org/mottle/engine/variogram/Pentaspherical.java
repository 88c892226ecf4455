package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/**
 * Pentaspherical: c (15/8 r - 5/4 r³ + 3/8 r⁵) for r = h/a < 1, then c (Webster & Oliver 2007, ch.
 * 5).
 */
public record Pentaspherical(double partialSill, double range) implements VariogramModel {

  public Pentaspherical {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "pentaspherical";
  }

  @Override
  public double practicalRange() {
    return range;
  }

  @Override
  public double semivariance(double lag) {
    double r = lag / range;
    double r2 = r * r;
    return r < 1 ? partialSill * r * (1.875 - r2 * (1.25 - 0.375 * r2)) : partialSill;
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double c = partialSill;
    double perRange = 1 / range;
    for (int i = 0; i < count; i++) {
      double r = Math.min(Math.sqrt(squaredLag[i]) * perRange, 1);
      double r2 = r * r;
      sum[i] += c * (r * (1.875 - r2 * (1.25 - 0.375 * r2)));
    }
  }

  @Override
  public Pentaspherical with(double newPartialSill, double newRange) {
    return new Pentaspherical(newPartialSill, newRange);
  }
}
