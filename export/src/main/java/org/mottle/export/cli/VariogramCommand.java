package org.mottle.export.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.mottle.engine.empirical.Direction;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.empirical.ExperimentalVariogram;
import org.mottle.engine.empirical.Lag;
import org.mottle.engine.empirical.LagBins;
import org.mottle.engine.fit.AutomaticFit;
import org.mottle.engine.fit.FitOutcome;
import org.mottle.engine.fit.Fitted;
import org.mottle.engine.fit.NotFitted;
import org.mottle.engine.fit.Parameter;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.fit.StructureSpec;
import org.mottle.engine.fit.WeightedLeastSquares;
import org.mottle.engine.fit.Weighting;
import org.mottle.engine.observation.Observations;
import org.mottle.export.model.ModelFile;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;
import org.mottle.export.settings.SettingsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code mottle variogram}: experimental variogram and fitted model of any point table. */
@Command(
    name = "variogram",
    mixinStandardHelpOptions = true,
    description = "Experimental variogram and fitted model of any point table.")
final class VariogramCommand implements Callable<Integer> {

  @Mixin CommonOptions common;
  @Mixin PointOptions points;

  @Option(
      names = "--cutoff",
      paramLabel = "M",
      description = "Longest lag; default: a third of the diagonal of the points.")
  Double cutoff;

  @Option(
      names = "--lag",
      paramLabel = "M",
      description = "Width of a lag class; default: a fifteenth of the cutoff.")
  Double lag;

  @Option(
      names = "--azimuth",
      paramLabel = "DEG",
      description = "Count only pairs in this direction, clockwise from north.")
  Double azimuth;

  @Option(
      names = "--tolerance",
      paramLabel = "DEG",
      description = "Tolerance of the direction; default ${DEFAULT-VALUE}.")
  double tolerance = 22.5;

  @Option(
      names = "--estimator",
      paramLabel = "NAME",
      description = "matheron, cressie-hawkins or dowd; default ${DEFAULT-VALUE}.")
  String estimator = "matheron";

  @Option(
      names = "--model",
      paramLabel = "NAME[,NAME]",
      description =
          "spherical, exponential, gaussian, matern, circular, pentaspherical, linear, power; several are nested; auto tries a short list. Default ${DEFAULT-VALUE}.")
  String model = "auto";

  @Option(
      names = "--weights",
      paramLabel = "NAME",
      description = "pairs-over-lag-squared, pairs, cressie or equal; default ${DEFAULT-VALUE}.")
  String weights = "pairs-over-lag-squared";

  @Option(
      names = "--kappa",
      paramLabel = "K",
      description = "Smoothness of a Matérn model; default: fitted.")
  Double kappa;

  @Option(
      names = "--fix",
      paramLabel = "NAME=VALUE",
      description =
          "Hold nugget, partial_sill or range of the (first) structure at a value; may be repeated.")
  java.util.Map<String, Double> fixed = new java.util.LinkedHashMap<>();

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description = "Where to write the JSON; stdout without it.")
  Path out;

  @Override
  public Integer call() throws IOException {
    Problems problems = new Problems();
    Estimator chosen = choice("--estimator", estimator, Estimator.values(), problems);
    Weighting weighting = choice("--weights", weights, Weighting.values(), problems);
    List<Shape> shapes = shapes(problems);
    for (String name : fixed.keySet()) {
      if (!List.of("nugget", "partial_sill", "range").contains(name)) {
        problems.add("--fix %s: only nugget, partial_sill and range can be held", name);
      } else if (shapes.isEmpty()) {
        problems.add("--fix %s needs a --model to hold it in", name);
      }
    }
    checkNumbers(problems);
    OutputFile.check(out, common.overwrite, problems);
    points.check(problems);
    problems.throwIfAny();
    Observations observations = points.read(List.of(), common).observations();
    points.refuseIfAllEqual(observations);
    LagBins bins = bins(observations, problems);
    Direction direction = azimuth == null ? Direction.ALL : Direction.of(azimuth, tolerance);
    ExperimentalVariogram experimental =
        ExperimentalVariogram.of(List.of(observations), bins, chosen, direction, common.threads());
    FitOutcome outcome = fit(experimental, shapes, weighting);
    String json = write(experimental, outcome);
    if (out != null) {
      OutputFile.write(out, json);
    }
    if (out == null || common.json) {
      System.out.print(json);
    }
    tell(outcome);
    return outcome instanceof Fitted ? ExitCode.DONE : ExitCode.PARTLY;
  }

  private void checkNumbers(Problems problems) {
    fixed.forEach(
        (name, value) ->
            problems.require(
                name.equals("range") ? value > 0 : value >= 0,
                "--fix %s=%s: must be %s",
                name,
                value,
                name.equals("range") ? "above 0 m" : "0 or more"));
    problems.require(
        cutoff == null || cutoff > 0 && Double.isFinite(cutoff),
        "--cutoff must be above 0 m, was %s",
        cutoff);
    problems.require(
        lag == null || lag > 0 && Double.isFinite(lag), "--lag must be above 0 m, was %s", lag);
    problems.require(
        kappa == null || kappa > 0 && Double.isFinite(kappa),
        "--kappa must be above 0, was %s",
        kappa);
    problems.require(
        azimuth == null || Double.isFinite(azimuth),
        "--azimuth must be an angle in degrees, was %s",
        azimuth);
    problems.require(
        tolerance >= 0 && tolerance <= 90,
        "--tolerance must be between 0 and 90 degrees, was %s",
        tolerance);
  }

  private LagBins bins(Observations observations, Problems problems) {
    LagBins defaults = LagBins.defaultsFor(observations);
    double longest = cutoff == null ? defaults.cutoff() : cutoff;
    try {
      return new LagBins(longest, lag == null ? longest / 15 : lag);
    } catch (IllegalArgumentException e) {
      problems.add("--cutoff, --lag: %s", e.getMessage());
      problems.throwIfAny();
      throw e;
    }
  }

  private FitOutcome fit(
      ExperimentalVariogram experimental, List<Shape> shapes, Weighting weighting) {
    if (shapes.isEmpty()) {
      return AutomaticFit.of(weighting).fit(experimental);
    }
    List<StructureSpec> structures = new ArrayList<>();
    for (Shape shape : shapes) {
      StructureSpec s = StructureSpec.of(shape);
      boolean first = structures.isEmpty();
      structures.add(
          new StructureSpec(
              shape,
              first && fixed.containsKey("partial_sill")
                  ? Parameter.fixed(fixed.get("partial_sill"))
                  : s.partialSill(),
              first && fixed.containsKey("range") ? Parameter.fixed(fixed.get("range")) : s.range(),
              kappa == null ? s.kappa() : Parameter.fixed(kappa),
              s.azimuth(),
              s.ratio()));
    }
    return new WeightedLeastSquares(
            weighting,
            fixed.containsKey("nugget") ? Parameter.fixed(fixed.get("nugget")) : Parameter.FREE,
            structures)
        .fit(experimental);
  }

  private static String write(ExperimentalVariogram experimental, FitOutcome outcome)
      throws IOException {
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    var lags = json.putArray("lags");
    for (Lag l : experimental.lags()) {
      lags.addObject()
          .put("pairs", l.pairs())
          .put("distance", l.distance())
          .put("semivariance", l.semivariance());
    }
    if (outcome instanceof Fitted fitted) {
      json.set("model", ModelFile.toJson(fitted.model()));
      ObjectNode fit = json.putObject("fit");
      fit.put("outcome", "converged").put("weighted_sse", fitted.weightedSse());
      fit.put("evaluations", fitted.evaluations());
      var notes = fit.putArray("notes");
      fitted.notes().forEach(notes::add);
    } else if (outcome instanceof NotFitted not) {
      json.putNull("model");
      json.putObject("fit").put("outcome", "not fitted").put("reason", not.reason());
    }
    return new ObjectMapper()
            .enable(SerializationFeature.INDENT_OUTPUT)
            .writeValueAsString(json)
            .replace("\r\n", "\n")
        + "\n";
  }

  private void tell(FitOutcome outcome) {
    if (common.quiet) {
      return;
    }
    if (outcome instanceof NotFitted not) {
      System.err.println("No model fitted: " + not.reason());
    } else if (outcome instanceof Fitted fitted) {
      fitted.notes().forEach(System.err::println);
    }
  }

  private List<Shape> shapes(Problems problems) {
    if (model.equals("auto")) {
      return List.of();
    }
    return Arrays.stream(model.split(","))
        .map(name -> choice("--model", name.strip(), Shape.values(), problems))
        .filter(java.util.Objects::nonNull)
        .toList();
  }

  /** The constant a word names; a problem with the nearest known word otherwise. */
  static <T extends Enum<T>> T choice(String option, String typed, T[] values, Problems problems) {
    List<String> known = Arrays.stream(values).map(SettingsReader::label).toList();
    int index = known.indexOf(typed.toLowerCase(Locale.ROOT));
    if (index < 0) {
      problems.add(
          "%s: unknown '%s'%s; known: %s",
          option,
          typed,
          Nearest.to(typed, known).map(n -> ", did you mean '" + n + "'?").orElse(""),
          String.join(", ", known));
      return null;
    }
    return values[index];
  }
}
