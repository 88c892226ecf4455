package org.mottle.engine.terrain;

import java.util.stream.IntStream;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellGrid;

/**
 * Gaussian smoothing of heights, weights exp(-d² / 2 sigma²) cut at 4 sigma. Voids and ground
 * beyond the edge have no weight and the others are scaled to sum to 1; a void stays a void. Flat
 * ground stays as it is everywhere, a plane wherever the weights lie symmetrically: within 4 sigma
 * of an edge or a void sloping ground is drawn towards the inside.
 *
 * <p>Independent noise of SD s is left with s · cell / (2 sqrt(pi) sigma), for sigma of a cell or
 * more. O(n sigma / cell), rows on all cores, the same result on any number of them.
 */
public final class Smoothing {
  private static final double REACH = 4;

  private Smoothing() {}

  /**
   * @param model heights
   * @param sigmaM SD of the weights, m; 0 leaves the heights alone
   */
  public static ElevationModel gaussian(ElevationModel model, double sigmaM) {
    Check.atLeast("sigmaM", sigmaM, 0, "m");
    CellGrid grid = model.grid();
    double[] weights = weights(sigmaM / grid.cell());
    if (weights.length == 1) {
      return model;
    }
    double[] z = model.heights();
    int rows = grid.rows();
    int columns = grid.columns();
    double[] sums = new double[z.length];
    double[] shares = new double[z.length];
    IntStream.range(0, rows)
        .parallel()
        .forEach(row -> alongRow(z, row * columns, columns, weights, sums, shares));
    double[] smooth = new double[z.length];
    IntStream.range(0, rows)
        .parallel()
        .forEach(row -> downRows(z, row, rows, columns, weights, sums, shares, smooth));
    return ElevationModel.owning(grid, smooth);
  }

  /**
   * The sigma that leaves independent noise with a wanted SD: cell · noise / (2 sqrt(pi) left); 0
   * when the noise is no more than that.
   *
   * @param cellM side of a cell, m
   * @param noiseSdM SD of the noise, m
   * @param leftSdM SD to be left, m
   */
  public static double sigmaM(double cellM, double noiseSdM, double leftSdM) {
    Check.above("cellM", cellM, 0, "m");
    Check.atLeast("noiseSdM", noiseSdM, 0, "m");
    Check.above("leftSdM", leftSdM, 0, "m");
    // weights that sum to 1 leave sqrt(sum w²): below a cell the formula is not that sum
    return noiseSdM <= leftSdM
        ? 0
        : cellM * Math.max(0.5, noiseSdM / (2 * Math.sqrt(Math.PI) * leftSdM));
  }

  private static double[] weights(double sigmaCells) {
    double[] weights = new double[(int) Math.ceil(REACH * sigmaCells) + 1];
    weights[0] = 1;
    for (int k = 1; k < weights.length; k++) {
      weights[k] = Math.exp(-0.5 * (k / sigmaCells) * (k / sigmaCells));
    }
    return weights;
  }

  private static void alongRow(
      double[] z, int start, int columns, double[] weights, double[] sums, double[] shares) {
    for (int c = 0; c < columns; c++) {
      double sum = 0;
      double share = 0;
      int last = Math.min(columns - 1, c + weights.length - 1);
      for (int k = Math.max(0, c - weights.length + 1); k <= last; k++) {
        double height = z[start + k];
        if (height == height) {
          double w = weights[Math.abs(k - c)];
          sum += w * height;
          share += w;
        }
      }
      sums[start + c] = sum;
      shares[start + c] = share;
    }
  }

  private static void downRows(
      double[] z,
      int row,
      int rows,
      int columns,
      double[] weights,
      double[] sums,
      double[] shares,
      double[] smooth) {
    int start = row * columns;
    double[] share = new double[columns];
    int last = Math.min(rows - 1, row + weights.length - 1);
    for (int k = Math.max(0, row - weights.length + 1); k <= last; k++) {
      double w = weights[Math.abs(k - row)];
      int from = k * columns;
      for (int c = 0; c < columns; c++) {
        smooth[start + c] += w * sums[from + c];
        share[c] += w * shares[from + c];
      }
    }
    for (int c = 0; c < columns; c++) {
      boolean empty = Double.isNaN(z[start + c]);
      smooth[start + c] = empty ? Double.NaN : smooth[start + c] / share[c];
    }
  }
}
