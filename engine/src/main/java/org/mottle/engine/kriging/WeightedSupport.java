package org.mottle.engine.kriging;

import org.mottle.engine.check.Check;

/** An irregular area as weighted points: the support of a mean. Weights sum to 1. Immutable. */
final class WeightedSupport {
  private final Targets points;
  private final double[] weight;

  private WeightedSupport(Targets points, double[] weight) {
    this.points = points;
    this.weight = weight;
  }

  static WeightedSupport of(Targets points, double[] weight) {
    if (weight.length != points.size()) {
      throw new IllegalArgumentException(
          "there are " + weight.length + " weights for " + points.size() + " points of an area");
    }
    double sum = 0;
    for (int k = 0; k < weight.length; k++) {
      sum += Check.atLeast("weight of point " + (k + 1), weight[k], 0, "");
    }
    Check.above("sum of the weights of an area", sum, 0, "");
    double[] scaled = new double[weight.length];
    for (int k = 0; k < weight.length; k++) {
      scaled[k] = weight[k] / sum;
    }
    return new WeightedSupport(points, scaled);
  }

  private Covariances.Placed placed(Covariances covariances) {
    return covariances.place(points.xArray(), points.yArray(), 0, points.size(), 0, 0);
  }

  /** Mean semivariance of each of the first n observations to the area. */
  double[] meanSemivariances(
      PositionedCovariances positioned, Covariances.Placed observations, int n) {
    Covariances.Placed placed = placed(positioned.exact());
    double[] squaredLag = new double[weight.length];
    double[] gamma = new double[weight.length];
    double[] mean = new double[n];
    for (int i = 0; i < n; i++) {
      positioned
          .toTarget(i)
          .semivariances(observations, i, placed, 0, weight.length, squaredLag, gamma);
      for (int k = 0; k < weight.length; k++) {
        mean[i] += weight[k] * gamma[k];
      }
    }
    return mean;
  }

  /** Mean semivariance within the area, each point with itself included. */
  double meanSemivariance(Covariances covariances) {
    Covariances.Placed placed = placed(covariances);
    return covariances.meanSemivariance(placed, weight, placed, weight);
  }

  /** Weighted means of the terms of a drift. */
  double[] meanTerms(DriftTerms terms) {
    double[] mean = new double[terms.count()];
    for (int t = 0; t < mean.length; t++) {
      for (int k = 0; k < weight.length; k++) {
        mean[t] += weight[k] * terms.of(points, t, k);
      }
    }
    return mean;
  }
}
