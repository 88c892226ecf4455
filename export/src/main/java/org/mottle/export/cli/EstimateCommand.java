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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
import picocli.CommandLine.Option;

/** {@code mottle estimate}: kriging or inverse distance at given places, for any point table. */
@Command(
    name = "estimate",
    mixinStandardHelpOptions = true,
    description = "Kriging or inverse distance at given places, for any point table.")
final class EstimateCommand implements Callable<Integer> {

  /** Width and height in metres. */
  private static final Pattern BLOCK =
      Pattern.compile("([0-9]+(?:\\.[0-9]+)?)x([0-9]+(?:\\.[0-9]+)?)");

  /** How the estimate is made. */
  enum EstimateMethod {
    ORDINARY_KRIGING,
    SIMPLE_KRIGING,
    UNIVERSAL_KRIGING,
    INVERSE_DISTANCE
  }

  @Mixin CommonOptions common;
  @Mixin PointOptions points;

  @Option(names = "--at", paramLabel = "FILE", description = "Table of the places to estimate.")
  Path at;

  @Option(
      names = "--model",
      paramLabel = "FILE",
      description = "Variogram model, as 'variogram' writes it.")
  Path model;

  @Option(
      names = "--method",
      paramLabel = "NAME",
      description =
          "ordinary-kriging, simple-kriging, universal-kriging or inverse-distance; default"
              + " ${DEFAULT-VALUE}.")
  String method = "ordinary-kriging";

  @Option(names = "--mean", paramLabel = "M", description = "Known mean, for simple kriging.")
  double mean = Double.NaN;

  @Option(
      names = "--drift",
      paramLabel = "x,y | COLUMN,...",
      split = ",",
      description =
          "Terms of the drift, for universal kriging: x,y for a plane, or columns of both tables.")
  List<String> drift = List.of();

  @Option(
      names = "--power",
      paramLabel = "P",
      description = "Power of the inverse distance; default ${DEFAULT-VALUE}.")
  double power = 2;

  @Option(
      names = "--neighbours",
      paramLabel = "N",
      description = "Use the nearest N; default: all.")
  Integer neighbours;

  @Option(names = "--radius", paramLabel = "M", description = "Use points this near; default: all.")
  double radius = Double.NaN;

  @Option(
      names = "--block",
      paramLabel = "WxH",
      description = "Estimate means of blocks of this width and height round each place, m.")
  String block;

  @Option(
      names = "--measurement-variance",
      paramLabel = "V",
      description =
          "Variance of the measurement of every point. It is no part of the model's nugget and is"
              + " taken out of the estimate's target: the soil, not the probe.")
  double measurementVariance = 0;

  @Option(
      names = "--split-nugget",
      description =
          "The model's nugget was fitted to these measurements and so holds the measurement"
              + " variance: take it out of the nugget.")
  boolean splitNugget;

  @Option(
      names = "--leave-one-out",
      description = "Estimate every point from the others, and score the estimates.")
  boolean leaveOneOut;

  @Option(names = "--out", paramLabel = "FILE", description = "CSV to write; stdout without it.")
  Path out;

  @Override
  public Integer call() throws IOException {
    EstimateMethod chosen = checkOptions();
    List<String> columns = drift.stream().filter(c -> !isCoordinate(c)).toList();
    PointOptions.Table known = points.read(columns, common);
    Observations observations =
        known
            .observations()
            .withMeasurementVariance(filled(known.observations().size(), measurementVariance));
    Spec spec = spec(chosen);
    if (leaveOneOut) {
      return leaveOneOut(spec, observations);
    }
    PointOptions.Places places = points.places(at, columns, common);
    return estimate(spec, observations, places);
  }

  private EstimateMethod checkOptions() {
    Problems problems = new Problems();
    EstimateMethod chosen =
        VariogramCommand.choice("--method", method, EstimateMethod.values(), problems);
    boolean kriging = chosen != EstimateMethod.INVERSE_DISTANCE;
    problems.require(
        !kriging || model != null,
        "%s needs --model, the file that 'mottle variogram --out' wrote",
        method);
    problems.require(
        chosen != EstimateMethod.SIMPLE_KRIGING || !Double.isNaN(mean),
        "simple-kriging needs --mean, the mean of the field");
    problems.require(
        chosen != EstimateMethod.UNIVERSAL_KRIGING || !drift.isEmpty(),
        "universal-kriging needs --drift: x,y for a plane, or names of columns");
    problems.require(
        drift.isEmpty() || chosen == EstimateMethod.UNIVERSAL_KRIGING,
        "--drift belongs to --method universal-kriging, was %s",
        method);
    problems.require(
        drift.stream().filter(EstimateCommand::isCoordinate).count() != 1,
        "--drift %s: a plane needs both x and y",
        String.join(",", drift));
    problems.require(
        leaveOneOut || at != null, "give --at, the places to estimate, or --leave-one-out");
    problems.require(
        !(leaveOneOut && block != null), "--leave-one-out is at points: leave out --block");
    problems.require(kriging || block == null, "--block belongs to kriging");
    problems.require(
        neighbours == null || neighbours >= 1,
        "--neighbours must be 1 or more, was %s",
        neighbours);
    problems.require(
        Double.isNaN(radius) || radius > 0, "--radius must be above 0 m, was %s", radius);
    problems.require(power > 0, "--power must be above 0, was %s", power);
    problems.require(
        measurementVariance >= 0,
        "--measurement-variance must be 0 or more, was %s",
        measurementVariance);
    problems.require(
        kriging || measurementVariance == 0, "--measurement-variance belongs to kriging");
    problems.require(
        chosen == EstimateMethod.SIMPLE_KRIGING || Double.isNaN(mean),
        "--mean belongs to --method simple-kriging, was %s",
        method);
    problems.require(
        block == null || isBlock(block),
        "--block must be WIDTHxHEIGHT in metres, both above 0, as 40x40, was '%s'",
        block);
    OutputFile.check(out, common.overwrite, problems);
    points.check(problems);
    problems.throwIfAny();
    return chosen;
  }

  private static boolean isBlock(String text) {
    Matcher sides = BLOCK.matcher(text);
    return sides.matches()
        && Double.parseDouble(sides.group(1)) > 0
        && Double.parseDouble(sides.group(2)) > 0;
  }

  private static boolean isCoordinate(String term) {
    return term.equals("x") || term.equals("y");
  }

  /** What to do, once all options are known to fit together. */
  private record Spec(Kriging kriging, InverseDistance inverseDistance) {}

  private Spec spec(EstimateMethod chosen) throws IOException {
    Neighbourhood near =
        new Neighbourhood(
            neighbours == null ? Integer.MAX_VALUE : neighbours,
            Double.isNaN(radius) ? Double.POSITIVE_INFINITY : radius);
    if (chosen == EstimateMethod.INVERSE_DISTANCE) {
      return new Spec(null, new InverseDistance(power, near));
    }
    NestedModel variogram = ModelFile.read(model);
    if (splitNugget) {
      if (measurementVariance > variogram.nugget()) {
        throw new InputRefused(
            String.format(
                Locale.ROOT,
                "--split-nugget: the nugget of %s is %s, less than the measurement variance %s",
                model,
                variogram.nugget(),
                measurementVariance));
      }
      variogram = variogram.withNugget(variogram.nugget() - measurementVariance);
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
    boolean plane = drift.stream().anyMatch(EstimateCommand::isCoordinate);
    boolean columns = drift.stream().anyMatch(t -> !isCoordinate(t));
    return switch (chosen) {
      case SIMPLE_KRIGING -> Drift.knownMean(mean);
      case UNIVERSAL_KRIGING ->
          plane && columns
              ? Drift.coordinatesAndCovariates()
              : plane ? Drift.coordinates() : Drift.covariates();
      default -> Drift.constant();
    };
  }

  private BlockSupport support() {
    if (block == null) {
      return BlockSupport.POINT;
    }
    String[] sides = block.split("x");
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
      csv.append(t.x(i)).append(',').append(t.y(i)).append(',');
      csv.append(shown(estimates.value(i))).append(',').append(shown(estimates.variance(i)));
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
      csv.append(observations.x(i)).append(',').append(observations.y(i)).append(',');
      csv.append(observations.value(i)).append(',');
      csv.append(shown(result.predicted(i))).append(',').append(shown(result.variance(i)));
      csv.append(',').append(shown(result.residual(i))).append(',');
      csv.append(shown(result.z(i))).append('\n');
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
    if (out != null) {
      OutputFile.write(out, csv);
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

  /** The shortest digits that read back as the same number; nothing where there is none. */
  private static String shown(double value) {
    return Double.isNaN(value) ? "" : Double.toString(value);
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
