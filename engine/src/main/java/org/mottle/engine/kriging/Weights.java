package org.mottle.engine.kriging;

import org.mottle.engine.check.Check;

/**
 * Kriging weights of n observations at m targets, with the estimates they give: value = sum over
 * the observations of weight times datum, plus a constant, which is (1 - sum of the weights) times
 * the mean where the mean is known and 0 elsewhere. The weights do not depend on the data, so that
 * other data at the same places cost one sum. Keeps n m numbers. Immutable, shared by threads.
 */
public final class Weights {
  private final Estimates estimates;

  /** [n][m]. */
  private final double[][] weight;

  private final double[] constant;

  /** Takes the arrays over: the caller lets go of them. */
  Weights(Estimates estimates, double[][] weight, double[] constant) {
    this.estimates = estimates;
    this.weight = weight;
    this.constant = constant;
  }

  public int observations() {
    return weight.length;
  }

  public int targets() {
    return constant.length;
  }

  /** Values, variances and status of the targets, as {@link Predictor#estimate} gives them. */
  public Estimates estimates() {
    return estimates;
  }

  /** Weight of observation {@code i} in the estimate at target {@code j}. */
  public double weight(int i, int j) {
    return weight[i][j];
  }

  /** What is added to the weighted sum at target {@code j}; 0 unless the mean is known. */
  public double constant(int j) {
    return constant[j];
  }

  /** [n][m] a copy: row i holds the weights of observation i at all targets. */
  public double[][] toArray() {
    double[][] copy = new double[weight.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = weight[i].clone();
    }
    return copy;
  }

  /**
   * Adds the weighted sums of the data to the targets [from, from + count), without the constant.
   *
   * @param datum [n] values, or differences of values
   * @param sum [at least count], its entry k for target from + k
   */
  public void addSums(double[] datum, int from, int count, double[] sum) {
    if (datum.length != weight.length) {
      throw new IllegalArgumentException(
          "there are " + datum.length + " data for the weights of " + weight.length);
    }
    Check.within("first target", from, 0, targets(), "");
    Check.within("number of targets", count, 0, targets() - from, "");
    for (int i = 0; i < datum.length; i++) {
      double d = datum[i];
      double[] row = weight[i];
      for (int k = 0; k < count; k++) {
        sum[k] += d * row[from + k];
      }
    }
  }

  /** Estimates [m] from other data at the places of the observations. */
  public double[] applyTo(double[] value) {
    double[] estimate = constant.clone();
    addSums(value, 0, targets(), estimate);
    return estimate;
  }
}
