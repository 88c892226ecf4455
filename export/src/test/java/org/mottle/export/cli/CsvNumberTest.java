package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class CsvNumberTest {

  @Test
  void coordinatesHaveNoExponent() {
    assertThat(CsvNumber.of(1e7)).isEqualTo("10000000");
    assertThat(CsvNumber.of(12345678.25)).isEqualTo("12345678.25");
    assertThat(CsvNumber.of(-1.25e-4)).isEqualTo("-0.000125");
    assertThat(CsvNumber.of(180000)).isEqualTo("180000.0");
    assertThat(CsvNumber.of(0)).isEqualTo("0.0");
    assertThat(CsvNumber.of(Double.NaN)).isEmpty();
    assertThat(CsvNumber.of(1e-300)).isEqualTo("1.0E-300");
  }

  @Test
  void everyNumberReadsBackAsItself() {
    Random random = new Random(11);
    for (int i = 0; i < 10_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        assertThat(Double.parseDouble(CsvNumber.of(value))).as("seed 11, %d", i).isEqualTo(value);
      }
      double coordinate = 2e7 * (random.nextDouble() - 0.5);
      assertThat(CsvNumber.of(coordinate)).doesNotContain("E");
      assertThat(Double.parseDouble(CsvNumber.of(coordinate))).isEqualTo(coordinate);
    }
  }
}
