package org.mottle.engine.likelihood;

import java.util.ArrayList;
import java.util.List;

/**
 * One set of the parameters that all samples share.
 *
 * @param candidate shape
 * @param spread of a green's sill about its survey's
 * @param practicalRange m
 * @param nugget value²
 * @param sills [survey][node] logarithms of the density over the sill of each survey
 */
record SharedDraw(
    Candidate candidate,
    SillSpread spread,
    double practicalRange,
    double nugget,
    double[][] sills) {

  /**
   * Numbers whose multiples, modulo 1, spread evenly over a cube: powers of 1/g with g⁴ = g + 1,
   * the generalised golden ratio. One for the range, one for the nugget, one for a green's sill.
   */
  static final double[] EVEN = {0.8191725133961645, 0.6710436067037893, 0.5497004779019703};

  private record Node(int form, int range, int nugget, double weight) {}

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

  /** All nodes; those of a candidate, of all its forms, sum to its weight. */
  private static List<Node> nodes(Posterior posterior, PoolSurface surface, double[] weight) {
    List<Node> nodes = new ArrayList<>();
    int forms = surface.forms().size() / weight.length;
    for (int c = 0; c < weight.length; c++) {
      List<Node> logs = logs(posterior, surface.axes(), c * forms, (c + 1) * forms);
      double top = logs.stream().mapToDouble(Node::weight).max().orElseThrow();
      double sum = logs.stream().mapToDouble(n -> Math.exp(n.weight - top)).sum();
      for (Node node : logs) {
        nodes.add(
            new Node(
                node.form, node.range, node.nugget, weight[c] * Math.exp(node.weight - top) / sum));
      }
    }
    return nodes;
  }

  /** The nodes of forms [from, to), with the logarithms of their densities. */
  private static List<Node> logs(Posterior posterior, Axes axes, int from, int to) {
    List<Node> logs = new ArrayList<>();
    for (int f = from; f < to; f++) {
      for (int r = 0; r < axes.range().length; r++) {
        for (int n = 0; n < axes.nugget().length; n++) {
          logs.add(new Node(f, r, n, posterior.integrated(f, r, n)));
        }
      }
    }
    return logs;
  }

  private static SharedDraw draw(Node node, Posterior posterior, PoolSurface surface, int d) {
    Axes axes = surface.axes();
    double[][] sills = new double[surface.surveys().size()][];
    for (int s = 0; s < sills.length; s++) {
      sills[s] = posterior.sills(node.form, node.range, node.nugget, s);
    }
    return new SharedDraw(
        surface.forms().get(node.form).candidate(),
        surface.spread(node.form),
        moved(axes.range(), node.range, fraction((d + 1) * EVEN[0])),
        moved(axes.nugget(), node.nugget, fraction((d + 1) * EVEN[1])),
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
