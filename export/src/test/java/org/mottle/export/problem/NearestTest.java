package org.mottle.export.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
  private static final List<String> BAND =
      List.of("purpose", "lo_pct", "hi_pct", "fc_pct", "wp_pct", "by", "on");

  @Test
  void aBeginningMeansTheWordThatGoesOn() {
    assertThat(Nearest.to("lo", BAND)).contains("lo_pct");
    assertThat(Nearest.to("purp", BAND)).contains("purpose");
    assertThat(Nearest.to("vwc", List.of("vwc_raw", "vwc_adj"))).contains("vwc_raw");
  }

  @Test
  void otherwiseTheFewestChangedLettersCount() {
    assertThat(Nearest.to("hi_pt", BAND)).contains("hi_pct");
    assertThat(Nearest.to("sperical", List.of("circular", "spherical"))).contains("spherical");
  }

  @Test
  void aWordLikeNoneOfThemMeansNone() {
    assertThat(Nearest.to("temperature", BAND)).isEmpty();
    assertThat(Nearest.to("x", List.of("a", "y"))).isEmpty();
    assertThat(Nearest.to("x", List.of())).isEmpty();
  }
}
