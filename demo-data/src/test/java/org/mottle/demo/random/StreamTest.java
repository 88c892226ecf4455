package org.mottle.demo.random;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StreamTest {

  @Test
  void theSameNameGivesTheSameNumbersAndAnotherNameOthers() {
    Stream a = Stream.of(7, "G1", "S1", "probe");
    Stream b = Stream.of(7, "G1", "S1", "probe");
    Stream other = Stream.of(7, "G1", "S2", "probe");
    Stream otherSeed = Stream.of(8, "G1", "S1", "probe");
    for (int i = 0; i < 100; i++) {
      long bits = a.bits();
      assertThat(b.bits()).isEqualTo(bits);
      assertThat(other.bits()).isNotEqualTo(bits);
      assertThat(otherSeed.bits()).isNotEqualTo(bits);
    }
  }

  @Test
  void gaussianHasTheMomentsOfTheStandardNormal() {
    Stream stream = Stream.of(20250514, "moments");
    int n = 200_000;
    double sum = 0;
    double squares = 0;
    double fourths = 0;
    for (int i = 0; i < n; i++) {
      double g = stream.gaussian();
      sum += g;
      squares += g * g;
      fourths += g * g * g * g;
    }
    // five standard errors each: 1/sqrt(n), sqrt(2/n), sqrt(96/n)
    assertThat(sum / n).isCloseTo(0, within(5 / Math.sqrt(n)));
    assertThat(squares / n).isCloseTo(1, within(5 * Math.sqrt(2.0 / n)));
    assertThat(fourths / n).isCloseTo(3, within(5 * Math.sqrt(96.0 / n)));
  }

  @Test
  void neighbouringSeedsAndNamesAreUncorrelated() {
    int n = 4000;
    double bySeed = 0;
    double byName = 0;
    for (int i = 0; i < n; i++) {
      bySeed += Stream.of(i, "x").gaussian() * Stream.of(i + 1, "x").gaussian();
      byName += Stream.of(i, "G1").gaussian() * Stream.of(i, "G2").gaussian();
    }
    assertThat(bySeed / n).isCloseTo(0, within(5 / Math.sqrt(n)));
    assertThat(byName / n).isCloseTo(0, within(5 / Math.sqrt(n)));
  }

  @Test
  void decimalsAreFixedAndWithoutPowersOfTen() {
    assertThat(Decimals.fixed(5316300.0005, 3)).isEqualTo("5316300.001");
    assertThat(Decimals.fixed(-0.04, 1)).isEqualTo("0.0");
    assertThat(Decimals.fixed(-14.99937, 4)).isEqualTo("-14.9994");
    assertThat(Decimals.fixed(0.00001, 7)).isEqualTo("0.0000100");
    assertThat(Decimals.fixed(7.5, 0)).isEqualTo("8");
    assertThatThrownBy(() -> Decimals.fixed(Double.NaN, 1)).hasMessageContaining("NaN");
  }
}
