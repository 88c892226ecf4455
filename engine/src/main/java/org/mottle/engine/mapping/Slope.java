package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.TrendCoefficient;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.NestedModel;

/**
 * Whether the readings slope across a green by more than their variogram allows. The variogram is
 * found free of any plane, so a green that dries evenly from one end to the other shows no
 * structure, and about a constant mean its map would be flat.
 *
 * <p>The slope is that of generalised least squares; its two coefficients over their standard
 * errors, as a length, averaged over the draws, exceed 4 by chance in 1 green of 3,000 (exp(-8)).
 * Errors of position are left out of it: they hide a slope rather than feign one.
 *
 * @param deviations length of the slope in standard errors
 * @param exact whether kriging can take a plane in: not with errors of position
 */
record Slope(double deviations, boolean exact) {
  private static final double MOST_BY_CHANCE = 4;

  static Slope of(Prepared green, List<NestedModel> models) {
    Observations o = green.observations();
    double east = 0;
    double north = 0;
    for (NestedModel model : models) {
      double[] variance =
          Arrays.stream(green.insertions()).mapToDouble(k -> model.nugget() / k).toArray();
      List<TrendCoefficient> plane =
          Kriging.ordinary(model.withNugget(0))
              .with(Drift.coordinates())
              .system(Observations.of(o.xs(), o.ys(), o.values()).withMeasurementVariance(variance))
              .trendCoefficients();
      if (!plane.isEmpty()) {
        east += plane.get(1).value() / plane.get(1).standardError() / models.size();
        north += plane.get(2).value() / plane.get(2).standardError() / models.size();
      }
    }
    return new Slope(Math.hypot(east, north), o.positionError().exact());
  }

  boolean found() {
    return deviations > MOST_BY_CHANCE;
  }

  /** A plane where there is one and it can be taken in; else a constant mean. */
  Drift drift() {
    return found() && exact ? Drift.coordinates() : Drift.constant();
  }
}
