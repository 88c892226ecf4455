package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Model files that cannot be used: one clear line a problem, exit code 2, nothing written. */
class RefusedModelTest {
  private static final String STRUCTURE = "{\"nugget\": 0.1, \"structures\": [{%s}]}";

  @TempDir Path folder;

  @Test
  void unknownType() {
    assertThat(refusedStructure("'type': 'sperical', 'partial_sill': 1, 'range': 10"))
        .contains("model.json, structure 1", "'sperical'", "did you mean 'spherical'?", "matern");
  }

  @Test
  void negativeRange() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': 1, 'range': -10"))
        .contains("model.json, structure 1", "range", "-10");
  }

  @Test
  void negativeNugget() {
    assertThat(refused("{\"nugget\": -0.5, \"structures\": []}"))
        .contains("model.json", "nugget", "-0.5");
  }

  @Test
  void negativePartialSill() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': -1, 'range': 10"))
        .contains("structure 1", "partial_sill", "-1");
  }

  @Test
  void missingRange() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': 1"))
        .isEqualTo("model.json, structure 1: range is missing");
  }

  @Test
  void maternWithoutKappa() {
    assertThat(refusedStructure("'type': 'matern', 'partial_sill': 1, 'range': 10"))
        .isEqualTo("model.json, structure 1: kappa is missing");
  }

  @Test
  void textForANumber() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': 1, 'range': 'far'"))
        .isEqualTo("model.json, structure 1: range must be a number, was \"far\"");
  }

  @Test
  void misspeltKey() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': 1, 'range': 10, 'azimut': 3"))
        .contains("unknown key 'azimut'", "did you mean 'azimuth'?");
  }

  @Test
  void misspeltKeyOfTheModel() {
    assertThat(refused("{\"nuget\": 0.5, \"structures\": []}"))
        .contains("model.json: unknown key 'nuget'; did you mean 'nugget'?");
  }

  @Test
  void ratioAboveOne() {
    assertThat(refusedStructure("'type': 'spherical', 'partial_sill': 1, 'range': 10, 'ratio': 2"))
        .contains("structure 1", "ratio", "2.0");
  }

  @Test
  void exponentOfAPower() {
    assertThat(refusedStructure("'type': 'power', 'partial_sill': 1, 'range': 2.5"))
        .contains("structure 1", "exponent", "2.5");
  }

  @Test
  void nothingThatVaries() {
    assertThat(refused("{\"nugget\": 0, \"structures\": []}"))
        .contains("model.json", "neither a nugget nor a structure");
  }

  @Test
  void truncatedJson() {
    assertThat(refused("{\"nugget\": 0.1, \"struc")).contains("model.json, line 1", "JSON");
  }

  @Test
  void emptyFile() {
    assertThat(refused("")).contains("model.json", "no model here");
  }

  @Test
  void foreignText() {
    assertThat(refused("x,y,z\n1,2,3\n")).contains("model.json, line 1", "JSON");
  }

  @Test
  void aVariogramThatFoundNone() {
    assertThat(refused("{\"lags\": [], \"model\": null, \"fit\": {\"outcome\": \"not fitted\"}}"))
        .contains("model.json", "the variogram found none");
  }

  @Test
  void missingFile() {
    assertThat(run(folder.resolve("nowhere.json")))
        .contains("nowhere.json: no such file", "'variogram' wrote");
  }

  @Test
  void simpleKrigingNeedsASill() {
    Path model = Models.write(folder, Models.json(0.1, "power", 1, 1.5));
    assertThat(run(model, "--method", "simple-kriging", "--mean", "3"))
        .contains("simple kriging", "levels off");
  }

  @Test
  void everyProblemAtOnce() {
    Path model =
        Models.write(
            folder,
            "{\"nugget\": \"x\", \"structures\": [{\"type\": \"sphere\"}, {\"type\": \"power\"}]}");
    Ran ran = estimate(model);
    assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines())
        .hasSize(4)
        .allMatch(line -> line.startsWith("model.json"))
        .anyMatch(line -> line.contains("nugget must be a number"))
        .anyMatch(line -> line.contains("structure 1: unknown type 'sphere'"))
        .anyMatch(line -> line.contains("structure 2: partial_sill is missing"))
        .anyMatch(line -> line.contains("structure 2: range is missing"));
  }

  private String refusedStructure(String content) {
    return refused(STRUCTURE.formatted(content.replace('\'', '"')));
  }

  private String refused(String json) {
    return run(Models.write(folder, json));
  }

  private String run(Path model, String... options) {
    Ran ran = estimate(model, options);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.errLines()).as(ran.err()).hasSize(1);
    assertThat(folder.resolve("e.csv")).doesNotExist();
    return ran.err().strip();
  }

  private Ran estimate(Path model, String... options) {
    List<String> args =
        new java.util.ArrayList<>(
            List.of(
                "estimate",
                "--points",
                NumberTable.path("meuse_points.csv").toString(),
                "--value",
                "logzinc",
                "--at",
                NumberTable.path("meuse_targets.csv").toString(),
                "--model",
                model.toString(),
                "--quiet",
                "--out",
                folder.resolve("e.csv").toString()));
    args.addAll(List.of(options));
    return Ran.mottle(args);
  }
}
