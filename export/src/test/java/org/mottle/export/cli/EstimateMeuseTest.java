package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Estimates and variances that {@code mottle estimate} writes, against gstat 2.1.0 (R 4.2.2) on the
 * meuse data (Burrough & McDonnell 1998) with fixed models; tables named in cli/sources.txt.
 */
class EstimateMeuseTest {
  private static final NumberTable PUBLISHED = NumberTable.resource("meuse_predictions.csv");
  private static final String MEUSE = Models.json(0.05066243, "spherical", 0.5906078, 897);
  private static final String NO_NUGGET = Models.json(0, "spherical", 0.5906078, 897);
  private static final String SHORT_NUGGET = Models.json(0.02066243, "spherical", 0.5906078, 897);
  private static final String TREND = Models.json(0.06, "exponential", 0.15, 340);
  private static final double POINT = 1e-8;
  private static final double BLOCK = 1e-6;

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "ok, ",
    "ok20, --neighbours 20",
    "ok12_400, --neighbours 12 --radius 400",
    // the mean of the 155 logarithms, from R
    "sk, --method simple-kriging --mean 5.8857758521749992"
  })
  void points(String column, String options) {
    assertKriging(estimate(MEUSE, "logzinc", options), column, POINT);
  }

  @ParameterizedTest
  @CsvSource({"bk40, --block 40x40", "bk200, --block 200x200"})
  void blocks(String column, String options) {
    assertKriging(estimate(MEUSE, "logzinc", options), column, BLOCK);
  }

  @Test
  void blocksWithoutNugget() {
    assertKriging(estimate(NO_NUGGET, "logzinc", "--block 40x40"), "bk40_nonug", BLOCK);
  }

  /** gstat's Err: all of the nugget is the probe's, none the soil's. */
  @Test
  void measurementVariance() {
    assertKriging(
        estimate(NO_NUGGET, "logzinc", "--measurement-variance 0.05066243"), "err", POINT);
    assertKriging(
        estimate(MEUSE, "logzinc", "--measurement-variance 0.05066243 --split-nugget"),
        "err",
        POINT);
  }

  @Test
  void measurementVarianceBesideANugget() {
    assertKriging(
        estimate(SHORT_NUGGET, "logzinc", "--measurement-variance 0.03"), "errmix", POINT);
    assertKriging(
        estimate(MEUSE, "logzinc", "--measurement-variance 0.03 --split-nugget"), "errmix", POINT);
  }

  @ParameterizedTest
  @CsvSource({"uk_sqrtdist, sqrtdist", "uk_xy, 'x,y'"})
  void drift(String column, String drift) {
    assertKriging(
        estimate(TREND, "logzinc", "--method universal-kriging --drift " + drift), column, POINT);
  }

  @Test
  void anisotropy() {
    String model = Models.json(0.05066243, "spherical", 0.5906078, 897, 30, 0.5);
    assertKriging(estimate(model, "logzinc", null), "ok_anis30_.5", POINT);
  }

  @Test
  void logarithmsTakenOnTheWay() {
    assertKriging(estimate(MEUSE, "zinc", "--log"), "ok", POINT);
  }

  /** Zinc above 500 ppm or not. */
  @Test
  void indicator() {
    NumberTable points = NumberTable.resource("meuse_points.csv");
    List<String> above = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      above.add(points.number(i, "zinc") > 500 ? "1" : "0");
    }
    Path file = Models.text(folder, "indicator.csv", points.with("above", above).csv());
    String model = Models.json(0.03, "spherical", 0.18, 900);
    assertKriging(estimate(file, model, "above", null), "ik500", POINT);
  }

  @ParameterizedTest
  @CsvSource({
    "idw1, --power 1",
    "idw2, --power 2",
    "idw3, --power 3",
    "idw2_n12, --power 2 --neighbours 12"
  })
  void inverseDistance(String column, String options) {
    NumberTable made = estimate(MEUSE, "logzinc", "--method inverse-distance " + options);
    for (int i = 0; i < PUBLISHED.size(); i++) {
      String cell = "cell " + PUBLISHED.text(i, "cell");
      Close.relative(cell, made.number(i, "estimate"), PUBLISHED.number(i, column), POINT);
      assertThat(made.text(i, "variance")).as(cell).isEmpty();
    }
  }

  private NumberTable estimate(String model, String value, String options) {
    return estimate(NumberTable.path("meuse_points.csv"), model, value, options);
  }

  private NumberTable estimate(Path points, String model, String value, String options) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "estimate",
                "--points",
                points.toString(),
                "--value",
                value,
                "--at",
                NumberTable.path("meuse_targets.csv").toString(),
                "--model",
                Models.write(folder, model).toString(),
                "--quiet"));
    if (options != null) {
      args.addAll(List.of(options.split(" ")));
    }
    Ran ran = Ran.mottle(args);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).isEmpty();
    NumberTable table = NumberTable.of(ran.out());
    assertThat(table.header()).containsExactly("x", "y", "estimate", "variance", "status");
    assertThat(table.size()).isEqualTo(PUBLISHED.size());
    return table;
  }

  private static void assertKriging(NumberTable made, String column, double tolerance) {
    for (int i = 0; i < PUBLISHED.size(); i++) {
      String cell = column + " at cell " + PUBLISHED.text(i, "cell");
      assertThat(made.number(i, "x")).as(cell).isEqualTo(PUBLISHED.number(i, "x"));
      assertThat(made.number(i, "y")).as(cell).isEqualTo(PUBLISHED.number(i, "y"));
      if (PUBLISHED.text(i, column + "_pred").equals("NA")) {
        assertThat(made.text(i, "status")).as(cell).isEqualTo("too-few-neighbours");
        assertThat(made.text(i, "estimate")).as(cell).isEmpty();
        assertThat(made.text(i, "variance")).as(cell).isEmpty();
        continue;
      }
      assertThat(made.text(i, "status")).as(cell).isEqualTo("estimated");
      assertThat(made.number(i, "variance")).as(cell).isNotNegative();
      double estimate = PUBLISHED.number(i, column + "_pred");
      double variance = PUBLISHED.number(i, column + "_var");
      Close.relative(cell, made.number(i, "estimate"), estimate, tolerance);
      Close.relative(cell + ", variance", made.number(i, "variance"), variance, tolerance);
    }
  }
}
