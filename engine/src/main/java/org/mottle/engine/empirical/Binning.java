package org.mottle.engine.empirical;

/** Sums of one piece of a scan by lag. */
final class Binning implements PairSink {
  private static final int SLOT = 2;

  private final double cutoff;
  private final double width;
  private final Estimator estimator;
  private final long[] pairs;
  // separations and terms side by side: one cache line a pair
  private final double[] sums;
  private long coincident;

  Binning(LagBins bins, Estimator estimator) {
    cutoff = bins.cutoff();
    width = bins.width();
    this.estimator = estimator;
    pairs = new long[bins.count()];
    sums = new double[SLOT * pairs.length];
  }

  @Override
  public void accept(double[] distance, double[] difference, int count) {
    if (estimator == Estimator.CRESSIE_HAWKINS) {
      for (int k = 0; k < count; k++) {
        difference[k] = Math.sqrt(Math.abs(difference[k]));
      }
    } else {
      for (int k = 0; k < count; k++) {
        difference[k] *= difference[k];
      }
    }
    add(distance, difference, count);
  }

  private void add(double[] distance, double[] term, int count) {
    for (int k = 0; k < count; k++) {
      double h = distance[k];
      if (h <= cutoff) {
        if (h == 0) {
          coincident++;
          continue;
        }
        int b = LagBins.index(h / width);
        pairs[b]++;
        sums[SLOT * b] += h;
        sums[SLOT * b + 1] += term[k];
      }
    }
  }

  long coincident() {
    return coincident;
  }

  void addTo(long[] allPairs, double[] distance, double[] terms) {
    for (int b = 0; b < pairs.length; b++) {
      allPairs[b] += pairs[b];
      distance[b] += sums[SLOT * b];
      terms[b] += sums[SLOT * b + 1];
    }
  }
}
