package org.mottle.engine.order;

import org.mottle.engine.order.Alignment.Pace;

/**
 * How likely a gap in time is between two readings: distance / pace plus the time of an insertion,
 * with a relative scatter on either and a second of rounding. A further insertion in the same place
 * takes 0.6 or 1 times as long as a first one, whichever. One gap in thirty is a pause of any
 * length.
 */
record GapModel(double paceMS, double insertionS, double relativeSd) {
  /** Time of a further insertion, as a share of a first one (common practice, no source). */
  static final double FURTHER = 0.6;

  private static final double PAUSE_SHARE = 0.03;
  private static final double PAUSE_S = 90;
  private static final double ROUNDING_S = 0.6;

  static GapModel of(Pace pace) {
    return new GapModel(pace.paceMS(), pace.insertionS(), pace.relativeSd());
  }

  /** Density of a gap to another station so far away; NaN gaps tell nothing. */
  double move(double gap, double metres, boolean afterFurther) {
    if (Double.isNaN(gap)) {
      return 1;
    }
    double leg = metres / paceMS;
    double first = normal(gap, insertionS, leg);
    double density = afterFurther ? 0.5 * (first + normal(gap, FURTHER * insertionS, leg)) : first;
    return robust(gap, density);
  }

  /** Density of a gap to a further insertion at the same station. */
  double stay(double gap) {
    if (Double.isNaN(gap)) {
      return 1;
    }
    double density = 0.5 * (normal(gap, insertionS, 0) + normal(gap, FURTHER * insertionS, 0));
    return robust(gap, density);
  }

  /** Variance of a gap after a first insertion, s². */
  double variance(double stand, double leg) {
    return relativeSd * relativeSd * (stand * stand + leg * leg) + ROUNDING_S * ROUNDING_S;
  }

  private double normal(double gap, double stand, double leg) {
    double variance = variance(stand, leg);
    double off = gap - stand - leg;
    return Math.exp(-0.5 * off * off / variance) / Math.sqrt(2 * Math.PI * variance);
  }

  private static double robust(double gap, double density) {
    return (1 - PAUSE_SHARE) * density + PAUSE_SHARE * Math.exp(-gap / PAUSE_S) / PAUSE_S;
  }
}
