package org.mottle.engine.likelihood;

import java.util.List;
import org.mottle.engine.observation.Observations;

/**
 * Pairs of stations so near that hardly any structure lies between them: what differs there is
 * nugget. Position error counts, since stations whose places are uncertain by metres may lie apart
 * whatever was recorded.
 */
final class ClosePairs {
  /** Structure between the stations of a close pair, as a share of its sill. */
  private static final double CLOSE = 0.15;

  private ClosePairs() {}

  static int count(List<Sample> pool, Candidate shape, double practicalRange) {
    BlurredModels unit = new BlurredModels(shape.model(1, practicalRange));
    return pool.stream().mapToInt(s -> count(s.observations(), unit, practicalRange / 4)).sum();
  }

  /**
   * @param farthest lag from which on no model is so near 0, m; saves the rest
   */
  private static int count(Observations o, BlurredModels unit, double farthest) {
    int close = 0;
    for (int i = 0; i < o.size(); i++) {
      for (int j = 0; j < i; j++) {
        double lag = Math.hypot(o.x(i) - o.x(j), o.y(i) - o.y(j));
        double sd = Math.hypot(o.positionError().jitterSdM(i), o.positionError().jitterSdM(j));
        close += lag < farthest && unit.at(sd).semivariance(lag) < CLOSE ? 1 : 0;
      }
    }
    return close;
  }
}
