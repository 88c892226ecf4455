package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClassRuleTest {
  private static final ClassRule RULE = ClassRule.defaults().withSdLimit(2);

  @ParameterizedTest
  @CsvSource({
    "0.80, 0.10, 1, DRY",
    "0.79, 0.10, 1, PROBABLY_DRY",
    "0.50, 0.00, 1, PROBABLY_DRY",
    "0.49, 0.06, 1, IN_BAND",
    "0.49, 0.07, 1, CANNOT_TELL",
    "0.40, 0.40, 1, CANNOT_TELL",
    "0.10, 0.80, 1, WET",
    "0.10, 0.60, 1, PROBABLY_WET",
    "0.25, 0.25, 1, IN_BAND",
    "0.80, 0.10, 3, DRY",
    "0.79, 0.10, 3, CANNOT_TELL",
    "0.10, 0.85, 3, WET",
    "0.10, 0.60, 3, CANNOT_TELL",
    "0.10, 0.10, 3, IN_BAND",
    "0.15, 0.15, 3, CANNOT_TELL",
    "0.15, 0.15, 2, IN_BAND",
    "NaN, 0.15, 1, NO_VALUE",
    "0.15, NaN, 1, NO_VALUE",
    "0.15, 0.15, NaN, NO_VALUE",
  })
  void classesFollowTheProbabilities(double dry, double wet, double sd, ZoneClass cls) {
    assertThat(RULE.of(dry, wet, sd)).isEqualTo(cls);
  }

  @Test
  void dryAndWetAreTreatedAlike() {
    ZoneClass[] mirrored = {
      ZoneClass.WET,
      ZoneClass.PROBABLY_WET,
      ZoneClass.IN_BAND,
      ZoneClass.PROBABLY_DRY,
      ZoneClass.DRY,
      ZoneClass.CANNOT_TELL,
      ZoneClass.NO_VALUE
    };
    for (int d = 0; d <= 32; d++) {
      for (int w = 0; w <= 32 - d; w++) {
        for (double sd : new double[] {1, 3}) {
          boolean tie = d == 16 && w == 16;
          ZoneClass there = RULE.of(d / 32.0, w / 32.0, sd);
          if (!tie) {
            assertThat(RULE.of(w / 32.0, d / 32.0, sd))
                .as("p_dry %d/32, p_wet %d/32", d, w)
                .isEqualTo(mirrored[there.ordinal()]);
          }
        }
      }
    }
  }

  @Test
  void numbersAndCodesAreThoseOfTheFiles() {
    assertThat(Arrays.stream(ZoneClass.values()).map(c -> c.number() + " " + c.code()))
        .containsExactly(
            "1 dry",
            "2 probably dry",
            "3 in band",
            "4 probably wet",
            "5 wet",
            "6 cannot tell",
            "0 no value");
  }

  @Test
  void refuseLimitsOutOfOrder() {
    assertThatThrownBy(() -> new ClassRule(0.4, 0.5, 0.45, 1, 0))
        .hasMessage("sure must be between 0.5 and 1.0, was 0.4");
    assertThatThrownBy(() -> RULE.withSdLimit(Double.NaN)).hasMessageContaining("was NaN");
  }
}
