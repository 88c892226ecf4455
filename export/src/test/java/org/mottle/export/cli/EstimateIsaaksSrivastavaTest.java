package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The worked example of ordinary kriging of Isaaks & Srivastava 1989, ch. 12: seven data, one place
 * (65, 137). The book's models have exp(-3h/a), so its ranges are divided by 3 (Gaussian: √3).
 */
class EstimateIsaaksSrivastavaTest {
  private static final NumberTable PUBLISHED = NumberTable.resource("isaaks_ok.csv");

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "base_C0=0_C1=10_a=10 (10exp(-0.3h)), 0, exponential, 10, 10, 0, 1",
    "sill x2 (C1=20), 0, exponential, 20, 10, 0, 1",
    "nugget C0=5 C1=5, 5, exponential, 5, 10, 0, 1",
    "range 20 (10exp(-0.15h)), 0, exponential, 10, 20, 0, 1",
    "anis az0 amax20 amin10, 0, exponential, 10, 20, 0, 0.5",
    "anis az45 amax20 amin10, 0, exponential, 10, 20, 45, 0.5",
    "anis az135 amax20 amin5, 0, exponential, 10, 20, 135, 0.25"
  })
  void variantsOfTheExample(
      String name,
      double nugget,
      String type,
      double partialSill,
      double practicalRange,
      double azimuth,
      double ratio) {
    assertCase(name, Models.json(nugget, type, partialSill, practicalRange / 3, azimuth, ratio));
  }

  @Test
  void gaussian() {
    assertCase(
        "gaussian 10exp(-3(h/10)^2)", Models.json(0, "gaussian", 10, 10 / Math.sqrt(3), 0, 1));
  }

  @Test
  void pureNugget() {
    assertCase("pure nugget C0=10 C1=0", "{\"nugget\": 10, \"structures\": []}");
  }

  /** As printed in the book: 592.7 and 8.96. */
  @Test
  void roundsToThePrintedFigures() {
    NumberTable made = estimate(Models.json(0, "exponential", 10, 10 / 3.0));
    assertThat(Math.round(made.number(0, "estimate") * 10)).isEqualTo(5927);
    assertThat(Math.round(made.number(0, "variance") * 100)).isEqualTo(896);
  }

  @Test
  void everyCaseOfTheTableIsTested() {
    assertThat(PUBLISHED.size()).isEqualTo(9);
  }

  private void assertCase(String name, String model) {
    int row = PUBLISHED.rowOf("case", name);
    NumberTable made = estimate(model);
    Close.relative(name, made.number(0, "estimate"), PUBLISHED.number(row, "estimate"), 1e-9);
    Close.relative(name, made.number(0, "variance"), PUBLISHED.number(row, "variance"), 1e-9);
  }

  private NumberTable estimate(String model) {
    Ran ran =
        Ran.mottle(
            "estimate",
            "--points",
            NumberTable.path("isaaks_data.csv").toString(),
            "--value",
            "v",
            "--at",
            Models.text(folder, "at.csv", "x,y\n65,137\n").toString(),
            "--model",
            Models.write(folder, model).toString(),
            "--quiet");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    return NumberTable.of(ran.out());
  }
}
