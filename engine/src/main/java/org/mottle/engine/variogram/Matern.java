package org.mottle.engine.variogram;

import java.util.Objects;
import org.apache.commons.math3.special.Gamma;
import org.mottle.engine.check.Check;

/**
 * Matérn: c (1 - (h/a)^k K_k(h/a) / (2^(k-1) Gamma(k))), K_k the modified Bessel function of the
 * second kind (Stein 1999; Webster & Oliver 2007, ch. 5). With k = 0.5 it is the exponential; 0.5,
 * 1.5 and 2.5 have closed forms, which are used. The range a is that of the formula: authors who
 * write 2 sqrt(k) h/a or sqrt(2 k) h/a mean another one.
 *
 * <p>Immutable. {@link #addSemivariances} works from a table, made when it is first called and
 * shared by the models made with {@link #with}; it agrees with {@link #semivariance} to 1e-13 of
 * the sill.
 */
public final class Matern implements VariogramModel {
  private static final double MOST_KAPPA = 100;
  // beyond, the correlation is below 1e-300 for any kappa allowed
  private static final double FAR = 1500;

  private final double partialSill;
  private final double range;
  private final double kappa;
  private final Shared shared;

  /** What models of one kappa have in common. */
  private static final class Shared {
    private final double logFactor;
    // published safely: every thread that makes one makes the same
    private volatile MaternTable table;

    Shared(double logFactor) {
      this.logFactor = logFactor;
    }
  }

  /**
   * @param partialSill c, value²
   * @param range a, m
   * @param kappa smoothness k, in (0, 100]
   */
  public Matern(double partialSill, double range, double kappa) {
    this(partialSill, range, kappa, new Shared(logFactor(kappa)));
  }

  private Matern(double partialSill, double range, double kappa, Shared shared) {
    this.partialSill = Check.atLeast("partialSill", partialSill, 0, "value²");
    this.range = Check.above("range", range, 0, "m");
    this.kappa = kappa;
    this.shared = shared;
  }

  /** log of 2^(k-1) Gamma(k); 0 where a closed form makes it idle. */
  private static double logFactor(double kappa) {
    Check.above("kappa", kappa, 0, "");
    Check.within("kappa", kappa, 0, MOST_KAPPA, "");
    return closed(kappa) ? 0 : (kappa - 1) * Math.log(2) + Gamma.logGamma(kappa);
  }

  private static boolean closed(double kappa) {
    return kappa == 0.5 || kappa == 1.5 || kappa == 2.5;
  }

  @Override
  public double partialSill() {
    return partialSill;
  }

  @Override
  public double range() {
    return range;
  }

  /** Smoothness k. */
  public double kappa() {
    return kappa;
  }

  @Override
  public String type() {
    return "matern";
  }

  @Override
  public double practicalRange() {
    Matern unit = new Matern(1, 1, kappa);
    double low = 0;
    double high = 1;
    while (unit.semivariance(high) < 0.95) {
      low = high;
      high *= 2;
    }
    while (true) {
      double middle = (low + high) / 2;
      if (middle <= low || middle >= high) {
        return range * high;
      }
      if (unit.semivariance(middle) < 0.95) {
        low = middle;
      } else {
        high = middle;
      }
    }
  }

  @Override
  public double semivariance(double lag) {
    return partialSill * structured(lag / range);
  }

  @Override
  public void addSemivariances(double[] squaredLag, int count, double[] sum) {
    MaternTable table = table();
    double scale = 1 / (range * range);
    for (int i = 0; i < count; i++) {
      sum[i] += partialSill * table.at(squaredLag[i] * scale);
    }
  }

  private MaternTable table() {
    MaternTable made = shared.table;
    if (made == null) {
      made = new MaternTable(this::structured);
      shared.table = made;
    }
    return made;
  }

  @Override
  public Matern with(double newPartialSill, double newRange) {
    return new Matern(newPartialSill, newRange, kappa, shared);
  }

  /** Share of the sill at r = h/a. */
  private double structured(double r) {
    if (r == 0) {
      return 0;
    }
    if (r > FAR) {
      return 1;
    }
    if (kappa == 0.5) {
      return -Math.expm1(-r);
    }
    if (kappa == 1.5) {
      return Math.max(0, 1 - (1 + r) * Math.exp(-r));
    }
    if (kappa == 2.5) {
      return Math.max(0, 1 - (1 + r + r * r / 3) * Math.exp(-r));
    }
    double log = kappa * Math.log(r) + BesselK.log(kappa, r) - shared.logFactor;
    // + 0.0 so that nought is not negative
    return -Math.expm1(Math.min(0, log)) + 0.0;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Matern m
        && Double.compare(partialSill, m.partialSill) == 0
        && Double.compare(range, m.range) == 0
        && Double.compare(kappa, m.kappa) == 0;
  }

  @Override
  public int hashCode() {
    return Objects.hash(partialSill, range, kappa);
  }

  @Override
  public String toString() {
    return "Matern[partialSill=" + partialSill + ", range=" + range + ", kappa=" + kappa + "]";
  }
}
