package org.mottle.engine.irrigation;

import java.util.List;

/**
 * How the water of a green's heads falls, as drawn: a head of radius R gives (1 − (r/R)²) times its
 * rate at r metres inside its arc, nothing beyond (a throw that thins outwards; common practice, no
 * source). What a head's share of all the water is at a place is what the place loses, of all it is
 * given, when that head gives none. Wind, slope and nozzles are not in it.
 */
final class SectorPattern {
  private final List<Head> heads;

  SectorPattern(List<Head> heads) {
    this.heads = List.copyOf(heads);
  }

  /** Depth that a head gives at a place, relative to one of rate 1 at its foot. */
  static double depth(Head head, double x, double y) {
    if (!head.reaches(x, y)) {
      return 0;
    }
    double r = Math.hypot(x - head.x(), y - head.y()) / head.radiusM();
    return 1 - r * r;
  }

  /** Share of a head, of all heads that reach the place, 0 to 1; 0 where none reaches. */
  double share(Head head, double x, double y) {
    boolean rated = heads.stream().allMatch(h -> h.rateMmH() > 0);
    double all = 0;
    for (Head h : heads) {
      all += (rated ? h.rateMmH() : 1) * depth(h, x, y);
    }
    double own = (rated ? head.rateMmH() : 1) * depth(head, x, y);
    return all > 0 ? own / all : 0;
  }

  /** The share at many places. */
  double[] shares(Head head, double[] x, double[] y) {
    double[] shares = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      shares[i] = share(head, x[i], y[i]);
    }
    return shares;
  }
}
