package org.mottle.engine.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.patch.RegionMean;
import org.mottle.engine.plan.ModelDraw;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.simulation.ConditionalSimulation;
import org.mottle.engine.simulation.Draw;
import org.mottle.engine.simulation.RealisationVisitor;
import org.mottle.engine.simulation.Simulation;
import org.mottle.engine.simulation.SimulationOutcome;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.SharedError;
import org.mottle.engine.validation.LeaveOneOut;
import org.mottle.engine.validation.Predictions;
import org.mottle.engine.variogram.NestedModel;

/**
 * One green kriged under every draw of its variogram. What is mapped is the local mean, some
 * decimetres across: the nugget, be it the probe's or the soil's within a hand's breadth, is
 * filtered by giving it to the readings as variance of their measurement (a station read k times
 * has 1/k of it).
 */
final class KrigedGreen {
  /** Draws that areal means and next stations are averaged over; they need no more. */
  private static final int FEW = 8;

  private final GreenCells cells;
  private final Drift drift;
  private final List<NestedModel> models;
  private final List<Draw> draws;
  private final ConditionalSimulation simulation;
  private final List<Predictor> few;

  private KrigedGreen(
      GreenCells cells,
      Drift drift,
      List<NestedModel> models,
      List<Draw> draws,
      ConditionalSimulation simulation) {
    this.cells = cells;
    this.drift = drift;
    this.models = models;
    this.draws = draws;
    this.simulation = simulation;
    this.few = spread().mapToObj(draws::get).map(d -> kriging(d).fit(d.observations())).toList();
  }

  /** Either the green or why it could not be kriged. */
  record Attempt(Optional<KrigedGreen> green, Optional<Refusal> refusal) {}

  /**
   * @param green the values that are kriged
   * @param models equally likely, nugget included
   * @param slope of the mean
   */
  static Attempt of(
      Prepared green,
      List<NestedModel> models,
      Slope slope,
      GreenCells cells,
      UncertaintySettings settings,
      int threads,
      Progress progress) {
    Observations all = withCommon(green, settings.operatorSdPct());
    List<Draw> draws = new ArrayList<>();
    for (NestedModel model : models) {
      double[] variance =
          Arrays.stream(green.insertions()).mapToDouble(k -> model.nugget() / k).toArray();
      draws.add(
          new Draw(model.withNugget(0), slope.onSlope(all.withMeasurementVariance(variance))));
    }
    SimulationOutcome outcome =
        Simulation.withDefaults()
            .with(slope.drift())
            .withRealisations(settings.realisations())
            .withSeed(seed(settings.seed(), green.subject()))
            .of(draws, cells, threads, progress);
    if (outcome instanceof SimulationOutcome.NotSimulated not) {
      return new Attempt(Optional.empty(), Optional.of(not.refusal()));
    }
    return new Attempt(
        Optional.of(
            new KrigedGreen(cells, slope.drift(), models, draws, (ConditionalSimulation) outcome)),
        Optional.empty());
  }

  /** One sub-stream a green and survey, whatever else is mapped with it. */
  private static long seed(long seed, GreenSurvey subject) {
    long mixed = seed;
    for (char c : (subject.green().id() + "/" + subject.surveyId()).toCharArray()) {
      mixed = (mixed ^ c) * 0x100000001b3L;
    }
    return mixed;
  }

  /** What the readings of one operator have in common, and what the review found in common. */
  static Observations withCommon(Prepared green, double operatorSd) {
    List<CommonError> common = new ArrayList<>();
    if (operatorSd > 0) {
      int n = green.observations().size();
      Map<String, double[]> shares = new LinkedHashMap<>();
      for (int i = 0; i < n; i++) {
        List<Reading> insertions = green.station(i).insertions();
        for (Reading reading : insertions) {
          shares.computeIfAbsent(reading.protocol().operator(), o -> new double[n])[i] +=
              1.0 / insertions.size();
        }
      }
      shares
          .values()
          .forEach(s -> common.add(new CommonError(atMostOne(s), operatorSd * operatorSd)));
    }
    green.subject().errors().shared().stream()
        .filter(e -> e.variance() > 0)
        .forEach(e -> common.add(new CommonError(atMostOne(shares(green, e)), e.variance())));
    return common.isEmpty() ? green.observations() : green.observations().withCommonErrors(common);
  }

  /** Of each value: the mean of its insertions' shares. */
  private static double[] shares(Prepared green, SharedError error) {
    Map<Reading, Double> byReading = new IdentityHashMap<>();
    double[] share = error.share();
    List<Reading> readings = green.subject().readings();
    for (int k = 0; k < share.length; k++) {
      byReading.put(readings.get(k), share[k]);
    }
    double[] shares = new double[green.observations().size()];
    Arrays.setAll(
        shares,
        i ->
            green.station(i).insertions().stream()
                .mapToDouble(byReading::get)
                .average()
                .orElseThrow());
    return shares;
  }

  private static double[] atMostOne(double[] shares) {
    return Arrays.stream(shares).map(v -> Math.max(-1, Math.min(1, v))).toArray();
  }

  private Kriging kriging(Draw draw) {
    return Kriging.ordinary(draw.model()).with(drift);
  }

  GreenCells cells() {
    return cells;
  }

  /** The first of equal stretches of the draws would be a corner of them: their middles. */
  private IntStream spread() {
    int n = Math.min(FEW, draws.size());
    return IntStream.range(0, n).map(i -> (int) ((i + 0.5) * draws.size() / n));
  }

  /** Mean and its standard deviation, that between the draws included. */
  Surface surface() {
    double condition = few.stream().mapToDouble(Predictor::conditionEstimate).max().orElse(1);
    return Surface.of(cells, simulation.mean(), simulation.standardDeviation(), condition);
  }

  double[] sd() {
    return simulation.standardDeviation();
  }

  double[] below(double limit) {
    return simulation.probabilityBelow(limit);
  }

  double[] above(double limit) {
    return simulation.probabilityAbove(limit);
  }

  int realisations() {
    return simulation.realisations();
  }

  /** Shows every realisation, one value for each centre needed. */
  void forEach(RealisationVisitor visitor, int threads, Progress progress) {
    simulation.forEach(visitor, threads, progress);
  }

  /** Mean nugget of an insertion, % by volume squared. */
  double nugget() {
    return models.stream().mapToDouble(NestedModel::nugget).average().orElseThrow();
  }

  /** Root of the mean sill of the structure, % by volume. */
  double structuredSd() {
    return Math.sqrt(draws.stream().mapToDouble(d -> d.model().sill()).average().orElseThrow());
  }

  /** Mean over a piece of ground with the standard deviation of its error. */
  RegionMean regionMean() {
    return (x, y, weight) -> {
      double sum = 0;
      double squares = 0;
      double variance = 0;
      for (Predictor predictor : few) {
        Estimate mean = predictor.mean(x, y, weight);
        sum += mean.value();
        squares += mean.value() * mean.value();
        variance += mean.variance();
      }
      double value = sum / few.size();
      double between = Math.max(0, squares / few.size() - value * value);
      return new RegionMean.MeanAndSd(value, Math.sqrt(variance / few.size() + between));
    };
  }

  /** Every value predicted from the others, under all draws. */
  Predictions leaveOneOut() {
    return Predictions.mixture(
        draws.stream()
            .map(d -> LeaveOneOut.of(kriging(d), d.observations(), 1, Progress.NONE))
            .toList());
  }

  /** For the choice of stations to be read next. */
  List<ModelDraw> modelDraws(double jitterM) {
    return spread()
        .mapToObj(
            i ->
                new ModelDraw(
                        kriging(draws.get(i)).system(draws.get(i).observations()),
                        models.get(i).nugget())
                    .withPositionError(draws.get(i).model(), jitterM))
        .toList();
  }
}
