package org.mottle.export.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.BlockSupport;
import org.mottle.engine.kriging.CellStatus;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Predictor;
import org.mottle.engine.kriging.Soundness;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.validation.LeaveOneOut;
import org.mottle.engine.validation.Predictions;
import org.mottle.engine.validation.Scores;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.export.model.ModelFile;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.record.Json;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code mottle estimate}: kriging or inverse distance at given places, for any point table. */
@Command(
    name = "estimate",
    mixinStandardHelpOptions = true,
    description = "Kriging or inverse distance at given places, for any point table.")
final class EstimateCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin PointOptions points;

  @Mixin EstimateOptions options;

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    EstimateMethod chosen = new EstimateCheck(options, problems).method();
    OutputFile.check(options.out, common.overwrite, problems);
    points.check(problems);
    problems.throwIfAny();
    List<String> columns = options.driftColumns();
    PointOptions.Table known = points.read(columns, common);
    Observations observations =
        known
            .observations()
            .withMeasurementVariance(
                filled(known.observations().size(), options.measurementVariance));
    Spec spec = spec(chosen);
    if (options.leaveOneOut) {
      return leaveOneOut(spec, observations);
    }
    PointOptions.Places places = points.places(options.at, columns, common);
    return estimate(spec, observations, places);
  }

  /** What to do, once all options are known to fit together. */
  private record Spec(Kriging kriging, InverseDistance inverseDistance) {}

  private Spec spec(EstimateMethod chosen) throws IOException {
    Neighbourhood near =
        new Neighbourhood(
            options.neighbours == null ? Integer.MAX_VALUE : options.neighbours,
            options.radius == null ? Double.POSITIVE_INFINITY : options.radius);
    if (chosen == EstimateMethod.INVERSE_DISTANCE) {
      return new Spec(null, new InverseDistance(options.power, near));
    }
    NestedModel variogram = ModelFile.read(options.model);
    if (options.splitNugget) {
      if (options.measurementVariance > variogram.nugget()) {
        throw new InputRefused(
            String.format(
                Locale.ROOT,
                "--split-nugget: the nugget of %s is %s, less than the measurement variance %s",
                options.model,
                variogram.nugget(),
                options.measurementVariance));
      }
      variogram = variogram.withNugget(variogram.nugget() - options.measurementVariance);
    }
    NestedModel fitted = variogram;
    return new Spec(refusing(() -> new Kriging(fitted, driftOf(chosen), near, support())), null);
  }

  private void refuseUnsolvable(Soundness soundness) {
    if (!soundness.sound()) {
      throw new InputRefused(Path.of(points.points).getFileName() + ": " + soundness.reason());
    }
  }

  /** What the engine will not do with these options and points is a refusal, not a fault. */
  private static <T> T refusing(Supplier<T> step) {
    try {
      return step.get();
    } catch (IllegalArgumentException e) {
      throw new InputRefused(e.getMessage());
    }
  }

  private Drift driftOf(EstimateMethod chosen) {
    boolean plane = options.hasPlane();
    boolean columns = !options.driftColumns().isEmpty();
    return switch (chosen) {
      case SIMPLE_KRIGING -> Drift.knownMean(options.mean);
      case UNIVERSAL_KRIGING ->
          plane && columns
              ? Drift.coordinatesAndCovariates()
              : plane ? Drift.coordinates() : Drift.covariates();
      default -> Drift.constant();
    };
  }

  private BlockSupport support() {
    if (options.block == null) {
      return BlockSupport.POINT;
    }
    String[] sides = options.block.split("x");
    return new BlockSupport(Double.parseDouble(sides[0]), Double.parseDouble(sides[1]));
  }

  private int estimate(Spec spec, Observations observations, PointOptions.Places places)
      throws IOException {
    Estimates estimates;
    double condition = Double.NaN;
    try (ConsoleProgress progress = common.progress()) {
      if (spec.kriging() == null) {
        estimates =
            spec.inverseDistance()
                .estimate(observations, places.targets(), common.threads(), progress);
      } else {
        Predictor predictor = refusing(() -> spec.kriging().fit(observations));
        refuseUnsolvable(predictor.soundness());
        estimates = predictor.estimate(places.targets(), common.threads(), progress);
        condition = estimates.conditionEstimate();
      }
    }
    StringBuilder csv = new StringBuilder("x,y,estimate,variance,status\n");
    Targets t = places.targets();
    for (int i = 0; i < t.size(); i++) {
      csv.append(CsvNumber.of(t.x(i))).append(',').append(CsvNumber.of(t.y(i))).append(',');
      csv.append(CsvNumber.of(estimates.value(i)))
          .append(',')
          .append(CsvNumber.of(estimates.variance(i)));
      csv.append(',').append(word(estimates.status(i))).append('\n');
    }
    write(csv);
    int missing = estimates.size() - estimates.count(CellStatus.ESTIMATED);
    Map<String, Object> summary = new LinkedHashMap<>();
    summary.put("points", observations.size());
    summary.put("targets", estimates.size());
    for (CellStatus status : CellStatus.values()) {
      summary.put(word(status).replace('-', '_'), estimates.count(status));
    }
    summary.put("condition_estimate", condition);
    summary.put("variances_clamped_to_zero", estimates.clamped());
    tell(summary);
    if (missing > 0 && !common.quiet) {
      System.err.printf(
          Locale.ROOT,
          "%d of %d places not estimated: too few points within reach at %d, ill-conditioned at %d%n",
          missing,
          estimates.size(),
          estimates.count(CellStatus.TOO_FEW_NEIGHBOURS),
          estimates.count(CellStatus.ILL_CONDITIONED));
    }
    return missing == estimates.size() ? ExitCode.PARTLY : ExitCode.DONE;
  }

  private int leaveOneOut(Spec spec, Observations observations) throws IOException {
    Predictions result;
    try (ConsoleProgress progress = common.progress()) {
      int threads = common.threads();
      result =
          spec.kriging() == null
              ? LeaveOneOut.of(spec.inverseDistance(), observations, threads, progress)
              : refusing(() -> LeaveOneOut.of(spec.kriging(), observations, threads, progress));
    }
    if (spec.kriging() != null && result.estimates().count(CellStatus.ESTIMATED) == 0) {
      refuseUnsolvable(refusing(() -> spec.kriging().system(observations)).soundness());
    }
    StringBuilder csv = new StringBuilder("x,y,observed,estimate,variance,residual,zscore\n");
    for (int i = 0; i < observations.size(); i++) {
      csv.append(CsvNumber.of(observations.x(i))).append(',');
      csv.append(CsvNumber.of(observations.y(i))).append(',');
      csv.append(CsvNumber.of(observations.value(i))).append(',');
      csv.append(CsvNumber.of(result.predicted(i)))
          .append(',')
          .append(CsvNumber.of(result.variance(i)));
      csv.append(',').append(CsvNumber.of(result.residual(i))).append(',');
      csv.append(CsvNumber.of(result.z(i))).append('\n');
    }
    write(csv);
    Scores scores = result.scores(0.9);
    Map<String, Object> summary = new LinkedHashMap<>();
    summary.put("points", observations.size());
    summary.put("estimated", scores.predictions());
    summary.put("me", scores.meanError());
    summary.put("rmse", scores.rootMeanSquareError());
    summary.put("mae", scores.meanAbsoluteError());
    summary.put("msdr", scores.meanSquaredDeviationRatio());
    summary.put("median_squared_z", scores.medianSquaredZ());
    summary.put("coverage_90", scores.coverage());
    tell(summary);
    return ExitCode.DONE;
  }

  private void write(StringBuilder csv) throws IOException {
    if (options.out != null) {
      OutputFile.write(options.out, csv);
    } else if (!common.json) {
      System.out.print(csv);
    }
  }

  private void tell(Map<String, Object> summary) {
    if (common.json) {
      System.out.println(Json.text(summary));
    } else if (!common.quiet) {
      summary.forEach((name, value) -> System.err.println(name + " " + value));
    }
  }

  private static String word(CellStatus status) {
    return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static double[] filled(int n, double value) {
    double[] array = new double[n];
    Arrays.fill(array, value);
    return array;
  }
}
