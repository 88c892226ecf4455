package org.mottle.engine.position;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.mottle.engine.check.Check;
import org.mottle.engine.variogram.VariogramModel;

/**
 * The semivariance to expect between two places when the separation recorded, of length h, is wrong
 * by a Gaussian displacement d of standard deviation s along each axis: E gamma(|h + d|), the
 * modified covariance of Cressie & Kornak (2003, Statistical Science 18, 436-456).
 *
 * <p>|h + d| has the density of Rice, r/s² exp(-(r² + h²)/2s²) I0(r h/s²), so that one integral of
 * the covariance C remains: over r within 6 s of h, between the kinks at 0 and at the lag where C
 * ends, by 20 Gauss-Legendre nodes. Error below 1e-7 of the partial sill. Costs 20 evaluations of
 * the model, of an exponential and of the Bessel function. Isotropic models that level off only.
 * Immutable.
 */
public final class DisplacedSemivariance {
  /** Beyond this many standard deviations a displacement is left out; once in 1e8. */
  private static final double FURTHEST = 6;

  /** Where the correlation falls below this, the covariance has ended. */
  private static final double NEGLIGIBLE = 1e-10;

  /** Below this lag, in standard deviations, nodes crowd at 0, where a rough Matérn is roughest. */
  private static final double GRADED = 3;

  private static final int NODES = 20;
  private static final GaussIntegrator LEGENDRE = new GaussIntegratorFactory().legendre(NODES);
  private static final double[] NODE = new double[NODES];
  private static final double[] WEIGHT = new double[NODES];

  static {
    for (int k = 0; k < NODES; k++) {
      NODE[k] = LEGENDRE.getPoint(k);
      WEIGHT[k] = LEGENDRE.getWeight(k);
    }
  }

  private final VariogramModel unit;
  private final double partialSill;
  private final boolean ends;
  private final double reach;

  private DisplacedSemivariance(VariogramModel model) {
    this.unit = model.with(1, model.range());
    this.partialSill = model.partialSill();
    this.ends = unit.semivariance(model.range()) == 1;
    this.reach = ends ? model.range() : reachOf(unit);
  }

  /**
   * @throws IllegalArgumentException for a model without a sill
   */
  public static DisplacedSemivariance of(VariogramModel model) {
    if (!model.bounded()) {
      throw new IllegalArgumentException(
          "position error needs a variogram that levels off, was "
              + model
              + "; use a bounded model");
    }
    return new DisplacedSemivariance(model);
  }

  private static double reachOf(VariogramModel unit) {
    double reach = unit.range();
    while (1 - unit.semivariance(reach) > NEGLIGIBLE) {
      reach *= 1.25;
    }
    return reach;
  }

  /** Whether the model reaches its sill at its range, with a kink there. */
  boolean ends() {
    return ends;
  }

  /** Lag from which on the model is at its sill, m. */
  double reach() {
    return reach;
  }

  /** Lag from which on the displaced model is at its sill, m. */
  double reach(double sdM) {
    return reach + FURTHEST * sdM;
  }

  double partialSill() {
    return partialSill;
  }

  /**
   * Expected semivariance, value².
   *
   * @param sdM standard deviation of the displacement per axis, m; 0 for the model itself
   * @param lag length h of the separation recorded, m
   */
  public double semivariance(double sdM, double lag) {
    double[] share = new double[1];
    shares(sdM, new double[] {lag}, 1, share);
    return partialSill * share[0];
  }

  /** Shares of the partial sill at many lags, all in one pass over the model. */
  void shares(double sdM, double[] lag, int count, double[] share) {
    Check.atLeast("standard deviation of a displacement", sdM, 0, "m");
    if (sdM == 0) {
      for (int i = 0; i < count; i++) {
        share[i] = unit.semivariance(lag[i]);
      }
      return;
    }
    double[] squared = new double[count * NODES];
    double[] density = new double[count * NODES];
    for (int i = 0; i < count; i++) {
      nodes(sdM, lag[i], i * NODES, squared, density);
    }
    double[] gamma = new double[count * NODES];
    unit.addSemivariances(squared, gamma.length, gamma);
    for (int i = 0; i < count; i++) {
      double correlation = 0;
      for (int k = i * NODES; k < (i + 1) * NODES; k++) {
        correlation += density[k] * (1 - gamma[k]);
      }
      share[i] = 1 - correlation;
    }
  }

  /** Squared lags and the probabilities they stand for; all zero beyond reach. */
  private void nodes(double sd, double lag, int at, double[] squared, double[] density) {
    double low = Math.max(0, lag - FURTHEST * sd);
    double high = Math.min(lag + FURTHEST * sd, reach);
    if (!(high > low)) {
      return;
    }
    boolean graded = !ends && low == 0 && lag < GRADED * sd;
    double middle = (low + high) / 2;
    double half = (high - low) / 2;
    double perSd = 1 / sd;
    double h = lag * perSd;
    for (int k = 0; k < NODES; k++) {
      double v = (1 + NODE[k]) / 2;
      double r = graded ? high * v * v : middle + half * NODE[k];
      double scaled = r * perSd;
      double off = scaled - h;
      squared[at + k] = r * r;
      density[at + k] =
          (graded ? high * v : half)
              * perSd
              * WEIGHT[k]
              * scaled
              * Math.exp(-0.5 * off * off)
              * ScaledBesselI0.at(scaled * h);
    }
  }
}
