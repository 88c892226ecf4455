package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.mottle.engine.check.Check;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.fit.Shape;
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

  private static final String NAMES =
      Arrays.stream(Shape.values())
          .map(shape -> shape.name().toLowerCase(Locale.ROOT))
          .collect(Collectors.joining(", "));

  public VariogramSettings {
    model.ifPresent(VariogramSettings::shape);
    if (!Double.isNaN(cutoffM)) {
      Check.above("cutoff of the variogram", cutoffM, 0, "m");
    }
    if (!Double.isNaN(lagM)) {
      Check.above("width of a lag", lagM, 0, "m");
    }
  }

  public static VariogramSettings defaults() {
    return new VariogramSettings(
        Pooling.SURVEY,
        Optional.empty(),
        Double.NaN,
        Double.NaN,
        Estimator.CRESSIE_HAWKINS,
        Weighting.PAIRS);
  }

  public VariogramSettings withPooling(Pooling newPooling) {
    return new VariogramSettings(newPooling, model, cutoffM, lagM, estimator, weighting);
  }

  /** One model, by its name, in place of the best of the short list. */
  public VariogramSettings withModel(String name) {
    return new VariogramSettings(pooling, Optional.of(name), cutoffM, lagM, estimator, weighting);
  }

  public VariogramSettings withCutoffM(double newCutoffM) {
    return new VariogramSettings(pooling, model, newCutoffM, lagM, estimator, weighting);
  }

  public VariogramSettings withLagM(double newLagM) {
    return new VariogramSettings(pooling, model, cutoffM, newLagM, estimator, weighting);
  }

  public VariogramSettings withEstimator(Estimator newEstimator) {
    return new VariogramSettings(pooling, model, cutoffM, lagM, newEstimator, weighting);
  }

  public VariogramSettings withWeighting(Weighting newWeighting) {
    return new VariogramSettings(pooling, model, cutoffM, lagM, estimator, newWeighting);
  }

  /** The shape that is asked for; empty: the best of the short list. */
  Optional<Shape> shape() {
    return model.map(VariogramSettings::shape);
  }

  private static Shape shape(String name) {
    return Arrays.stream(Shape.values())
        .filter(shape -> shape.name().equalsIgnoreCase(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "there is no model '" + name + "' of a variogram; there are " + NAMES));
  }
}
