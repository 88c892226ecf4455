package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The form of what {@code mottle variogram} writes, which others script against. */
class VariogramOutputTest {
  private static final String POINTS = "meuse_points.csv";

  @TempDir Path folder;

  @Test
  void documentedNamesAndNoOthersOfTheModel() {
    JsonNode json = VariogramJson.of(POINTS, "logzinc", "--model", "spherical").json();
    assertThat(json.fieldNames()).toIterable().containsExactly("lags", "model", "fit");
    assertThat(json.at("/lags/0").fieldNames())
        .toIterable()
        .containsExactly("pairs", "distance", "semivariance");
    assertThat(json.at("/model").fieldNames()).toIterable().containsExactly("nugget", "structures");
    JsonNode structure = json.at("/model/structures/0");
    assertThat(structure.fieldNames())
        .toIterable()
        .containsExactly("type", "partial_sill", "range", "azimuth", "ratio");
    assertThat(structure.path("type").asText()).isEqualTo("spherical");
    assertThat(structure.path("azimuth").asDouble()).isZero();
    assertThat(structure.path("ratio").asDouble()).isEqualTo(1);
    assertThat(json.at("/fit/outcome").asText()).isEqualTo("converged");
    assertThat(json.at("/fit/weighted_sse").isNumber()).isTrue();
  }

  @Test
  void maternCarriesItsKappa() {
    JsonNode json =
        VariogramJson.of(POINTS, "logzinc", "--model", "matern", "--kappa", "0.8").json();
    assertThat(json.at("/model/structures/0/kappa").asDouble()).isEqualTo(0.8);
  }

  @Test
  void automaticPicksTheLeastSumOfItsList() {
    double automatic = VariogramJson.of(POINTS, "logzinc").weightedSse();
    for (String model : new String[] {"spherical", "exponential", "circular", "pentaspherical"}) {
      VariogramJson one = VariogramJson.of(POINTS, "logzinc", "--model", model);
      assertThat(automatic).as(model).isLessThanOrEqualTo(one.weightedSse());
    }
  }

  @Test
  void heldParametersStay() {
    VariogramJson held =
        VariogramJson.of(
            POINTS, "logzinc", "--model", "spherical", "--fix", "nugget=0.1", "--fix", "range=800");
    assertThat(held.nugget()).isEqualTo(0.1);
    assertThat(held.range()).isCloseTo(800, within(1e-9));
    assertThat(held.partialSill()).isBetween(0.4, 0.7);
  }

  /** A second structure can only lower the sum. */
  @Test
  void nestedModel() {
    VariogramJson one = VariogramJson.of(POINTS, "logzinc", "--model", "spherical");
    VariogramJson two = VariogramJson.of(POINTS, "logzinc", "--model", "spherical,exponential");
    assertThat(two.json().at("/model/structures").size()).isBetween(1, 2);
    assertThat(two.weightedSse()).isLessThanOrEqualTo(one.weightedSse() * (1 + 1e-9));
  }

  /** The file that was written is the text that is printed, and 'estimate' reads it whole. */
  @Test
  void fileIsReadByEstimate() throws IOException {
    Path file = folder.resolve("v.json");
    Ran written =
        Ran.mottle(
            "variogram",
            "--points",
            NumberTable.path(POINTS).toString(),
            "--value",
            "logzinc",
            "--quiet",
            "--json",
            "--out",
            file.toString());
    assertThat(written.exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(Files.readString(file)).isEqualTo(written.out()).endsWith("}\n");
    assertThat(VariogramJson.parse(written.out()).nugget()).isPositive();

    Ran estimated =
        Ran.mottle(
            "estimate",
            "--points",
            NumberTable.path(POINTS).toString(),
            "--value",
            "logzinc",
            "--at",
            NumberTable.path("meuse_targets.csv").toString(),
            "--model",
            file.toString(),
            "--quiet");
    assertThat(estimated.exitCode()).as(estimated.err()).isEqualTo(ExitCode.DONE);
    assertThat(NumberTable.of(estimated.out()).size()).isEqualTo(20);
    assertThat(folder.toFile().list()).containsExactly("v.json");
  }
}
