package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FixedDecimalsTest {
  @ParameterizedTest
  @CsvSource({
    "12.5, 3, 12.5",
    "0, 3, 0",
    "-0.0, 3, 0",
    "-0.0004, 3, 0",
    "-0.0006, 3, -0.001",
    "0.05, 9, 0.05",
    "100, 0, 100",
    "99.9996, 3, 100",
    "-14.998391302, 9, -14.998391302",
    "5316380.125, 3, 5316380.125",
    "1e15, 3, 1000000000000000",
    "123456789012345678, 0, 123456789012345680",
    "1e22, 4, 10000000000000000000000",
    "1e-300, 9, 0"
  })
  void prints(double value, int decimals, String text) {
    assertThat(new BigDecimal(FixedDecimals.text(value, decimals)))
        .isEqualByComparingTo(
            new BigDecimal(value).setScale(decimals, java.math.RoundingMode.HALF_UP));
    if (Math.abs(value) < 1e16) {
      assertThat(FixedDecimals.text(value, decimals)).isEqualTo(text);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void readsBackWithinHalfAUnitOfTheLastDecimal(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 20_000; i++) {
      int decimals = random.nextInt(10);
      double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(14));
      String text = FixedDecimals.text(value, decimals);
      double unit = Math.pow(10, -decimals);
      assertThat(Math.abs(Double.parseDouble(text) - value))
          .as("seed %d, %s with %d decimals is %s", seed, value, decimals, text)
          .isLessThanOrEqualTo(0.5 * unit + Math.ulp(value) * 2);
      assertThat(text).as("seed %d", seed).matches("-?(0|[1-9][0-9]*)(\\.[0-9]*[1-9])?");
    }
  }

  @Test
  void refusesWhatIsNoNumber() {
    assertThatThrownBy(() -> FixedDecimals.text(Double.NaN, 3))
        .hasMessage("a number in a file must be finite, was NaN");
  }
}
