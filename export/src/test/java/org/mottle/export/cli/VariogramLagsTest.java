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

/**
 * Lags that {@code mottle variogram} prints against those of gstat 2.1.0 (R 4.2.2) on the meuse
 * data (Burrough & McDonnell 1998); scripts and tables named in cli/sources.txt.
 */
class VariogramLagsTest {
  private static final String POINTS = "meuse_points.csv";
  private static final double TOLERANCE = 1e-8;

  @TempDir Path folder;

  @Test
  void defaultLags() {
    VariogramJson.of(POINTS, "logzinc")
        .assertLags(NumberTable.resource("meuse_vgm_default.csv"), TOLERANCE);
  }

  @Test
  void chosenCutoffAndWidth() {
    VariogramJson.of(POINTS, "logzinc", "--cutoff", "1500", "--lag", "100")
        .assertLags(NumberTable.resource("meuse_vgm_1500_100.csv"), TOLERANCE);
  }

  @Test
  void cressieHawkins() {
    VariogramJson.of(
            POINTS, "logzinc", "--cutoff", "1500", "--lag", "100", "--estimator", "cressie-hawkins")
        .assertLags(NumberTable.resource("meuse_vgm_cressie_1500_100.csv"), TOLERANCE);
  }

  @Test
  void rawZinc() {
    VariogramJson.of(POINTS, "zinc", "--cutoff", "1500", "--lag", "100")
        .assertLags(NumberTable.resource("meuse_vgm_rawzinc_1500_100.csv"), TOLERANCE);
  }

  @Test
  void logarithmsTakenOnTheWay() {
    VariogramJson.of(POINTS, "zinc", "--log", "--cutoff", "1500", "--lag", "100")
        .assertLags(NumberTable.resource("meuse_vgm_1500_100.csv"), TOLERANCE);
  }

  @ParameterizedTest
  @CsvSource({"0", "45", "90", "135"})
  void directionalOverDefaultLags(String azimuth) {
    NumberTable all = NumberTable.resource("meuse_vgm_dir_default.csv");
    VariogramJson.of(POINTS, "logzinc", "--azimuth", azimuth)
        .assertLags(all.where("dir", azimuth::equals), TOLERANCE);
  }

  @ParameterizedTest
  @CsvSource({"0", "45", "90", "135"})
  void directionalOverChosenLags(String azimuth) {
    NumberTable all = NumberTable.resource("meuse_vgm_dir_1500_150.csv");
    VariogramJson.of(
            POINTS,
            "logzinc",
            "--azimuth",
            azimuth,
            "--tolerance",
            "22.5",
            "--cutoff",
            "1500",
            "--lag",
            "150")
        .assertLags(all.where("dir", azimuth::equals), TOLERANCE);
  }

  /** The opposite bearing holds the same pairs. */
  @Test
  void bearingsAreFolded() {
    NumberTable all = NumberTable.resource("meuse_vgm_dir_default.csv");
    VariogramJson.of(POINTS, "logzinc", "--azimuth", "225")
        .assertLags(all.where("dir", "45"::equals), TOLERANCE);
  }

  /** Residuals of the least-squares line on sqrtdist, whose coefficients R 4.2.2 gave. */
  @Test
  void residualsOfATrend() throws IOException {
    NumberTable points = NumberTable.resource(POINTS);
    NumberTable trend = NumberTable.resource("meuse_trend_coefs.csv");
    double intercept = trend.number(trend.rowOf("term", "intercept"), "ols");
    double slope = trend.number(trend.rowOf("term", "sqrtdist"), "ols");
    List<String> residuals = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      double fitted = intercept + slope * points.number(i, "sqrtdist");
      residuals.add(Double.toString(points.number(i, "logzinc") - fitted));
    }
    Path file = folder.resolve("residuals.csv");
    Files.writeString(file, points.with("residual", residuals).csv());

    Ran ran = Ran.mottle("variogram", "--points", file.toString(), "--value", "residual");

    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    VariogramJson.parse(ran.out())
        .assertLags(NumberTable.resource("meuse_vgm_resid_sqrtdist.csv"), TOLERANCE);
  }
}
