package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.TrendCoefficient;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.NestedModel;

/**
 * Whether the readings slope across a green by more than their variogram allows. The variogram is
 * found free of any plane, so a green that dries evenly from one end to the other shows no
 * structure, and about a constant mean its map would be flat.
 *
 * <p>The slope is that of generalised least squares; its two coefficients over their standard
 * errors, as a length, averaged over the draws. On 60 invented greens of noise, with a wet place or
 * with waves it was 2.8 at most, on greens that slope by 0.25 % a metre 7 to 11. Errors of position
 * are left out of it: they hide a slope rather than feign one; so are readings that are kept out of
 * the variogram.
 *
 * @param deviations length of the slope in standard errors
 * @param gradient of the slope, % by volume a metre
 */
record Slope(double deviations, double gradient) {
  private static final double MOST_BY_CHANCE = 4;

  static Slope of(Prepared green, List<NestedModel> models) {
    Sample sample = green.sample().screened();
    Observations o = sample.observations();
    double east = 0;
    double north = 0;
    double gradient = 0;
    for (NestedModel model : models) {
      double[] variance =
          Arrays.stream(sample.insertions()).mapToDouble(k -> model.nugget() / k).toArray();
      List<TrendCoefficient> plane =
          Kriging.ordinary(model.withNugget(0))
              .with(Drift.coordinates())
              .system(Observations.of(o.xs(), o.ys(), o.values()).withMeasurementVariance(variance))
              .trendCoefficients();
      if (!plane.isEmpty()) {
        east += plane.get(1).value() / plane.get(1).standardError() / models.size();
        north += plane.get(2).value() / plane.get(2).standardError() / models.size();
        gradient += Math.hypot(plane.get(1).value(), plane.get(2).value()) / models.size();
      }
    }
    return new Slope(Math.hypot(east, north), gradient);
  }

  boolean found() {
    return deviations > MOST_BY_CHANCE;
  }

  /** A plane where there is one, else a constant mean. */
  Drift drift() {
    return found() ? Drift.coordinates() : Drift.constant();
  }

  /**
   * The observations with what errors of position do on a slope: variance of each reading, and an
   * error that all have in common.
   */
  Observations onSlope(Observations observations) {
    PositionError error = observations.positionError();
    if (!found() || error.exact()) {
      return observations;
    }
    double[] variance = new double[observations.size()];
    double[] all = new double[observations.size()];
    for (int i = 0; i < variance.length; i++) {
      double off = gradient * error.jitterSdM(i);
      variance[i] = observations.measurementVariance(i) + off * off;
      all[i] = 1;
    }
    double shift = gradient * error.shiftSdM();
    List<CommonError> common = new ArrayList<>(observations.commonErrors());
    common.add(new CommonError(all, shift * shift));
    return observations.withMeasurementVariance(variance).withCommonErrors(common);
  }
}
