package org.mottle.export.cli;

import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** Options of {@code estimate}; {@link EstimateCheck} says which fit together. */
final class EstimateOptions {

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
  Double mean;

  @Option(
      names = "--drift",
      paramLabel = "x,y | COLUMN,...",
      split = ",",
      hideParamSyntax = true,
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
  Double radius;

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

  /** Terms of the drift that are columns of the tables. */
  List<String> driftColumns() {
    return drift.stream().filter(term -> !isCoordinate(term)).toList();
  }

  /** Whether the drift has a plane. */
  boolean hasPlane() {
    return drift.stream().anyMatch(EstimateOptions::isCoordinate);
  }

  static boolean isCoordinate(String term) {
    return term.equals("x") || term.equals("y");
  }
}
