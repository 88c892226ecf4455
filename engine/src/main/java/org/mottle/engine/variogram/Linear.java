package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/**
 * Linear: with a range, c r for r = h/a < 1, then c (valid in one dimension only); with range 0 the
 * unbounded line c h, where c is the slope in value²/m (Webster & Oliver 2007, ch. 5).
 */
public record Linear(double partialSill, double range) implements VariogramModel {

  public Linear {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.atLeast("range", range, 0, "m");
  }

  @Override
  public String type() {
    return "linear";
  }

  @Override
  public boolean bounded() {
    return range > 0;
  }

  @Override
  public double practicalRange() {
    return bounded() ? range : Double.POSITIVE_INFINITY;
  }

  @Override
  public double semivariance(double lag) {
    if (!bounded()) {
      return partialSill * lag;
    }
    return lag < range ? partialSill * lag / range : partialSill;
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    double slope = bounded() ? partialSill / range : partialSill;
    double furthest = bounded() ? range : Double.MAX_VALUE;
    for (int i = 0; i < count; i++) {
      sum[i] += slope * Math.min(Math.sqrt(squaredLag[i]), furthest);
    }
  }

  @Override
  public Linear with(double newPartialSill, double newRange) {
    return new Linear(newPartialSill, newRange);
  }
}
