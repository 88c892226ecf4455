package org.mottle.engine.solve;

/**
 * Cholesky of one small matrix together with its right-hand sides: the sides stand as rows below
 * the matrix, and the same sweep that makes row i of L solves L v = b for them. For the systems of
 * a local neighbourhood, where no factor is kept; n³/3 + sides n² operations.
 *
 * <p>Rows are too short for vector instructions to pay. Four rows by two columns are held in eight
 * running sums instead, which keeps the two multiply-adders of a core busy. Every sum runs over the
 * columns in their order, so grouping changes no bytes.
 */
public final class BorderedCholesky {

  private BorderedCholesky() {}

  /**
   * Factors in place.
   *
   * @param rows [n + sides][at least n]: row i below n holds the entries (i, j) at j <= i; row n +
   *     s holds the right-hand side s. Afterwards L, the diagonal inverted, and the solutions of L
   *     v = b.
   * @param relativeLimit a pivot at or below this share of its diagonal entry is lost
   * @return smallest share of its diagonal that a pivot kept, or the negative of row + 1 at which
   *     the matrix turned out not to be positive definite
   */
  public static double factor(double[][] rows, int n, int sides, double relativeLimit) {
    double smallest = 1;
    int whole = n - n % 4;
    for (int i = 0; i < whole; i += 4) {
      fourRows(rows, i, i + 1, i + 2, i + 3, i);
      smallest = pivots(rows, i, i + 4, smallest, relativeLimit);
      if (smallest < 0) {
        return smallest;
      }
    }
    if (whole < n) {
      fourRows(rows, whole, Math.min(whole + 1, n - 1), n - 1, n - 1, whole);
      smallest = pivots(rows, whole, n, smallest, relativeLimit);
      if (smallest < 0) {
        return smallest;
      }
    }
    int end = n + sides;
    for (int i = n; i < end; i += 4) {
      int last = end - 1;
      fourRows(rows, i, Math.min(i + 1, last), Math.min(i + 2, last), Math.min(i + 3, last), whole);
      for (int r = i; r < Math.min(i + 4, end); r++) {
        oneRow(rows, rows[r], 0, whole, n);
      }
    }
    return smallest;
  }

  /**
   * Columns [0, columns) of four rows, columns a multiple of two. A row may be named more than
   * once: it is computed as often, each time the same.
   */
  private static void fourRows(double[][] rows, int a, int b, int c, int d, int columns) {
    double[] ra = rows[a];
    double[] rb = rows[b];
    double[] rc = rows[c];
    double[] rd = rows[d];
    for (int j = 0; j + 2 <= columns; j += 2) {
      double[] p = rows[j];
      double[] q = rows[j + 1];
      double ap = ra[j];
      double aq = ra[j + 1];
      double bp = rb[j];
      double bq = rb[j + 1];
      double cp = rc[j];
      double cq = rc[j + 1];
      double dp = rd[j];
      double dq = rd[j + 1];
      for (int k = 0; k < j; k++) {
        double pk = -p[k];
        double qk = -q[k];
        ap = Math.fma(ra[k], pk, ap);
        aq = Math.fma(ra[k], qk, aq);
        bp = Math.fma(rb[k], pk, bp);
        bq = Math.fma(rb[k], qk, bq);
        cp = Math.fma(rc[k], pk, cp);
        cq = Math.fma(rc[k], qk, cq);
        dp = Math.fma(rd[k], pk, dp);
        dq = Math.fma(rd[k], qk, dq);
      }
      double scale = p[j];
      double below = -q[j];
      double next = q[j + 1];
      ap *= scale;
      bp *= scale;
      cp *= scale;
      dp *= scale;
      ra[j] = ap;
      rb[j] = bp;
      rc[j] = cp;
      rd[j] = dp;
      ra[j + 1] = Math.fma(ap, below, aq) * next;
      rb[j + 1] = Math.fma(bp, below, bq) * next;
      rc[j + 1] = Math.fma(cp, below, cq) * next;
      rd[j + 1] = Math.fma(dp, below, dq) * next;
    }
  }

  /** The block on the diagonal, rows [from, to), whose columns below {@code from} are finished. */
  private static double pivots(
      double[][] rows, int from, int to, double smallest, double relativeLimit) {
    boolean four = to - from == 4;
    double a = rows[from][from];
    double b = four ? rows[from + 1][from + 1] : 0;
    double c = four ? rows[from + 2][from + 2] : 0;
    double d = four ? rows[from + 3][from + 3] : 0;
    if (four) {
      beginBlock(rows[from], rows[from + 1], rows[from + 2], rows[from + 3], from);
    }
    int begun = four ? from : 0;
    for (int i = from; i < to; i++) {
      double[] row = rows[i];
      double diagonal = !four ? row[i] : i == from ? a : i == from + 1 ? b : i == from + 2 ? c : d;
      oneRow(rows, row, begun, from, i);
      double pivot = row[i];
      for (int k = begun; k < i; k++) {
        pivot = Math.fma(row[k], -row[k], pivot);
      }
      double share = pivot / diagonal;
      if (!(share > relativeLimit)) {
        return -(i + 1);
      }
      smallest = Math.min(smallest, share);
      row[i] = 1 / Math.sqrt(pivot);
    }
    return smallest;
  }

  /** The part of the ten sums of a diagonal block that runs over the finished columns. */
  private static void beginBlock(double[] a, double[] b, double[] c, double[] d, int i) {
    double aa = a[i];
    double ba = b[i];
    double ca = c[i];
    double da = d[i];
    double bb = b[i + 1];
    double cb = c[i + 1];
    double db = d[i + 1];
    double cc = c[i + 2];
    double dc = d[i + 2];
    double dd = d[i + 3];
    for (int k = 0; k < i; k++) {
      double ak = a[k];
      double bk = b[k];
      double ck = c[k];
      double dk = d[k];
      aa = Math.fma(ak, -ak, aa);
      ba = Math.fma(bk, -ak, ba);
      ca = Math.fma(ck, -ak, ca);
      da = Math.fma(dk, -ak, da);
      bb = Math.fma(bk, -bk, bb);
      cb = Math.fma(ck, -bk, cb);
      db = Math.fma(dk, -bk, db);
      cc = Math.fma(ck, -ck, cc);
      dc = Math.fma(dk, -ck, dc);
      dd = Math.fma(dk, -dk, dd);
    }
    a[i] = aa;
    b[i] = ba;
    c[i] = ca;
    d[i] = da;
    b[i + 1] = bb;
    c[i + 1] = cb;
    d[i + 1] = db;
    c[i + 2] = cc;
    d[i + 2] = dc;
    d[i + 3] = dd;
  }

  /** Columns [from, to) of one row, whose sums already run over the columns below begun. */
  private static void oneRow(double[][] rows, double[] row, int begun, int from, int to) {
    for (int j = from; j < to; j++) {
      double[] other = rows[j];
      double sum = row[j];
      for (int k = begun; k < j; k++) {
        sum = Math.fma(row[k], -other[k], sum);
      }
      row[j] = sum * other[j];
    }
  }
}
