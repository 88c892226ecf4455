package org.mottle.engine.solve;

/**
 * The one hot loop of the solver: rows minus multiples of other rows, over a stretch of columns.
 *
 * <p>Every entry takes its sources one after the other in their order, each by one fused
 * multiply-add, so the bytes do not depend on how rows are grouped here, on the stretch, or on who
 * computes it. Rows are separate arrays, and three targets share the loads of three sources: of the
 * shapes that the compiler of Java 17 turns into vector instructions this one is the fastest (36
 * GFLOP/s on a core where one target with four sources reaches 31; four by four stays scalar at 14
 * because its loop body is too long to be unrolled).
 */
final class RowUpdate {

  private RowUpdate() {}

  /**
   * target[i + r][from, to) -= sum over k in [first, last) of coefficient[c + r][k] source[k][from,
   * to), for r = 0, 1, 2.
   */
  static void three(
      double[][] target,
      int i,
      double[][] coefficient,
      int c,
      double[][] source,
      int first,
      int last,
      int from,
      int to) {
    double[] ta = target[i];
    double[] tb = target[i + 1];
    double[] tc = target[i + 2];
    double[] ca = coefficient[c];
    double[] cb = coefficient[c + 1];
    double[] cc = coefficient[c + 2];
    int k = first;
    for (; k + 3 <= last; k += 3) {
      double[] sp = source[k];
      double[] sq = source[k + 1];
      double[] sr = source[k + 2];
      double ap = -ca[k];
      double aq = -ca[k + 1];
      double ar = -ca[k + 2];
      double bp = -cb[k];
      double bq = -cb[k + 1];
      double br = -cb[k + 2];
      double cp = -cc[k];
      double cq = -cc[k + 1];
      double cr = -cc[k + 2];
      for (int j = from; j < to; j++) {
        double p = sp[j];
        double q = sq[j];
        double r = sr[j];
        ta[j] = Math.fma(ar, r, Math.fma(aq, q, Math.fma(ap, p, ta[j])));
        tb[j] = Math.fma(br, r, Math.fma(bq, q, Math.fma(bp, p, tb[j])));
        tc[j] = Math.fma(cr, r, Math.fma(cq, q, Math.fma(cp, p, tc[j])));
      }
    }
    for (; k < last; k++) {
      single(ta, -ca[k], source[k], from, to);
      single(tb, -cb[k], source[k], from, to);
      single(tc, -cc[k], source[k], from, to);
    }
  }

  /** target[from, to) -= sum over k in [first, last) of coefficient[k] source[k][from, to). */
  static void one(
      double[] target,
      double[] coefficient,
      double[][] source,
      int first,
      int last,
      int from,
      int to) {
    int k = first;
    for (; k + 4 <= last; k += 4) {
      double[] sp = source[k];
      double[] sq = source[k + 1];
      double[] sr = source[k + 2];
      double[] ss = source[k + 3];
      double p = -coefficient[k];
      double q = -coefficient[k + 1];
      double r = -coefficient[k + 2];
      double s = -coefficient[k + 3];
      for (int j = from; j < to; j++) {
        target[j] =
            Math.fma(
                s, ss[j], Math.fma(r, sr[j], Math.fma(q, sq[j], Math.fma(p, sp[j], target[j]))));
      }
    }
    for (; k < last; k++) {
      single(target, -coefficient[k], source[k], from, to);
    }
  }

  private static void single(double[] target, double c, double[] source, int from, int to) {
    for (int j = from; j < to; j++) {
      target[j] = Math.fma(c, source[j], target[j]);
    }
  }
}
