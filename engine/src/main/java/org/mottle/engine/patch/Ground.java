package org.mottle.engine.patch;

import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.Raster;

/**
 * The points that stand for a piece of ground: one a cell, at the centroid of what is covered of
 * it, weighted by the covered area.
 *
 * @param x east, m
 * @param y north, m
 * @param weight m²
 */
public record Ground(double[] x, double[] y, double[] weight) {
  private static final int MOST_POINTS = 144;

  public static Ground of(Geometry area, Raster surface) {
    CellCoverage coverage = CellCoverage.of(area, surface.grid());
    int n = coverage.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] weight = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = coverage.x(i);
      y[i] = coverage.y(i);
      weight[i] = coverage.areaM2(i);
    }
    return new Ground(x, y, weight);
  }

  /** Mean of the surface where it has values; NaN when it has none. */
  public double mean(LinearSurface surface) {
    double sum = 0;
    double total = 0;
    for (int i = 0; i < x.length; i++) {
      double value = surface.value(x[i], y[i]);
      if (!Double.isNaN(value)) {
        sum += weight[i] * value;
        total += weight[i];
      }
    }
    return total > 0 ? sum / total : Double.NaN;
  }

  /** Standard error of the mean by the estimator behind the map. */
  public double sd(RegionMean estimator, double cell) {
    Ground few = thinned(cell);
    return few.x.length == 0 ? Double.NaN : estimator.of(few.x, few.y, few.weight).sd();
  }

  /**
   * At most 144 points: cells are pooled in square blocks of as few cells as will do, each block at
   * its weighted centroid, so that a plane has the same mean.
   */
  Ground thinned(double cell) {
    Ground pooled = this;
    // a tenth more than the cells need, for the blocks the edge cuts
    int block = (int) Math.ceil(1.1 * Math.sqrt((double) x.length / MOST_POINTS));
    while (pooled.x.length > MOST_POINTS) {
      pooled = pooled(block++ * cell);
    }
    return pooled;
  }

  private Ground pooled(double side) {
    double west = Arrays.stream(x).min().orElse(0);
    double south = Arrays.stream(y).min().orElse(0);
    int columns = (int) ((Arrays.stream(x).max().orElse(0) - west) / side) + 1;
    int rows = (int) ((Arrays.stream(y).max().orElse(0) - south) / side) + 1;
    double[] sumX = new double[rows * columns];
    double[] sumY = new double[rows * columns];
    double[] sum = new double[rows * columns];
    for (int i = 0; i < x.length; i++) {
      int at = (int) ((y[i] - south) / side) * columns + (int) ((x[i] - west) / side);
      sum[at] += weight[i];
      sumX[at] += weight[i] * (x[i] - west);
      sumY[at] += weight[i] * (y[i] - south);
    }
    int n = (int) Arrays.stream(sum).filter(w -> w > 0).count();
    Ground pooled = new Ground(new double[n], new double[n], new double[n]);
    int to = 0;
    for (int at = 0; at < sum.length; at++) {
      if (sum[at] > 0) {
        pooled.x[to] = west + sumX[at] / sum[at];
        pooled.y[to] = south + sumY[at] / sum[at];
        pooled.weight[to++] = sum[at];
      }
    }
    return pooled;
  }
}
