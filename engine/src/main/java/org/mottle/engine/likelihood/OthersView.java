package org.mottle.engine.likelihood;

import java.util.Arrays;

/**
 * One of equally likely views of a sample that rest on the other samples of its pool alone.
 * Immutable; arrays are copied in and out.
 *
 * @param nugget variance of a station of one insertion at no distance, value²
 * @param sill [.] nodes of the sample's own sill, value²
 * @param share [.] probability of each node, sum 1
 * @param correlation [n][n] of the structure between the stations, their position errors included
 */
public record OthersView(double nugget, double[] sill, double[] share, double[][] correlation) {
  public OthersView {
    sill = sill.clone();
    share = share.clone();
    correlation = copy(correlation);
  }

  private static double[][] copy(double[][] matrix) {
    return Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
  }

  @Override
  public double[] sill() {
    return sill.clone();
  }

  @Override
  public double[] share() {
    return share.clone();
  }

  @Override
  public double[][] correlation() {
    return copy(correlation);
  }
}
