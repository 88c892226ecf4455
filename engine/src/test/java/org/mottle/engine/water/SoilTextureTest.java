package org.mottle.engine.water;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Refusal;

class SoilTextureTest {

  private static SoilTexture texture(double[] row) {
    return new SoilTexture(100 * row[0], 100 * row[1], row[2]);
  }

  @Test
  void theRowsOfTheCatalogue() throws IOException {
    List<double[]> rows = PublishedRows.of("saxton_rawls.csv", 12);
    assertThat(rows).hasSize(13);
    for (double[] r : rows) {
      SoilTexture soil = texture(r);
      assertThat(soil.wiltingPointPct() / 100).isCloseTo(r[3], within(1e-9));
      assertThat(soil.fieldCapacityPct() / 100).isCloseTo(r[4], within(1e-9));
      assertThat(soil.saturationPct() / 100).isCloseTo(r[5], within(1e-9));
      assertThat(soil.conductivityMmH()).isCloseTo(r[8], within(1e-9));
    }
  }

  /**
   * Saxton &amp; Rawls 2006, table 3 (2.5 % organic matter): whole per cent, all twelve classes.
   */
  @Test
  void thePublishedTable() throws IOException {
    for (double[] r : PublishedRows.of("saxton_rawls.csv", 12).subList(0, 12)) {
      assertThat((double) Math.round(texture(r).wiltingPointPct())).isEqualTo(r[9]);
      assertThat((double) Math.round(texture(r).fieldCapacityPct())).isEqualTo(r[10]);
      assertThat((double) Math.round(texture(r).saturationPct())).isEqualTo(r[11]);
    }
  }

  /**
   * The worked example of the paper's text: sand 20, clay 20, organic matter 2.5 %. Its 13.8 is not
   * what equation 1 gives (13.65), hence 0.2 %.
   */
  @Test
  void theExampleInTheText() {
    SoilTexture soil = new SoilTexture(20, 20, 2.5);
    assertThat(soil.wiltingPointPct()).isCloseTo(13.8, within(0.2));
    assertThat(soil.fieldCapacityPct()).isCloseTo(32.1, within(0.2));
    assertThat(soil.saturationPct()).isCloseTo(48.2, within(0.2));
  }

  /** Over the whole triangle of textures, by 2 % and half a per cent of organic matter. */
  @Test
  void whatIsAcceptedIsInOrder() {
    int accepted = 0;
    int refused = 0;
    for (double sand = 0; sand <= 100; sand += 2) {
      for (double clay = 0; clay <= 100 - sand; clay += 2) {
        for (double organic = 0; organic <= 9; organic += 0.5) {
          if (!SoilTexture.against(sand, clay, organic).isEmpty()) {
            refused++;
            continue;
          }
          accepted++;
          SoilTexture soil = new SoilTexture(sand, clay, organic);
          assertThat(soil.wiltingPointPct()).isPositive().isLessThan(soil.fieldCapacityPct());
          assertThat(soil.saturationPct()).isBetween(soil.fieldCapacityPct(), 100.0);
          assertThat(soil.conductivityMmH()).isPositive().isLessThan(1930);
        }
      }
    }
    assertThat(accepted).isGreaterThan(15000);
    assertThat(refused).isGreaterThan(1000);
  }

  @Test
  void whatTheEquationsWereNotMadeForIsRefused() {
    assertThat(SoilTexture.against(20, 65, 2))
        .containsExactly(
            new Refusal(
                "clay of 65.0 % is more than the equations were made for",
                "they hold up to 60 %; give the site's own readings"));
    assertThat(SoilTexture.against(20, 65, 12)).hasSize(2);
    assertThat(SoilTexture.against(60, 50, 2).get(0).reason())
        .isEqualTo("sand and clay together are 110.0 % by weight");
    assertThat(SoilTexture.against(-1, Double.NaN, 2)).hasSize(2);
    assertThat(SoilTexture.against(96, 0, 0).get(0).reason()).contains("% of water at wilting");
    assertThat(SoilTexture.against(40, 60, 8).get(0).reason()).contains("no air");
    assertThatThrownBy(() -> new SoilTexture(60, 50, 2))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("110.0 % by weight; with silt");
  }

  @Test
  void sandOfARootZoneIsToldApart() {
    assertThat(new SoilTexture(92, 2, 2).sandy()).isTrue();
    assertThat(new SoilTexture(65, 10, 2).sandy()).isFalse();
  }
}
