package org.mottle.engine.empirical;

import java.util.ArrayList;
import java.util.List;

/**
 * Medians of |dz| by lag without keeping the pairs: the bits of the middle value are found a digit
 * at a time, each digit by counting in one more pass (radix selection). Exact; memory depends on
 * the number of lags only.
 */
final class DowdMedians {
  private static final int SIGNIFICANT_BITS = 64;
  private static final long MANY_PAIRS = 100_000;

  private DowdMedians() {}

  /** The median of each lag, 0 for lags without pairs. */
  static double[] of(PairScan scan, Direction direction, long[] pairs) {
    long total = 0;
    for (long p : pairs) {
      total += p;
    }
    // wide digits need fewer passes, narrow ones less memory
    int digit = total > MANY_PAIRS && pairs.length <= 64 ? 16 : 8;
    long[] prefix = new long[pairs.length];
    long[] rank = new long[pairs.length];
    for (int b = 0; b < pairs.length; b++) {
      rank[b] = (pairs[b] - 1) / 2;
    }
    for (int shift = SIGNIFICANT_BITS - digit; shift >= 0; shift -= digit) {
      List<Digits> counts = new ArrayList<>();
      int low = shift;
      counts.addAll(scan.byThread(direction, () -> new Digits(scan.bins(), prefix, low, digit)));
      for (int b = 0; b < pairs.length; b++) {
        if (pairs[b] > 0) {
          select(counts, b, prefix, rank, digit);
        }
      }
    }
    return withUpper(scan, direction, pairs, prefix);
  }

  /** Appends to the prefix of a lag the digit in which its rank falls. */
  private static void select(List<Digits> counts, int b, long[] prefix, long[] rank, int digit) {
    for (int d = 0; d < 1 << digit; d++) {
      long here = 0;
      for (Digits c : counts) {
        here += c.count[(b << digit) + d];
      }
      if (rank[b] < here) {
        prefix[b] = (prefix[b] << digit) | d;
        return;
      }
      rank[b] -= here;
    }
    throw new IllegalStateException("lag " + b + " lost " + (rank[b] + 1) + " of its pairs");
  }

  private static double[] withUpper(
      PairScan scan, Direction direction, long[] pairs, long[] lowerBits) {
    double[] lower = new double[pairs.length];
    for (int b = 0; b < pairs.length; b++) {
      lower[b] = Double.longBitsToDouble(lowerBits[b]);
    }
    List<Upper> uppers = scan.byThread(direction, () -> new Upper(scan.bins(), lower));
    double[] median = new double[pairs.length];
    for (int b = 0; b < pairs.length; b++) {
      long notAbove = 0;
      double next = Double.POSITIVE_INFINITY;
      for (Upper u : uppers) {
        notAbove += u.notAbove[b];
        next = Math.min(next, u.next[b]);
      }
      boolean even = pairs[b] % 2 == 0;
      double upper = even && notAbove == pairs[b] / 2 ? next : lower[b];
      median[b] = pairs[b] == 0 ? 0 : lower[b] + (upper - lower[b]) / 2;
    }
    return median;
  }

  /** Counts, by lag, the next digit of the values that begin with the lag's prefix. */
  private static final class Digits implements PairSink {
    private final LagBins bins;
    private final long[] prefix;
    private final int shift;
    private final int digit;
    private final long[] count;

    Digits(LagBins bins, long[] prefix, int shift, int digit) {
      this.bins = bins;
      this.prefix = prefix;
      this.shift = shift;
      this.digit = digit;
      count = new long[prefix.length << digit];
    }

    @Override
    public void accept(double[] distance, double[] difference, int size) {
      for (int k = 0; k < size; k++) {
        if (distance[k] > 0 && distance[k] <= bins.cutoff()) {
          int b = bins.indexOf(distance[k]);
          long bits = Double.doubleToRawLongBits(Math.abs(difference[k])) >>> shift;
          if (bits >>> digit == prefix[b]) {
            count[(b << digit) + (int) (bits & ((1L << digit) - 1))]++;
          }
        }
      }
    }
  }

  /** By lag, how many values are not above the lower middle one, and the least that is. */
  private static final class Upper implements PairSink {
    private final LagBins bins;
    private final double[] lower;
    private final long[] notAbove;
    private final double[] next;

    Upper(LagBins bins, double[] lower) {
      this.bins = bins;
      this.lower = lower;
      notAbove = new long[lower.length];
      next = new double[lower.length];
      java.util.Arrays.fill(next, Double.POSITIVE_INFINITY);
    }

    @Override
    public void accept(double[] distance, double[] difference, int size) {
      for (int k = 0; k < size; k++) {
        if (distance[k] > 0 && distance[k] <= bins.cutoff()) {
          int b = bins.indexOf(distance[k]);
          double a = Math.abs(difference[k]);
          if (a <= lower[b]) {
            notAbove[b]++;
          } else {
            next[b] = Math.min(next[b], a);
          }
        }
      }
    }
  }
}
