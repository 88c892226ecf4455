package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;

/**
 * One set of the parameters that all samples share.
 *
 * @param candidate shape
 * @param practicalRange m
 * @param nugget value²
 * @param sills [survey][node] logarithms of the density over the sill of each survey
 */
record SharedDraw(Candidate candidate, double practicalRange, double nugget, double[][] sills) {

  /** Fraction of the golden ratio, whose multiples spread evenly over (0, 1). */
  static final double GOLDEN = 0.6180339887498949;

  private record Node(int candidate, int range, int nugget, double weight) {}

  /**
   * Draws at equal steps of the cumulated weight over all nodes in their order, each moved evenly
   * inside its cell: no chance enters, and a few draws spread over the surface as many would.
   *
   * @param weight of the candidates
   */
  static List<SharedDraw> of(Posterior posterior, PoolSurface surface, double[] weight, int count) {
    List<Node> nodes = nodes(posterior, surface, weight);
    double total = nodes.stream().mapToDouble(Node::weight).sum();
    List<SharedDraw> draws = new ArrayList<>();
    double cumulated = 0;
    int at = -1;
    for (int d = 0; d < count; d++) {
      double wanted = (d + 0.5) / count * total;
      while (at < nodes.size() - 1 && (at < 0 || cumulated < wanted)) {
        cumulated += nodes.get(++at).weight;
      }
      draws.add(draw(nodes.get(at), posterior, surface, d));
    }
    return draws;
  }

  private static List<Node> nodes(Posterior posterior, PoolSurface surface, double[] weight) {
    List<Node> nodes = new ArrayList<>();
    Axes axes = surface.axes();
    for (int c = 0; c < weight.length; c++) {
      double top = Double.NEGATIVE_INFINITY;
      for (int r = 0; r < axes.range().length; r++) {
        for (int n = 0; n < axes.nugget().length; n++) {
          top = Math.max(top, posterior.integrated(c, r, n));
        }
      }
      List<Node> own = new ArrayList<>();
      for (int r = 0; r < axes.range().length; r++) {
        for (int n = 0; n < axes.nugget().length; n++) {
          own.add(new Node(c, r, n, Math.exp(posterior.integrated(c, r, n) - top)));
        }
      }
      double sum = own.stream().mapToDouble(Node::weight).sum();
      for (Node node : own) {
        nodes.add(new Node(c, node.range, node.nugget, weight[c] * node.weight / sum));
      }
    }
    return nodes;
  }

  private static SharedDraw draw(Node node, Posterior posterior, PoolSurface surface, int d) {
    Axes axes = surface.axes();
    double[][] sills = new double[surface.surveys().size()][];
    for (int s = 0; s < sills.length; s++) {
      sills[s] = posterior.sills(node.candidate, node.range, node.nugget, s);
    }
    return new SharedDraw(
        surface.candidates().get(node.candidate),
        moved(axes.range(), node.range, fraction((d + 1) * GOLDEN)),
        moved(axes.nugget(), node.nugget, fraction((d + 1) * GOLDEN * GOLDEN)),
        sills);
  }

  static double fraction(double v) {
    return v - Math.floor(v);
  }

  /** A value inside the cell of a node, evenly in the logarithm. */
  static double moved(double[] axis, int node, double share) {
    double step = Math.log(axis[axis.length - 1] / axis[0]) / (axis.length - 1);
    return axis[node] * Math.exp((share - 0.5) * step);
  }
}
