package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * {@code mottle estimate --leave-one-out} against krige.cv() of gstat 2.1.0 (R 4.2.2) on the meuse
 * data, and against the closed form of Dubrule 1983; tables named in cli/sources.txt.
 */
class LeaveOneOutTest {
  private static final String MEUSE = Models.json(0.05066243, "spherical", 0.5906078, 897);
  private static final String TREND = Models.json(0.06, "exponential", 0.15, 340);
  private static final double TOLERANCE = 1e-8;

  @TempDir Path folder;

  @Test
  void everyPointByOrdinaryKriging() {
    NumberTable published = NumberTable.resource("meuse_cv_loo.csv");
    NumberTable made = leaveOneOut("meuse_points.csv", "logzinc", MEUSE, null);
    assertThat(made.header())
        .containsExactly("x", "y", "observed", "estimate", "variance", "residual", "zscore");
    assertThat(made.size()).isEqualTo(155).isEqualTo(published.size());
    for (int i = 0; i < made.size(); i++) {
      String point = "point " + (i + 1);
      assertThat(made.number(i, "observed")).as(point).isEqualTo(published.number(i, "obs"));
      Close.relative(point, made.number(i, "estimate"), published.number(i, "pred"), TOLERANCE);
      Close.relative(point, made.number(i, "variance"), published.number(i, "var"), TOLERANCE);
      assertThat(made.number(i, "residual"))
          .as(point)
          .isCloseTo(published.number(i, "resid"), within(1e-8));
      assertThat(made.number(i, "zscore"))
          .as(point)
          .isCloseTo(published.number(i, "z"), within(1e-8));
    }
  }

  /** The drift is estimated anew without each point. */
  @Test
  void everyPointByUniversalKriging() {
    NumberTable published = NumberTable.resource("meuse_cv_loo.csv");
    NumberTable made =
        leaveOneOut(
            "meuse_points.csv", "logzinc", TREND, "--method universal-kriging --drift sqrtdist");
    for (int i = 0; i < made.size(); i++) {
      String point = "point " + (i + 1);
      Close.relative(point, made.number(i, "estimate"), published.number(i, "uk_pred"), TOLERANCE);
      Close.relative(point, made.number(i, "variance"), published.number(i, "uk_var"), TOLERANCE);
    }
  }

  @Test
  void dubrulesClosedForm() {
    NumberTable published = NumberTable.resource("dubrule_meuse40.csv");
    NumberTable made =
        leaveOneOut("dubrule_meuse40.csv", "z", Models.json(0.05, "spherical", 0.59, 897), null);
    assertThat(made.size()).isEqualTo(40);
    for (int i = 0; i < made.size(); i++) {
      String point = "point " + (i + 1);
      assertThat(made.number(i, "residual"))
          .as(point)
          .isCloseTo(published.number(i, "loo_resid"), within(1e-9));
      Close.relative(point, made.number(i, "variance"), published.number(i, "loo_var"), 1e-9);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "ok, ",
    "ok20, --neighbours 20",
    "idw1, --method inverse-distance --power 1",
    "idw2, --method inverse-distance --power 2",
    "idw3, --method inverse-distance --power 3"
  })
  void scores(String name, String options) throws IOException {
    assertScores(name, scored(MEUSE, options));
  }

  @Test
  void scoresOfUniversalKriging() throws IOException {
    assertScores("uk", scored(TREND, "--method universal-kriging --drift sqrtdist"));
  }

  private static void assertScores(String name, JsonNode scores) {
    NumberTable published = NumberTable.resource("meuse_cv_stats.csv");
    int row = published.rowOf("case", name);
    assertThat(scores.path("estimated").asInt()).isEqualTo(155);
    assertThat(scores.path("me").asDouble()).isCloseTo(published.number(row, "ME"), within(1e-9));
    Close.relative("RMSE", scores.path("rmse").asDouble(), published.number(row, "RMSE"), 1e-8);
    Close.relative("MAE", scores.path("mae").asDouble(), published.number(row, "MAE"), 1e-8);
    if (!Double.isNaN(published.number(row, "MSDR"))) {
      Close.relative("MSDR", scores.path("msdr").asDouble(), published.number(row, "MSDR"), 1e-8);
      Close.relative(
          "median z²",
          scores.path("median_squared_z").asDouble(),
          published.number(row, "medSDR"),
          1e-8);
    } else {
      assertThat(scores.path("msdr").isNumber()).isFalse();
    }
  }

  /** The one summary of {@code --json}, the table going to a file. */
  private JsonNode scored(String model, String options) throws IOException {
    Path out = folder.resolve("loo.csv");
    List<String> args = args(NumberTable.path("meuse_points.csv"), "logzinc", model, options);
    args.addAll(List.of("--json", "--out", out.toString()));
    Ran ran = Ran.mottle(args);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(NumberTable.of(Files.readString(out)).size()).isEqualTo(155);
    return VariogramJson.parse(ran.out()).json();
  }

  private NumberTable leaveOneOut(String points, String value, String model, String options) {
    Ran ran = Ran.mottle(args(NumberTable.path(points), value, model, options));
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    return NumberTable.of(ran.out());
  }

  private List<String> args(Path points, String value, String model, String options) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "estimate",
                "--leave-one-out",
                "--points",
                points.toString(),
                "--value",
                value,
                "--model",
                Models.write(folder, model).toString(),
                "--quiet"));
    if (options != null) {
      args.addAll(List.of(options.split(" ")));
    }
    return args;
  }
}
