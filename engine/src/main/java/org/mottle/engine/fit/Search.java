package org.mottle.engine.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the lowest place of a fit problem: a grid over all axes, then from each of the best valleys
 * of the grid a descent by Levenberg and Marquardt's method, and last a pattern search, which does
 * not mind the kinks that models with a finite range make where a lag meets the range.
 */
final class Search {
  private static final int[] NODES = {1, 241, 49, 17, 9, 7};
  private static final int FEWEST_NODES = 4;
  private static final int VALLEYS = 12;

  private final FitProblem problem;
  private final List<Axis> axes;
  private final int nodes;

  Search(FitProblem problem) {
    this.problem = problem;
    axes = problem.axes();
    nodes = axes.size() < NODES.length ? NODES[axes.size()] : FEWEST_NODES;
  }

  /** The lowest place found. */
  double[] best() {
    if (axes.isEmpty()) {
      return new double[0];
    }
    Descent descent = new Descent(problem);
    double[] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double[] valley : valleys()) {
      double[] bottom = descent.from(valley);
      double sum = problem.sum(bottom);
      if (sum < least) {
        best = bottom;
        least = sum;
      }
    }
    return best;
  }

  /** The deepest local minima of the grid, deepest first; of equals the earlier. */
  private List<double[]> valleys() {
    int size = (int) Math.round(Math.pow(nodes, axes.size()));
    double[] sum = new double[size];
    for (int i = 0; i < size; i++) {
      sum[i] = problem.sum(place(i));
    }
    List<Integer> minima = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      if (isMinimum(sum, i)) {
        minima.add(i);
      }
    }
    minima.sort(Comparator.comparingDouble(i -> sum[i]));
    return minima.stream().limit(VALLEYS).map(this::place).toList();
  }

  private double[] place(int index) {
    double[] place = new double[axes.size()];
    int rest = index;
    for (int a = 0; a < place.length; a++) {
      place[a] = axes.get(a).node(rest % nodes, nodes);
      rest /= nodes;
    }
    return place;
  }

  /** Below its earlier neighbours and not above its later ones, so that a plain has one minimum. */
  private boolean isMinimum(double[] sum, int index) {
    int stride = 1;
    for (int a = 0; a < axes.size(); a++) {
      int node = index / stride % nodes;
      if (node > 0 && !(sum[index] < sum[index - stride])) {
        return false;
      }
      if (node < nodes - 1 && !(sum[index] <= sum[index + stride])) {
        return false;
      }
      stride *= nodes;
    }
    return true;
  }
}
