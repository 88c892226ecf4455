package org.mottle.engine.fit;

import java.util.List;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.variogram.NestedModel;

/**
 * What a lag counts for in the sum of squares sum w (g - m)², g its semivariance, m the model's, N
 * its pairs and h its distance.
 */
public enum Weighting {

  /** w = N / h²: near lags count most; what gstat does by default. */
  PAIRS_OVER_LAG_SQUARED,

  /** w = N. */
  PAIRS,

  /**
   * w = N / m², m of the fitted model itself, so that the sum is N (g / m - 1)² (Cressie 1985).
   * gstat's fit of this name keeps the weights of its starting model.
   */
  CRESSIE,

  /** w = 1: ordinary least squares. */
  EQUAL;

  /** Weight of a lag; of {@code CRESSIE} with the model's semivariance there. */
  double weight(Lag lag, double modelled) {
    return switch (this) {
      case PAIRS_OVER_LAG_SQUARED -> lag.pairs() / (lag.distance() * lag.distance());
      case PAIRS -> lag.pairs();
      case CRESSIE -> lag.pairs() / (modelled * modelled);
      case EQUAL -> 1;
    };
  }

  /** The weighted sum of squares of a model, in the units of the weighting. */
  public double sumOfSquares(ExperimentalVariogram variogram, NestedModel model) {
    List<Lag> lags = variogram.lags();
    double sum = 0;
    for (Lag lag : lags) {
      double bearing = lag.direction().azimuth().radians();
      double m =
          model.semivariance(
              lag.distance() * Math.sin(bearing), lag.distance() * Math.cos(bearing));
      double residual = lag.semivariance() - m;
      sum += weight(lag, m) * residual * residual;
    }
    return sum;
  }
}
