package org.mottle.engine.precision;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.check.Check;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.kriging.Weights;
import org.mottle.engine.likelihood.VariogramPrior;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.plan.AreaPoints;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * What a map of planned stations would be worth: ordinary kriging of the local mean (the nugget is
 * filtered) with a variogram that is given or borrowed, stations found by pacing. The variance of
 * kriging does not depend on the values, so it is known before any is read (Webster & Oliver 2007,
 * Geostatistics for Environmental Scientists, ch. 8). It holds if the variogram does: that it has
 * to be estimated too is not in it. Some n³/3 + 500 n² operations for n stations; immutable, shared
 * by threads.
 */
public final class Prediction {
  /** Side of a piece of ground, m: a fraction of any range that a green's stations could show. */
  static final double PIECE_M = 1;

  private final AreaPoints pieces;
  private final NestedModel model;
  private final Observations stations;
  private final Predictor predictor;
  private final double[] sd;

  private Prediction(AreaPoints pieces, NestedModel model, Observations stations) {
    this.pieces = pieces;
    this.model = model;
    this.stations = stations;
    this.predictor = Kriging.ordinary(model.withNugget(0)).fit(stations);
    if (!predictor.soundness().sound()) {
      throw new IllegalArgumentException(
          "the stations cannot be kriged: " + predictor.soundness().reason());
    }
    this.sd =
        Arrays.stream(predictor.estimate(targets(), 1, Progress.NONE).variances())
            .map(v -> Math.sqrt(Math.max(0, v)))
            .toArray();
  }

  /**
   * Planned stations, found by pacing.
   *
   * @param stations control stations are left out
   * @param model bounded, nugget included
   */
  public static Prediction of(Green green, List<PlannedStation> stations, NestedModel model) {
    List<PlannedStation> read =
        stations.stream().filter(s -> s.role() != Reading.Role.CONTROL).toList();
    if (read.isEmpty()) {
      throw new IllegalArgumentException("green " + green.id() + " has no station to predict from");
    }
    double[] jitter = new double[read.size()];
    Arrays.fill(jitter, PositionSource.PLANNED.jitterM());
    return of(
        green.outline(),
        read.stream().mapToDouble(PlannedStation::x).toArray(),
        read.stream().mapToDouble(PlannedStation::y).toArray(),
        read.stream().mapToDouble(PlannedStation::insertions).toArray(),
        model,
        new PositionError(jitter, 0));
  }

  /**
   * Stations that are read, or were.
   *
   * @param outline of the green, m
   * @param x [n] east, m
   * @param y [n] north, m
   * @param insertions [n] of the probe at each, at least 1
   * @param model bounded, nugget included
   * @param error of the places, n of them
   * @throws IllegalArgumentException without stations, for a model that does not level off, or for
   *     stations that cannot be kriged: two at one exact place without a nugget
   */
  public static Prediction of(
      Geometry outline,
      double[] x,
      double[] y,
      double[] insertions,
      NestedModel model,
      PositionError error) {
    if (x.length == 0) {
      throw new IllegalArgumentException("there are 0 stations; a prediction takes 1 or more");
    }
    if (!model.bounded()) {
      throw new IllegalArgumentException(
          "a prediction takes a variogram that levels off, was " + model);
    }
    if (insertions.length != x.length) {
      throw new IllegalArgumentException(
          "there are "
              + insertions.length
              + " numbers of insertions for "
              + x.length
              + " stations");
    }
    double[] variance = new double[x.length];
    for (int i = 0; i < variance.length; i++) {
      Check.atLeast("insertions at station " + (i + 1), insertions[i], 1, "");
      variance[i] = model.nugget() / insertions[i];
    }
    Observations observations =
        Observations.of(x, y, new double[x.length])
            .withMeasurementVariance(variance)
            .withPositionError(error);
    return new Prediction(AreaPoints.of(outline, PIECE_M), model, observations);
  }

  /**
   * The variogram that is assumed of putting greens where none is known, spherical, with the shares
   * of {@link VariogramPrior#PUTTING_GREENS}.
   *
   * @param totalSd standard deviation of single readings, % by volume
   */
  public static NestedModel borrowed(double totalSd) {
    Check.above("standard deviation", totalSd, 0, "% by volume");
    VariogramPrior prior = VariogramPrior.PUTTING_GREENS;
    double nugget = prior.nuggetShare() * totalSd * totalSd;
    return NestedModel.of(nugget, new Spherical(totalSd * totalSd - nugget, prior.rangeM()));
  }

  /** Mean over the green of the standard deviation of the map, % by volume. */
  public double meanSd() {
    return weighted(sd);
  }

  /** The largest, % by volume. */
  public double largestSd() {
    return Arrays.stream(sd).max().orElseThrow();
  }

  /** Standard deviation of the local mean itself, % by volume: what a map has to tell. */
  public double structuredSd() {
    return Math.sqrt(Math.max(0, model.sill() - model.nugget()));
  }

  /**
   * Share of the variance of the local mean that the map would explain, 0 to 1; 0 where the
   * variogram is all nugget. Fewer than 0 would be explained where the mean of so few stations is
   * worse than a mean known beforehand; that counts as 0.
   */
  public double explained() {
    double sill = model.sill() - model.nugget();
    double left = weighted(Arrays.stream(sd).map(s -> s * s).toArray());
    return sill > 0 ? Math.max(0, 1 - left / sill) : 0;
  }

  private double weighted(double[] values) {
    double sum = 0;
    double area = 0;
    for (int i = 0; i < values.length; i++) {
      sum += values[i] * pieces.areaM2(i);
      area += pieces.areaM2(i);
    }
    return sum / area;
  }

  private Targets targets() {
    return Targets.of(pieces.positions().xs(), pieces.positions().ys());
  }

  AreaPoints pieces() {
    return pieces;
  }

  NestedModel model() {
    return model;
  }

  Observations stations() {
    return stations;
  }

  /** Weights of the stations in the estimate of every piece of ground. */
  Weights weights() {
    return predictor.weights(targets());
  }
}
