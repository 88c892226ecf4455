package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.CoveredGround;
import org.mottle.engine.grid.GreenCells;

/**
 * Points with weights that stand for a mean over ground, or for a difference of two such means.
 * Ground of many cells is gathered into some {@value #MOST} squares, each at the centroid of what
 * it covers: they are small against the range of moisture. Immutable.
 *
 * @param x east, m
 * @param y north, m
 * @param weight of each; 1 together for a mean, 0 for a difference of two
 */
record WeighedGround(double[] x, double[] y, double[] weight) {
  static final int MOST = 200;

  /** The mean over a polygon within the green. */
  static WeighedGround of(GreenCells cells, Geometry area) {
    CoveredGround ground = CoveredGround.of(cells, area);
    double cell = cells.surfaceGrid().cell();
    int stride = (int) Math.max(1, Math.round(Math.sqrt(ground.areaM2() / MOST) / cell));
    double[] nx = cells.neededX();
    double[] ny = cells.neededY();
    int columns = cells.surfaceGrid().columns();
    Map<Long, double[]> squares = new LinkedHashMap<>();
    for (int i = 0; i < ground.size(); i++) {
      int at = cells.neededCell(ground.place(i));
      long square = (long) (at / columns / stride) * columns + at % columns / stride;
      double[] sum = squares.computeIfAbsent(square, k -> new double[3]);
      double a = ground.areaM2(i);
      sum[0] += a * nx[ground.place(i)];
      sum[1] += a * ny[ground.place(i)];
      sum[2] += a;
    }
    List<double[]> all = new ArrayList<>(squares.values());
    return new WeighedGround(
        all.stream().mapToDouble(s -> s[0] / s[2]).toArray(),
        all.stream().mapToDouble(s -> s[1] / s[2]).toArray(),
        all.stream().mapToDouble(s -> s[2] / ground.areaM2()).toArray());
  }

  /** This mean less another. */
  WeighedGround less(WeighedGround other) {
    int n = x.length;
    int all = n + other.x.length;
    double[] px = java.util.Arrays.copyOf(x, all);
    double[] py = java.util.Arrays.copyOf(y, all);
    double[] pw = java.util.Arrays.copyOf(weight, all);
    for (int i = n; i < all; i++) {
      px[i] = other.x[i - n];
      py[i] = other.y[i - n];
      pw[i] = -other.weight[i - n];
    }
    return new WeighedGround(px, py, pw);
  }

  double sum() {
    double sum = 0;
    for (double w : weight) {
      sum += w;
    }
    return sum;
  }
}
