package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/**
 * Circular: c (1 - (2/pi) (acos r - r sqrt(1 - r²))) for r = h/a < 1, then c (Webster & Oliver
 * 2007, ch. 5).
 */
public record Circular(double partialSill, double range) implements VariogramModel {

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

  @Override
  public Circular with(double newPartialSill, double newRange) {
    return new Circular(newPartialSill, newRange);
  }
}
