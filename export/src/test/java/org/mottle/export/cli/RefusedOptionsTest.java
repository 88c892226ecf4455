package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Options that cannot be used: told on stderr, exit code 2, earlier output untouched. */
class RefusedOptionsTest {
  private static final String POINTS = NumberTable.path("meuse_points.csv").toString();
  private static final String TARGETS = NumberTable.path("meuse_targets.csv").toString();

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "--cutof 3; did you mean '--cutoff'?",
        "--weight pairs; did you mean '--weights'?",
      })
  void unknownOptionOfVariogram(String options, String said) {
    assertThat(refused(2, variogram(options))).contains(said);
  }

  @Test
  void unknownOptionOfEstimate() {
    assertThat(refused(2, estimate("--neighbors 12"))).contains("did you mean '--neighbours'?");
  }

  @Test
  void unknownCommand() {
    Ran ran = Ran.mottle("variogam");
    assertThat(refused(2, ran)).contains("'variogam'", "did you mean 'variogram'?");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "--model sperical; unknown 'sperical', did you mean 'spherical'?",
        "--estimator mathron; did you mean 'matheron'?",
        "--weights pair; did you mean 'pairs'?",
        "--cutoff -5; --cutoff must be above 0 m, was -5.0",
        "--cutoff NaN; --cutoff must be above 0 m, was NaN",
        "--cutoff Infinity; --cutoff must be above 0 m, was Infinity",
        "--lag 0; --lag must be above 0 m, was 0.0",
        "--lag NaN; --lag must be above 0 m, was NaN",
        "--kappa NaN; --kappa must be above 0, was NaN",
        "--azimuth NaN; --azimuth must be an angle in degrees, was NaN",
        "--x X_coordinate; no column 'X_coordinate'",
        "--y yy; no column 'yy', did you mean 'y'?",
        "--lag 1e-9; use a wider lag",
        "--azimuth 45 --tolerance 91; --tolerance must be between 0 and 90 degrees, was 91.0",
        "--azimuth Infinity; --azimuth must be an angle",
        "--model matern --kappa -2; --kappa must be above 0, was -2.0",
        "--model spherical --fix range=-3; --fix range=-3.0: must be above 0 m",
        "--model spherical --fix sill=3; --fix sill: only nugget, partial_sill and range",
        "--fix nugget=3; needs a --model",
        "--threads 0; --threads must be 1 or more, was 0",
        "--duplicates avrage; did you mean 'average'?"
      })
  void valueOfAnOptionOfVariogram(String options, String said) {
    assertThat(refused(1, variogram(options))).contains(said);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "--method ordinary; did you mean 'ordinary-kriging'?",
        "--method simple-kriging; needs --mean",
        "--method universal-kriging; needs --drift",
        "--method universal-kriging --drift x; a plane needs both x and y",
        "--method universal-kriging --drift sqrtdst; no column 'sqrtdst'",
        "--drift x,y; belongs to --method universal-kriging",
        "--mean 3; --mean belongs to --method simple-kriging",
        "--method simple-kriging --mean NaN; --mean must be a number, was NaN",
        "--radius NaN; --radius must be above 0 m, was NaN",
        "--measurement-variance Infinity; must be 0 or more, was Infinity",
        "--neighbours 0; --neighbours must be 1 or more, was 0",
        "--radius -1; --radius must be above 0 m, was -1.0",
        "--method inverse-distance --power 0; --power must be above 0, was 0.0",
        "--method inverse-distance --block 4x4; --block belongs to kriging",
        "--method inverse-distance --measurement-variance 1; belongs to kriging",
        "--measurement-variance -1; must be 0 or more, was -1.0",
        "--measurement-variance 2 --split-nugget; less than the measurement variance 2.0",
        "--block 40; --block must be WIDTHxHEIGHT",
        "--block 0x0; both above 0, as 40x40, was '0x0'",
        "--block 1.2.3x4; was '1.2.3x4'",
        "--leave-one-out --block 4x4; leave out --block",
        "--threads -1; --threads must be 1 or more, was -1"
      })
  void valueOfAnOptionOfEstimate(String options, String said) {
    assertThat(refused(1, estimate(options))).contains(said);
  }

  @Test
  void aColumnThatIsNotThere() {
    Ran ran = Ran.mottle("variogram", "--points", POINTS, "--value", "logzink", "--quiet");
    assertThat(refused(1, ran))
        .contains("no column 'logzink', did you mean 'logzinc'?", "its columns are");
  }

  @Test
  void notANumber() {
    assertThat(refused(2, estimate("--neighbours many"))).contains("--neighbours", "'many'");
  }

  @Test
  void krigingNeedsAModel() {
    Ran ran =
        Ran.mottle(
            "estimate", "--points", POINTS, "--value", "logzinc", "--at", TARGETS, "--quiet");
    assertThat(refused(1, ran)).contains("needs --model", "'mottle variogram --out'");
  }

  @Test
  void missingTableOfPlaces() {
    assertThat(refused(1, estimate("--at " + folder.resolve("none.csv"), "")))
        .contains("none.csv", "no such file");
  }

  @Test
  void covariateMissingAtAPlace() {
    Path at = Models.text(folder, "at.csv", "x,y,sqrtdist\n180000,331000,0.3\n180100,331000,\n");
    String options = "--at " + at + " --method universal-kriging --drift sqrtdist";
    assertThat(refused(1, estimate(options, ""))).contains("at.csv", "sqrtdist in row 3");
  }

  @Test
  void outputThatExists() throws IOException {
    Path out = Models.text(folder, "earlier.txt", "earlier");
    assertThat(refused(1, variogram("--out " + out))).contains("earlier.txt exists", "--overwrite");
    assertThat(refused(1, estimate("--out " + out))).contains("earlier.txt exists", "--overwrite");
    assertThat(Files.readString(out)).isEqualTo("earlier");
  }

  @Test
  void outputReplacedWhenTold() throws IOException {
    Path out = Models.text(folder, "earlier.txt", "earlier");
    Ran ran = estimate("--overwrite --out " + out);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(Files.readString(out)).startsWith("x,y,estimate,variance,status\n");
    assertThat(folder.toFile().list()).containsExactlyInAnyOrder("earlier.txt", "model.json");
  }

  /** A refusal met after the options were found good leaves earlier output alone, too. */
  @Test
  void earlierOutputSurvivesARefusal() throws IOException {
    Path out = Models.text(folder, "earlier.txt", "earlier");
    assertThat(refused(1, variogram("--overwrite --lag 0 --out " + out))).contains("was 0.0");
    assertThat(Files.readString(out)).isEqualTo("earlier");
  }

  @Test
  void outputInAFolderThatIsNotThere() {
    Path out = folder.resolve("none").resolve("v.json");
    assertThat(refused(1, variogram("--out " + out))).contains("none does not exist");
    assertThat(refused(1, estimate("--out " + out))).contains("none does not exist");
    assertThat(folder.resolve("none")).doesNotExist();
  }

  @Test
  void outputThatIsAFolder() {
    assertThat(refused(1, variogram("--overwrite --out " + folder))).contains("is a folder");
    assertThat(refused(1, variogram("--out " + folder))).contains("is a folder");
    assertThat(refused(1, estimate("--out " + folder))).contains("is a folder");
  }

  /** No pairs within the cutoff: the lags are told to be empty, and no model is made up. */
  @Test
  void noModelIsPartlyDone() {
    Ran ran = variogram("--cutoff 1 --lag 1");
    assertThat(ran.exitCode()).isEqualTo(ExitCode.PARTLY);
    VariogramJson made = VariogramJson.parse(ran.out());
    assertThat(made.json().path("lags").size()).isZero();
    assertThat(made.json().path("model").isNull()).isTrue();
    assertThat(made.json().at("/fit/outcome").asText()).isEqualTo("not fitted");
    assertThat(made.json().at("/fit/reason").asText()).contains("cutoff");
  }

  @Test
  void nothingWithinReachIsPartlyDone() {
    Ran ran = estimate("--radius 0.001 --at " + faraway(), "");
    assertThat(ran.exitCode()).isEqualTo(ExitCode.PARTLY);
    assertThat(NumberTable.of(ran.out()).text(0, "status")).isEqualTo("too-few-neighbours");
  }

  private Path faraway() {
    return Models.text(folder, "far.csv", "x,y\n0,0\n");
  }

  private Ran variogram(String options) {
    return run("variogram --points " + POINTS + " --value logzinc --quiet", options);
  }

  private Ran estimate(String options) {
    return estimate(options, "--at " + TARGETS);
  }

  private Ran estimate(String options, String at) {
    Path model = Models.write(folder, Models.json(0.05, "spherical", 0.59, 897));
    return run(
        "estimate --points " + POINTS + " --value logzinc --quiet --model " + model,
        (options + " " + at).strip());
  }

  private static Ran run(String command, String options) {
    List<String> args = new ArrayList<>(List.of(command.split(" ")));
    args.addAll(List.of(options.split(" ")));
    return Ran.mottle(args);
  }

  private static String refused(int lines, Ran ran) {
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.errLines()).as(ran.err()).hasSize(lines);
    return ran.err().strip();
  }
}
