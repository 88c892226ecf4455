package org.mottle.engine.precision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.reference.ReferenceTable;
import org.mottle.engine.simulation.NormalStream;

class SampleSizeTest {

  /** sample_size.csv: computed with R 4.2.2 (qt), the case that cycles included. */
  @Test
  void smallestSizes() {
    ReferenceTable table = ReferenceTable.of("sample_size");
    assertThat(table.rows()).isEqualTo(6);
    for (int r = 0; r < table.rows(); r++) {
      int n = SampleSize.of(table.number(r, "s"), table.number(r, "e"), table.number(r, "conf"));
      assertThat(n).as("row %d", r + 1).isEqualTo((int) table.number(r, "smallest_n_satisfying"));
    }
  }

  /** t_quantiles.csv: computed with R 4.2.2 (qt). */
  @Test
  void quantilesOfStudent() {
    ReferenceTable table = ReferenceTable.of("t_quantiles");
    assertThat(table.rows()).isEqualTo(19);
    for (int r = 0; r < table.rows(); r++) {
      int n = (int) table.number(r, "df") + 1;
      for (double p : new double[] {0.9, 0.95, 0.975, 0.99, 0.995}) {
        assertThat(SampleSize.quantile(n, 2 * p - 1))
            .as("df %d, p %s", n - 1, p)
            .isCloseTo(table.number(r, "t" + p), withPercentage(1e-6));
      }
    }
  }

  /** Two-sided 95 % with 9, 10 and 60 degrees of freedom as every printed table has them. */
  @ParameterizedTest
  @CsvSource({"10, 2.26216", "11, 2.22814", "61, 2.00030"})
  void halfWidthIsQuantileTimesStandardError(int n, double t) {
    assertThat(SampleSize.halfWidth(2, n, 0.95)).isCloseTo(t * 2 / Math.sqrt(n), within(1e-5));
  }

  @Test
  void answerIsTheSmallestThatHolds() {
    long seed = 17;
    NormalStream random = new NormalStream(seed, 0);
    for (int k = 0; k < 200; k++) {
      double sd = Math.exp(random.next());
      double margin = Math.exp(0.7 * random.next() - 1);
      double confidence = 0.5 + 0.499 / (1 + Math.exp(-random.next()));
      int n = SampleSize.of(sd, margin, confidence);
      String which = "seed %d, case %d: s %s, e %s, conf %s, n %d";
      assertThat(SampleSize.halfWidth(sd, n, confidence))
          .as(which, seed, k, sd, margin, confidence, n)
          .isLessThanOrEqualTo(margin * (1 + 1e-12));
      if (n > 2) {
        assertThat(SampleSize.halfWidth(sd, n - 1, confidence))
            .as(which, seed, k, sd, margin, confidence, n)
            .isGreaterThan(margin);
      }
    }
  }

  @Test
  void largeSizesApproachTheNormalFormula() {
    int n = SampleSize.of(100, 0.5, 0.95);
    assertThat((double) n).isCloseTo(Math.pow(1.959964 * 200, 2), within(4.0));
  }

  @Test
  void twoAtLeast() {
    assertThat(SampleSize.of(0.001, 10, 0.95)).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({
    "0, 1, 0.95, standard deviation",
    "NaN, 1, 0.95, standard deviation",
    "2, 0, 0.95, margin",
    "2, -1, 0.95, margin",
    "2, 1, 1, confidence",
    "2, 1, 95, confidence",
    "2, 1, NaN, confidence",
    "100, 0.001, 0.95, ask for a wider margin"
  })
  void nonsenseIsRefused(double sd, double margin, double confidence, String named) {
    assertThatThrownBy(() -> SampleSize.of(sd, margin, confidence))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(named);
  }

  @Test
  void oneReadingHasNoHalfWidth() {
    assertThatThrownBy(() -> SampleSize.halfWidth(2, 1, 0.95))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("readings");
    assertThatThrownBy(() -> SampleSize.halfWidth(Double.NaN, 5, 0.95))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("standard deviation");
  }
}
