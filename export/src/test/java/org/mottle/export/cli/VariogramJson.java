package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;

/** What {@code mottle variogram} printed, read by its documented names. */
record VariogramJson(JsonNode json) {

  /** Runs the command quietly on a resource and expects it to end well. */
  static VariogramJson of(String points, String value, String... options) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "variogram",
                "--points",
                NumberTable.path(points).toString(),
                "--value",
                value,
                "--quiet"));
    args.addAll(List.of(options));
    Ran ran = Ran.mottle(args);
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).isEmpty();
    return parse(ran.out());
  }

  static VariogramJson parse(String text) {
    try {
      return new VariogramJson(new ObjectMapper().readTree(text));
    } catch (JsonProcessingException e) {
      throw new AssertionError(text, e);
    }
  }

  double nugget() {
    return json.at("/model/nugget").asDouble(Double.NaN);
  }

  String type() {
    return json.at("/model/structures/0/type").asText();
  }

  double partialSill() {
    return json.at("/model/structures/0/partial_sill").asDouble(Double.NaN);
  }

  double range() {
    return json.at("/model/structures/0/range").asDouble(Double.NaN);
  }

  double weightedSse() {
    return json.at("/fit/weighted_sse").asDouble(Double.NaN);
  }

  /** Every lag against a published table of pairs, mean distance and semivariance. */
  void assertLags(NumberTable published, double tolerance) {
    JsonNode lags = json.path("lags");
    assertThat(lags.size()).isEqualTo(published.size()).isPositive();
    for (int i = 0; i < lags.size(); i++) {
      String lag = "lag " + (i + 1);
      assertThat(lags.get(i).path("pairs").asLong()).as(lag).isEqualTo(number(published, i, "np"));
      Close.relative(
          lag + " distance",
          lags.get(i).path("distance").asDouble(),
          published.number(i, "dist"),
          tolerance);
      Close.relative(
          lag + " semivariance",
          lags.get(i).path("semivariance").asDouble(),
          published.number(i, "gamma"),
          tolerance);
    }
  }

  private static long number(NumberTable table, int row, String column) {
    return (long) table.number(row, column);
  }
}
