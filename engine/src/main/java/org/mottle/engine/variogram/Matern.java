package org.mottle.engine.variogram;

import org.mottle.engine.check.Check;

/**
 * Matérn: c (1 - (h/a)^k K_k(h/a) / (2^(k-1) Gamma(k))), K_k the modified Bessel function of the
 * second kind (Stein 1999).
 *
 * @param partialSill c, value²
 * @param range a, m
 * @param kappa smoothness k
 */
public record Matern(double partialSill, double range, double kappa) implements VariogramModel {

  public Matern {
    Check.atLeast("partialSill", partialSill, 0, "value²");
    Check.above("range", range, 0, "m");
    Check.above("kappa", kappa, 0, "");
  }

  @Override
  public String type() {
    return "matern";
  }

  @Override
  public double practicalRange() {
    double low = 0;
    double high = 1;
    while (new Matern(1, 1, kappa).semivariance(high) < 0.95) {
      high *= 2;
    }
    for (int i = 0; i < 100; i++) {
      double middle = (low + high) / 2;
      if (new Matern(1, 1, kappa).semivariance(middle) < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return range * (low + high) / 2;
  }

  @Override
  public double semivariance(double lag) {
    if (lag == 0) {
      return 0;
    }
    double r = lag / range;
    // K_k(r) = integral of exp(-r cosh t) cosh(k t), 0 to infinity (DLMF 10.32.9)
    double step = 1.0 / 64;
    double sum = 0.5 * Math.exp(-r);
    for (double t = step; r * Math.cosh(t) - kappa * t < 745; t += step) {
      sum += Math.exp(-r * Math.cosh(t)) * Math.cosh(kappa * t);
    }
    double log =
        kappa * Math.log(r)
            + Math.log(sum * step)
            - (kappa - 1) * Math.log(2)
            - org.apache.commons.math3.special.Gamma.logGamma(kappa);
    return -partialSill * Math.expm1(Math.min(0, log));
  }

  @Override
  public Matern with(double newPartialSill, double newRange) {
    return new Matern(newPartialSill, newRange, kappa);
  }
}
