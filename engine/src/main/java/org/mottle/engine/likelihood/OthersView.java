package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One of equally likely views of the surveys of one green that rest on the other greens of its pool
 * alone. Immutable; arrays are copied in and out.
 *
 * @param nugget variance of a station of one insertion at no distance, value²
 * @param sills what the sills may be
 * @param correlation [n][n] of the structure between the stations of all surveys, one survey after
 *     the other, position errors included, as if the surveys had seen one field
 */
public record OthersView(double nugget, List<Sills> sills, double[][] correlation) {

  /**
   * Sills of the surveys that go together: a green that varies more than others in one survey does
   * so in all.
   *
   * @param sill [surveys] value²
   * @param share probability; sums to 1 over all
   */
  public record Sills(double[] sill, double share) {
    public Sills {
      sill = sill.clone();
    }

    @Override
    public double[] sill() {
      return sill.clone();
    }
  }

  /** Less likely sills are left out. */
  private static final double LEAST_SHARE = 1e-5;

  /** Nodes taken together. */
  private static final int STRIDE = 2;

  public OthersView {
    sills = List.copyOf(sills);
    correlation = copy(correlation);
  }

  /**
   * @param node [.] sills, value²
   * @param density [surveys][.] of each survey's sill over the nodes, sum 1
   */
  static OthersView of(double nugget, double[] node, double[][] density, double[][] correlation) {
    List<Sills> sills = new ArrayList<>();
    double below = 0;
    for (int k = 0; k < node.length; k += STRIDE) {
      double share = 0;
      double log = 0;
      for (int i = k; i < Math.min(node.length, k + STRIDE); i++) {
        share += density[0][i];
        log += density[0][i] * Math.log(node[i]);
      }
      if (share > LEAST_SHARE) {
        double[] sill = new double[density.length];
        sill[0] = Math.exp(log / share);
        for (int s = 1; s < sill.length; s++) {
          sill[s] = quantile(node, density[s], below + share / 2);
        }
        sills.add(new Sills(sill, share));
      }
      below += share;
    }
    return new OthersView(nugget, sills, correlation);
  }

  private static double quantile(double[] node, double[] density, double share) {
    int at = 0;
    double left = share;
    while (at < node.length - 1 && left > density[at]) {
      left -= density[at++];
    }
    return node[at];
  }

  private static double[][] copy(double[][] matrix) {
    return Arrays.stream(matrix).map(double[]::clone).toArray(double[][]::new);
  }

  @Override
  public double[][] correlation() {
    return copy(correlation);
  }
}
