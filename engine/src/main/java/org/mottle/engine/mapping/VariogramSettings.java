package org.mottle.engine.mapping;

import java.util.Optional;
import org.mottle.engine.check.Check;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.fit.Shape;

/**
 * How the variogram behind the maps is made. The model comes from the readings by likelihood;
 * cutoff, lag and estimator are those of the experimental variogram that is shown beside it.
 *
 * @param pooling over which greens and surveys
 * @param shape one shape, or empty: what the readings say of a short list
 * @param cutoffM longest lag shown, m; NaN: half of the longest diagonal of a green's readings
 * @param lagM width of a lag class, m; NaN: a fifteenth of the cutoff
 * @param estimator of the semivariance
 */
public record VariogramSettings(
    Pooling pooling, Optional<Shape> shape, double cutoffM, double lagM, Estimator estimator) {

  public VariogramSettings {
    shape
        .filter(s -> !s.model(1, 1, 0.5).bounded())
        .ifPresent(
            s -> {
              throw new IllegalArgumentException(
                  "a map needs a variogram that levels off, was " + s);
            });
    if (!Double.isNaN(cutoffM)) {
      Check.above("cutoff of the variogram", cutoffM, 0, "m");
    }
    if (!Double.isNaN(lagM)) {
      Check.above("width of a lag", lagM, 0, "m");
    }
  }

  public static VariogramSettings defaults() {
    return new VariogramSettings(
        Pooling.ROOT_ZONE, Optional.empty(), Double.NaN, Double.NaN, Estimator.CRESSIE_HAWKINS);
  }

  public VariogramSettings withPooling(Pooling newPooling) {
    return new VariogramSettings(newPooling, shape, cutoffM, lagM, estimator);
  }

  /** One shape in place of the short list. */
  public VariogramSettings withShape(Shape only) {
    return new VariogramSettings(pooling, Optional.of(only), cutoffM, lagM, estimator);
  }

  public VariogramSettings withCutoffM(double newCutoffM) {
    return new VariogramSettings(pooling, shape, newCutoffM, lagM, estimator);
  }

  public VariogramSettings withLagM(double newLagM) {
    return new VariogramSettings(pooling, shape, cutoffM, newLagM, estimator);
  }

  public VariogramSettings withEstimator(Estimator newEstimator) {
    return new VariogramSettings(pooling, shape, cutoffM, lagM, newEstimator);
  }
}
