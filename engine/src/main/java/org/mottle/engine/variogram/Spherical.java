package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/** Spherical: c (3/2 r - 1/2 r³) for r = h/a < 1, then c (Webster & Oliver 2007, ch. 5). */
public record Spherical(double partialSill, double range) implements VariogramModel {

  public Spherical {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "spherical";
  }

  @Override
  public double practicalRange() {
    return range;
  }

  @Override
  public double semivariance(double lag) {
    double r = lag / range;
    return r < 1 ? partialSill * r * (1.5 - 0.5 * r * r) : partialSill;
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double c = partialSill;
    double perRange = 1 / range;
    for (int i = 0; i < count; i++) {
      double r = Math.min(Math.sqrt(squaredLag[i]) * perRange, 1);
      sum[i] += c * (r * (1.5 - 0.5 * r * r));
    }
  }

  @Override
  public Spherical with(double newPartialSill, double newRange) {
    return new Spherical(newPartialSill, newRange);
  }
}
