package org.mottle.engine.terrain;

import java.util.Arrays;
import org.mottle.engine.grid.CellGrid;

/**
 * The noise of an elevation model, from what no smooth ground has: the mask
 *
 * <pre>
 *    1 -2  1
 *   -2  4 -2      d = sum of mask x height,  var(d) = 36 sigma²
 *    1 -2  1
 * </pre>
 *
 * is zero on every quadratic surface (Immerkær 1996, Computer Vision and Image Understanding 64).
 * The SD is robust, 1.4826 median |d| / 6, so banks, bunker lips and drains do not count. It is the
 * noise that is independent from cell to cell: noise that neighbours share (a warped
 * photogrammetric model, a model already smoothed) is not seen and the figure is then too low.
 */
public final class ElevationNoise {
  private static final double NORMAL_MEDIAN = 1.4826022185056018;
  private static final int ENOUGH = 1_000_000;

  private ElevationNoise() {}

  /**
   * SD of the noise, m; NaN when no cell has all eight neighbours. Of large models every k-th cell
   * is taken, a million at most.
   */
  public static double sdM(ElevationModel model) {
    CellGrid grid = model.grid();
    double[] z = model.heights();
    int columns = grid.columns();
    // a stride that shares no factor with the columns would be ideal; an odd one does not align
    int stride = (int) (((long) grid.size() / ENOUGH) | 1);
    double[] size = new double[grid.size() / stride + 1];
    int n = 0;
    for (int at = columns + 1; at < grid.size() - columns - 1; at += stride) {
      int column = at % columns;
      if (column > 0 && column < columns - 1) {
        double d = mask(z, at, columns);
        if (!Double.isNaN(d)) {
          size[n++] = Math.abs(d);
        }
      }
    }
    if (n == 0) {
      return Double.NaN;
    }
    Arrays.sort(size, 0, n);
    return NORMAL_MEDIAN * 0.5 * (size[(n - 1) / 2] + size[n / 2]) / 6;
  }

  private static double mask(double[] z, int at, int columns) {
    int up = at - columns;
    int down = at + columns;
    double corners = z[up - 1] + z[up + 1] + z[down - 1] + z[down + 1];
    double sides = z[up] + z[down] + z[at - 1] + z[at + 1];
    return corners - 2 * sides + 4 * z[at];
  }
}
