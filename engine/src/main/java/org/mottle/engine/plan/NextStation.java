package org.mottle.engine.plan;

/**
 * A station to be read next.
 *
 * @param rank from 1, the one that tells most first
 * @param x east, m
 * @param y north, m
 * @param gain what adding this station to those ranked before it is expected to bring
 * @param why what makes the place worth reading
 * @param walk place in the walk, from 1
 */
public record NextStation(int rank, double x, double y, Gain gain, StationReason why, int walk) {

  /**
   * @param gainM2 drop of the expected misclassified area, m²; NaN without a band
   * @param varianceDrop drop of the mean kriging variance over the green, value²
   * @param share of what was to be gained (by the criterion) before the first new station, 0 to 1
   */
  public record Gain(double gainM2, double varianceDrop, double share) {}

  public double gainM2() {
    return gain.gainM2;
  }

  /** Share of the expected misclassified area, or mean variance, before any new station. */
  public double gainShare() {
    return gain.share;
  }
}
