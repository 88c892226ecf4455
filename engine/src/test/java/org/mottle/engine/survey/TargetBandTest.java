package org.mottle.engine.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TargetBandTest {
  private static final TargetBand SET =
      new TargetBand("ball roll", 15.6, 20.4, "site agronomist", "2025-05-01");

  @Test
  void inWords() {
    assertThat(SET.provisional()).isEmpty();
    assertThat(SET.statement())
        .isEqualTo(
            "dry below 15.6, wet above 20.4 % for ball roll; set by site agronomist on 2025-05-01");
    assertThat(SET.assuming("anchors from texture").statement())
        .isEqualTo(
            "provisional: dry below 15.6, wet above 20.4 % for ball roll; set by site agronomist on"
                + " 2025-05-01; anchors from texture");
    assertThat(TargetBand.of(16, 22).statement())
        .isEqualTo(
            "provisional: dry below 16.0, wet above 22.0 %; it is not recorded who set it, nor when");
    assertThat(new TargetBand("play", 16, 22, "site agronomist", "").statement())
        .isEqualTo(
            "provisional: dry below 16.0, wet above 22.0 % for play; set by site agronomist;"
                + " it is not recorded when it was set");
    assertThat(new TargetBand("play", 16, 22, " ", "2025-05-01").provisional())
        .isEqualTo("it is not recorded who set it");
  }

  /** Purposes of this project between wilt onset 10 and field capacity 26 %. */
  @Test
  void betweenAnchors() {
    double[][] limits = {{15.6, 20.4}, {18.0, 23.6}, {14.0, 18.8}};
    for (Purpose purpose : Purpose.values()) {
      TargetBand band = purpose.between(10, 26, "", "");
      assertThat(band.lowPct()).isCloseTo(limits[purpose.ordinal()][0], within(1e-12));
      assertThat(band.highPct()).isCloseTo(limits[purpose.ordinal()][1], within(1e-12));
      assertThat(band.purpose()).isEqualTo(purpose.label());
    }
  }

  /** 2 % to either side up to a median of 20 %, a tenth of it above. */
  @Test
  void aroundTheMedian() {
    assertThat(TargetBand.aroundMedian(14, "a", "b"))
        .isEqualTo(new TargetBand("evenness", 12, 16, "a", "b"));
    assertThat(TargetBand.aroundMedian(30, "a", "b"))
        .isEqualTo(new TargetBand("evenness", 27, 33, "a", "b"));
  }

  @Test
  void limitsInTheWrongOrderAreRefused() {
    assertThatThrownBy(() -> TargetBand.of(22, 16)).hasMessageContaining("22.0 and 16.0");
    assertThatThrownBy(() -> TargetBand.aroundMedian(Double.NaN, "", ""))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
