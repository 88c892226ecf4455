package org.mottle.engine.empirical;

import java.util.ArrayList;
import java.util.List;

/** Pairs, separations and semivariances of the lags of one direction. */
final class LagSums {
  private final Direction direction;
  private final long[] pairs;
  private final double[] distance;
  private final double[] semivariance;
  private long coincident;

  private LagSums(Direction direction, int bins) {
    this.direction = direction;
    pairs = new long[bins];
    distance = new double[bins];
    semivariance = new double[bins];
  }

  static LagSums of(PairScan scan, Estimator estimator, Direction direction) {
    LagSums sums = new LagSums(direction, scan.bins().count());
    double[] terms = new double[sums.pairs.length];
    for (Binning piece : scan.byPiece(direction, () -> new Binning(scan.bins(), estimator))) {
      piece.addTo(sums.pairs, sums.distance, terms);
      sums.coincident += piece.coincident();
    }
    switch (estimator) {
      case MATHERON -> sums.matheron(terms);
      case CRESSIE_HAWKINS -> sums.cressieHawkins(terms);
      case DOWD -> sums.dowd(DowdMedians.of(scan, direction, sums.pairs));
    }
    return sums;
  }

  private void matheron(double[] squares) {
    for (int b = 0; b < pairs.length; b++) {
      semivariance[b] = squares[b] / (2.0 * pairs[b]);
    }
  }

  private void cressieHawkins(double[] roots) {
    for (int b = 0; b < pairs.length; b++) {
      double mean = roots[b] / pairs[b];
      semivariance[b] = 0.5 * mean * mean * mean * mean / (0.457 + 0.494 / pairs[b]);
    }
  }

  private void dowd(double[] medians) {
    for (int b = 0; b < pairs.length; b++) {
      semivariance[b] = 0.5 * 2.198 * medians[b] * medians[b];
    }
  }

  long coincident() {
    return coincident;
  }

  List<Lag> lags() {
    List<Lag> lags = new ArrayList<>();
    for (int b = 0; b < pairs.length; b++) {
      if (pairs[b] > 0) {
        lags.add(new Lag(pairs[b], distance[b] / pairs[b], semivariance[b], direction));
      }
    }
    return lags;
  }
}
