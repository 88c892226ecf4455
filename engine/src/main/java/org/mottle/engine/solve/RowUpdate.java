package org.mottle.engine.solve;

/**
 * The one hot loop of the solver: rows minus multiples of other rows, over a stretch of columns.
 *
 * <p>Rows are separate arrays and four sources go into one pass, the form that the compiler turns
 * into vector instructions. Every column is computed alone and in the same order of sources, so the
 * bytes depend neither on the stretch nor on who computes it.
 */
final class RowUpdate {

  private RowUpdate() {}

  /** target[from, to) -= sum over k in [first, last) of coefficient[k] source[k][from, to). */
  static void subtract(
      double[] target,
      double[] coefficient,
      double[][] source,
      int first,
      int last,
      int from,
      int to) {
    int k = first;
    for (; k + 4 <= last; k += 4) {
      four(
          target,
          coefficient[k],
          source[k],
          coefficient[k + 1],
          source[k + 1],
          coefficient[k + 2],
          source[k + 2],
          coefficient[k + 3],
          source[k + 3],
          from,
          to);
    }
    for (; k < last; k++) {
      one(target, coefficient[k], source[k], from, to);
    }
  }

  private static void four(
      double[] t,
      double ca,
      double[] a,
      double cb,
      double[] b,
      double cc,
      double[] c,
      double cd,
      double[] d,
      int from,
      int to) {
    for (int j = from; j < to; j++) {
      t[j] -= (ca * a[j] + cb * b[j]) + (cc * c[j] + cd * d[j]);
    }
  }

  private static void one(double[] t, double ca, double[] a, int from, int to) {
    for (int j = from; j < to; j++) {
      t[j] -= ca * a[j];
    }
  }
}
