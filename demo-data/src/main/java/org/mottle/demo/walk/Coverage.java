package org.mottle.demo.walk;

import java.util.ArrayList;
import java.util.List;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Lattice;

/**
 * Spatial coverage: k places that keep the mean squared distance from any cell to the nearest one
 * small, by k-means on the cells (Walvoort, Brus and de Gruijter 2010), the best of five random
 * starts. Every place is then moved to the nearest lattice node that is itself a cell, or to the
 * nearest cell. O(starts · rounds · cells · k).
 */
final class Coverage {

  private static final int STARTS = 5;
  private static final int ROUNDS = 40;
  private static final double SETTLED_M2 = 0.002;

  private Coverage() {}

  static List<Point> of(List<Point> cells, int k, Stream stream) {
    double[][] best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int start = 0; start < STARTS; start++) {
      double[][] centres = new double[k][];
      for (int i = 0; i < k; i++) {
        Point c = cells.get(stream.below(cells.size()));
        centres[i] = new double[] {c.x(), c.y()};
      }
      double mean = improve(cells, centres);
      double before = Double.POSITIVE_INFINITY;
      for (int round = 1; round < ROUNDS && mean < before - SETTLED_M2; round++) {
        before = mean;
        mean = improve(cells, centres);
      }
      if (mean < least) {
        least = mean;
        best = centres;
      }
    }
    List<Point> places = new ArrayList<>();
    for (double[] centre : best) {
      places.add(nearestCell(cells, centre));
    }
    return places;
  }

  /** One round; returns the mean squared distance before it. */
  private static double improve(List<Point> cells, double[][] centres) {
    double[][] sums = new double[centres.length][3];
    double total = 0;
    for (Point cell : cells) {
      int nearest = 0;
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < centres.length; i++) {
        double u = cell.x() - centres[i][0];
        double v = cell.y() - centres[i][1];
        if (u * u + v * v < least) {
          least = u * u + v * v;
          nearest = i;
        }
      }
      total += least;
      sums[nearest][0] += cell.x();
      sums[nearest][1] += cell.y();
      sums[nearest][2]++;
    }
    for (int i = 0; i < centres.length; i++) {
      if (sums[i][2] > 0) {
        centres[i][0] = sums[i][0] / sums[i][2];
        centres[i][1] = sums[i][1] / sums[i][2];
      }
    }
    return total / cells.size();
  }

  private static Point nearestCell(List<Point> cells, double[] centre) {
    Point wanted = new Point(Lattice.snap(centre[0]), Lattice.snap(centre[1]));
    Point best = cells.get(0);
    for (Point cell : cells) {
      if (cell.distance(wanted) < best.distance(wanted)) {
        best = cell;
      }
    }
    return best;
  }
}
