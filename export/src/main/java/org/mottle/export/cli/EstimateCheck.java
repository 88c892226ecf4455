package org.mottle.export.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.mottle.export.problem.Problems;

/** Whether the options of {@code estimate} can be used, alone and together: a line a problem. */
final class EstimateCheck {

  /** Width and height in metres. */
  private static final Pattern BLOCK =
      Pattern.compile("([0-9]+(?:\\.[0-9]+)?)x([0-9]+(?:\\.[0-9]+)?)");

  private final EstimateOptions options;
  private final Problems problems;

  EstimateCheck(EstimateOptions options, Problems problems) {
    this.options = options;
    this.problems = problems;
  }

  /** The method typed; null, with a problem, when there is none of that name. */
  EstimateMethod method() {
    EstimateMethod chosen =
        VariogramCommand.choice("--method", options.method, EstimateMethod.values(), problems);
    needed(chosen);
    drift(chosen);
    places(chosen != EstimateMethod.INVERSE_DISTANCE);
    measurement(chosen != EstimateMethod.INVERSE_DISTANCE);
    neighbourhood();
    return chosen;
  }

  private void needed(EstimateMethod chosen) {
    boolean simple = chosen == EstimateMethod.SIMPLE_KRIGING;
    problems
        .require(
            chosen == EstimateMethod.INVERSE_DISTANCE || options.model != null,
            "%s needs --model, the file that 'mottle variogram --out' wrote",
            options.method)
        .require(
            !simple || options.mean != null, "simple-kriging needs --mean, the mean of the field")
        .require(
            simple || options.mean == null,
            "--mean belongs to --method simple-kriging, was %s",
            options.method)
        .require(
            options.mean == null || Double.isFinite(options.mean),
            "--mean must be a number, was %s",
            options.mean);
  }

  private void drift(EstimateMethod chosen) {
    boolean universal = chosen == EstimateMethod.UNIVERSAL_KRIGING;
    problems
        .require(
            !universal || !options.drift.isEmpty(),
            "universal-kriging needs --drift: x,y for a plane, or names of columns")
        .require(
            universal || options.drift.isEmpty(),
            "--drift belongs to --method universal-kriging, was %s",
            options.method)
        .require(
            options.drift.stream().filter(EstimateOptions::isCoordinate).count() != 1,
            "--drift %s: a plane needs both x and y",
            String.join(",", options.drift));
  }

  private void places(boolean kriging) {
    String block = options.block;
    problems
        .require(
            options.leaveOneOut || options.at != null,
            "give --at, the places to estimate, or --leave-one-out")
        .require(
            !(options.leaveOneOut && block != null),
            "--leave-one-out is at points: leave out --block")
        .require(kriging || block == null, "--block belongs to kriging")
        .require(
            block == null || isBlock(block),
            "--block must be WIDTHxHEIGHT in metres, both above 0, as 40x40, was '%s'",
            block);
  }

  private void measurement(boolean kriging) {
    double variance = options.measurementVariance;
    problems
        .require(
            variance >= 0 && Double.isFinite(variance),
            "--measurement-variance must be 0 or more, was %s",
            variance)
        .require(kriging || variance == 0, "--measurement-variance belongs to kriging");
  }

  private void neighbourhood() {
    problems
        .require(
            options.neighbours == null || options.neighbours >= 1,
            "--neighbours must be 1 or more, was %s",
            options.neighbours)
        .require(
            options.radius == null || options.radius > 0,
            "--radius must be above 0 m, was %s",
            options.radius)
        .require(
            options.power > 0 && Double.isFinite(options.power),
            "--power must be above 0, was %s",
            options.power);
  }

  private static boolean isBlock(String text) {
    Matcher sides = BLOCK.matcher(text);
    return sides.matches()
        && Double.parseDouble(sides.group(1)) > 0
        && Double.parseDouble(sides.group(2)) > 0;
  }
}
