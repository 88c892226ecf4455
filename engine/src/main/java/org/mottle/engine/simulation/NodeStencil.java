package org.mottle.engine.simulation;

import java.util.Arrays;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;

/**
 * The value of a field between its nodes, by kriging from the 4 x 4 nodes round the place, and the
 * variance that the weighted sum lacks. With these nodes the sum and noise of that variance have
 * the covariance that the field has there (simple kriging), or where increments are enough the
 * variogram (ordinary kriging: the weights sum to 1, so that a constant or a plane in the field
 * goes through).
 *
 * <p>With K [16 x 16] the covariance of the nodes and c [16] that with the place, w0 = K⁻¹c, s =
 * 1ᵀK⁻¹1 and m = 1 - 1ᵀw0 (0 for simple kriging), the weights are w0 + (m/s) K⁻¹1 and the variance
 * lacking is C(0) - cᵀw0 + m²/s. K is factored once, whatever the place. Immutable, shared by
 * threads.
 */
final class NodeStencil {
  static final int SIDE = 4;
  static final int NODES = SIDE * SIDE;

  /**
   * Added to the diagonal of K, as a share of the sill, so that smooth covariances can be factored.
   */
  private static final double ON_NODE = 1e-9;

  private static final double RIDGE = 1e-10;

  private final StructuralCovariance covariance;
  private final double spacing;
  private final boolean incrementsOnly;
  private final CholeskyFactor factor;
  private final double[] ones;
  private final double onesSum;

  /** One place amid its nodes. */
  static final class Place {
    final double[] covariance = new double[NODES];
    final double[] simple = new double[NODES];
    final double[] weight = new double[NODES];

    /** What the simple weights lack to 1; 0 where they need not sum to it. */
    double missing;

    /** Variance that the weighted sum lacks, value². */
    double residual;
  }

  NodeStencil(StructuralCovariance covariance, double spacing, boolean incrementsOnly) {
    this.covariance = covariance;
    this.spacing = spacing;
    this.incrementsOnly = incrementsOnly;
    this.factor = factor();
    this.ones = new double[NODES];
    Arrays.fill(ones, 1);
    factor.solve(ones);
    double sum = 0;
    for (double v : ones) {
      sum += v;
    }
    this.onesSum = sum;
  }

  private CholeskyFactor factor() {
    for (double ridge = RIDGE; ; ridge *= 100) {
      double[][] upper = new double[NODES][NODES];
      for (int i = 0; i < NODES; i++) {
        for (int j = i; j < NODES; j++) {
          upper[i][j] =
              covariance.at(
                  (j % SIDE - i % SIDE) * spacing, (double) -(j / SIDE - i / SIDE) * spacing);
        }
        // a field without variance still gets weights
        upper[i][i] += covariance.sill() == 0 ? 1 : ridge * covariance.sill();
      }
      if (CholeskyFactor.factor(upper) instanceof Factorisation.Factored factored) {
        return factored.factor();
      }
    }
  }

  /**
   * Weights of the nodes at columns -1 to 2 (k % 4) and rows -1 to 2 (k / 4) from the node to the
   * upper left of the place.
   *
   * @param fx columns from that node to the place, in [0, 1]
   * @param fy rows from that node to the place, in [0, 1]
   */
  void place(double fx, double fy, Place into) {
    double[] c = into.covariance;
    for (int k = 0; k < NODES; k++) {
      c[k] = covariance.at((k % SIDE - 1 - fx) * spacing, (fy + 1 - k / SIDE) * spacing);
    }
    if (onNode(fx) && onNode(fy)) {
      takeNode((int) Math.rint(fx) + 1 + SIDE * ((int) Math.rint(fy) + 1), into);
    } else {
      krige(c, into);
    }
  }

  private static boolean onNode(double f) {
    return Math.abs(f - Math.rint(f)) < ON_NODE;
  }

  private static void takeNode(int node, Place into) {
    Arrays.fill(into.simple, 0);
    into.simple[node] = 1;
    System.arraycopy(into.simple, 0, into.weight, 0, NODES);
    into.missing = 0;
    into.residual = 0;
  }

  private void krige(double[] c, Place into) {
    System.arraycopy(c, 0, into.simple, 0, NODES);
    factor.solve(into.simple);
    double sum = 0;
    double explained = 0;
    for (int k = 0; k < NODES; k++) {
      sum += into.simple[k];
      explained += into.simple[k] * c[k];
    }
    into.missing = incrementsOnly ? 1 - sum : 0;
    double multiplier = into.missing / onesSum;
    for (int k = 0; k < NODES; k++) {
      into.weight[k] = into.simple[k] + multiplier * ones[k];
    }
    into.residual = Math.max(0, covariance.sill() - explained + into.missing * multiplier);
  }

  /** Covariance of what two places amid the same nodes lack, (dx, dy) apart, value². */
  double residualCovariance(Place a, Place b, double dx, double dy) {
    double explained = 0;
    for (int k = 0; k < NODES; k++) {
      explained += a.simple[k] * b.covariance[k];
    }
    return covariance.at(dx, dy) - explained + a.missing * b.missing / onesSum;
  }
}
