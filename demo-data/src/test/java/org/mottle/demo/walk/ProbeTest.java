package org.mottle.demo.walk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProbeTest {

  /** The table of partial insertion of the course's design, computed there with Topp (1980). */
  @ParameterizedTest
  @CsvSource({"0.9,18,15.4", "0.8,18,12.9", "0.8,25,18.4", "0.7,18,10.5", "1,18,18", "1,30,30"})
  void partlyInsertedRodsReadDry(double share, double pct, double shown) {
    assertThat(Probe.partlyInserted(pct, share)).isCloseTo(shown, within(0.06));
  }

  /** Topp, Davis and Annan (1980): permittivity 10 is about 18.9 % by volume. */
  @ParameterizedTest
  @CsvSource({"10,18.83", "20,34.54"})
  void moistureOfPermittivity(double permittivity, double pct) {
    double e = permittivity;
    double byHand = -5.3 + 2.92 * e - 0.055 * e * e + 0.00043 * e * e * e;
    assertThat(Probe.moisture(e)).isCloseTo(byHand, within(1e-9)).isCloseTo(pct, within(0.01));
    assertThat(Probe.permittivity(pct)).isCloseTo(e, within(0.02));
  }
}
