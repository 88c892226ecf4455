package org.mottle.engine.precision;

import java.util.Arrays;
import java.util.List;
import org.mottle.engine.check.Check;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.kriging.Targets;
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
 * kriging does not depend on the values, so it is known before any is read. Immutable.
 */
public final class Prediction {
  private static final double PIECE_M = 1;

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
    this.sd =
        Arrays.stream(predictor.estimate(targets(), 1, Progress.NONE).variances())
            .map(v -> Math.sqrt(Math.max(0, v)))
            .toArray();
  }

  /**
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
    Observations observations =
        Observations.of(
                read.stream().mapToDouble(PlannedStation::x).toArray(),
                read.stream().mapToDouble(PlannedStation::y).toArray(),
                new double[read.size()])
            .withMeasurementVariance(
                read.stream().mapToDouble(s -> model.nugget() / s.insertions()).toArray())
            .withPositionError(new PositionError(jitter, 0));
    return new Prediction(AreaPoints.of(green.outline(), PIECE_M), model, observations);
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

  /** Share of the variance of the local mean that the map would explain, 0 to 1. */
  public double explained() {
    double sill = model.sill() - model.nugget();
    double left = weighted(Arrays.stream(sd).map(s -> s * s).toArray());
    return Math.max(0, 1 - left / sill);
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

  /** [piece][station] kriging weights. */
  double[][] weights() {
    var weights = predictor.weights(targets());
    double[][] byPiece = new double[weights.targets()][weights.observations()];
    for (int j = 0; j < byPiece.length; j++) {
      for (int i = 0; i < byPiece[j].length; i++) {
        byPiece[j][i] = weights.weight(i, j);
      }
    }
    return byPiece;
  }
}
