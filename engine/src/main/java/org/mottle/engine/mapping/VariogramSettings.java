package org.mottle.engine.mapping;

import java.util.Optional;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.fit.Weighting;

/**
 * How the variogram of a survey is made.
 *
 * @param pooling over which greens
 * @param model name of one model, or empty: the best of a short list
 * @param cutoffM longest lag used, m; NaN: half of the longest diagonal of a green's readings
 * @param lagM width of a lag class, m; NaN: a fifteenth of the cutoff
 * @param estimator of the semivariance
 * @param weighting of the lag classes in the fit
 */
public record VariogramSettings(
    Pooling pooling,
    Optional<String> model,
    double cutoffM,
    double lagM,
    Estimator estimator,
    Weighting weighting) {

  public static VariogramSettings defaults() {
    return new VariogramSettings(
        Pooling.SURVEY,
        Optional.empty(),
        Double.NaN,
        Double.NaN,
        Estimator.CRESSIE_HAWKINS,
        Weighting.PAIRS);
  }
}
