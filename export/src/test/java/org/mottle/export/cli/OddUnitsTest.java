package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Other units of the values and a far origin change the numbers as they must and no more: the meuse
 * numbers of gstat 2.1.0 (cli/sources.txt), scaled, are met as closely as in their own units.
 */
class OddUnitsTest {
  private static final NumberTable PUBLISHED = NumberTable.resource("meuse_predictions.csv");

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "1e-3, 0, ok, ",
    "1e6, 0, ok, ",
    "1, 5000000, ok, ",
    "1e-3, 5000000, ok20, --neighbours 20",
    "1e6, 5000000, ok12_400, --neighbours 12 --radius 400",
    "1e6, 5000000, uk_xy, --method universal-kriging --drift x&y",
    "1e-3, 5000000, bk40, --block 40x40"
  })
  void kriging(double scale, double shift, String column, String options) {
    boolean trend = column.startsWith("uk");
    double square = scale * scale;
    String model =
        trend
            ? Models.json(0.06 * square, "exponential", 0.15 * square, 340)
            : Models.json(0.05066243 * square, "spherical", 0.5906078 * square, 897);
    List<String> args =
        args("estimate", scale, shift, options == null ? null : options.replace('&', ','));
    args.addAll(List.of("--model", Models.write(folder, model).toString()));
    args.addAll(List.of("--at", moved("meuse_targets.csv", "at.csv", 1, shift).toString()));
    Ran ran = Ran.mottle(args);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    NumberTable made = NumberTable.of(ran.out());
    double tolerance = column.startsWith("bk") ? 1e-6 : 1e-8;
    for (int i = 0; i < PUBLISHED.size(); i++) {
      double estimate = PUBLISHED.number(i, column + "_pred");
      if (Double.isNaN(estimate)) {
        assertThat(made.text(i, "estimate")).isEmpty();
        continue;
      }
      Close.relative("cell " + i, made.number(i, "estimate") / scale, estimate, tolerance);
      double variance = PUBLISHED.number(i, column + "_var");
      Close.relative("variance " + i, made.number(i, "variance") / square, variance, tolerance);
    }
  }

  @ParameterizedTest
  @CsvSource({"1e-3, 0", "1e6, 0", "1, 5000000", "1e-3, 5000000", "1e6, 5000000"})
  void variogram(double scale, double shift) {
    NumberTable published = NumberTable.resource("meuse_vgm_default.csv");
    NumberTable fits = NumberTable.resource("meuse_fits_global_default.csv");
    Ran ran = Ran.mottle(args("variogram", scale, shift, "--model spherical"));
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    VariogramJson made = VariogramJson.parse(ran.out());
    double square = scale * scale;
    var lags = made.json().path("lags");
    assertThat(lags.size()).isEqualTo(published.size());
    for (int i = 0; i < lags.size(); i++) {
      assertThat(lags.get(i).path("pairs").asDouble()).isEqualTo(published.number(i, "np"));
      double semivariance = lags.get(i).path("semivariance").asDouble() / square;
      Close.relative("lag " + i, semivariance, published.number(i, "gamma"), 1e-8);
    }
    Close.relative("nugget", made.nugget() / square, fits.number(0, "nugget"), 1e-5);
    Close.relative("partial sill", made.partialSill() / square, fits.number(0, "psill"), 1e-5);
    Close.relative("range", made.range(), fits.number(0, "range"), 1e-5);
  }

  private List<String> args(String command, double scale, double shift, String options) {
    Path points = moved("meuse_points.csv", "points.csv", scale, shift);
    List<String> args =
        new ArrayList<>(List.of(command, "--points", points.toString(), "--value", "z", "--quiet"));
    if (options != null) {
      args.addAll(List.of(options.split(" ")));
    }
    return args;
  }

  /** Coordinates moved, and a column z of logarithms of zinc, scaled. */
  private Path moved(String resource, String name, double scale, double shift) {
    NumberTable table = NumberTable.resource(resource);
    boolean values = table.header().contains("logzinc");
    StringBuilder csv = new StringBuilder("x,y,z\n");
    for (int i = 0; i < table.size(); i++) {
      csv.append(table.number(i, "x") + shift).append(',');
      csv.append(table.number(i, "y") + shift).append(',');
      csv.append(values ? scale * table.number(i, "logzinc") : 0).append('\n');
    }
    return Models.text(folder, name, csv.toString());
  }
}
