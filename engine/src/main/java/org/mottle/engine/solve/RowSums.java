package org.mottle.engine.solve;

/**
 * Sums over the rows of a panel, column by column, in the fixed order of the rows: products with a
 * coefficient a row, and squares. Four rows go into one pass, so that the loops become vector
 * instructions.
 */
public final class RowSums {

  private RowSums() {}

  /** sum[0, count) += coefficient[k] row k, over the first {@code rows} rows. */
  public static void addProducts(
      double[] coefficient, double[][] panel, int rows, int count, double[] sum) {
    int k = 0;
    for (; k + 4 <= rows; k += 4) {
      products(coefficient, k, panel[k], panel[k + 1], panel[k + 2], panel[k + 3], count, sum);
    }
    for (; k < rows; k++) {
      double c = coefficient[k];
      double[] a = panel[k];
      for (int j = 0; j < count; j++) {
        sum[j] += c * a[j];
      }
    }
  }

  /** sum[0, count) += row k squared, over the first {@code rows} rows. */
  public static void addSquares(double[][] panel, int rows, int count, double[] sum) {
    int k = 0;
    for (; k + 4 <= rows; k += 4) {
      squares(panel[k], panel[k + 1], panel[k + 2], panel[k + 3], count, sum);
    }
    for (; k < rows; k++) {
      double[] a = panel[k];
      for (int j = 0; j < count; j++) {
        sum[j] += a[j] * a[j];
      }
    }
  }

  private static void products(
      double[] coefficient,
      int k,
      double[] a,
      double[] b,
      double[] c,
      double[] d,
      int count,
      double[] sum) {
    double ca = coefficient[k];
    double cb = coefficient[k + 1];
    double cc = coefficient[k + 2];
    double cd = coefficient[k + 3];
    for (int j = 0; j < count; j++) {
      sum[j] += (ca * a[j] + cb * b[j]) + (cc * c[j] + cd * d[j]);
    }
  }

  private static void squares(
      double[] a, double[] b, double[] c, double[] d, int count, double[] sum) {
    for (int j = 0; j < count; j++) {
      sum[j] += (a[j] * a[j] + b[j] * b[j]) + (c[j] * c[j] + d[j] * d[j]);
    }
  }
}
