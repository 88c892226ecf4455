package org.mottle.export.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.Test;
import org.mottle.engine.water.TurfCoefficient;
import org.mottle.engine.water.WateringSettings;
import org.mottle.export.problem.InputRefused;

class WaterReaderTest {

  private static SiteSettings read(String water) throws IOException {
    return SettingsReader.parse("course.yml", "water: {" + water + "}");
  }

  @Test
  void everyKeyIsRead() throws IOException {
    SiteSettings site =
        read(
            "target_share: 0.5, efficiency: 0.8, cap_mm: 4, flow_l_min: 30, root_mm: 90, turf: warm"
                + " season, et0_mm_d: 6, days: 2, rain_mm: 3, at: 2031-07-10T05:00+01:00");
    WateringSettings water = site.mapping().watering();
    assertThat(water.targetShare()).isEqualTo(0.5);
    assertThat(water.efficiency()).isEqualTo(0.8);
    assertThat(water.capMm()).isEqualTo(4);
    assertThat(water.flowLMin()).isEqualTo(30);
    assertThat(water.rootMm()).isEqualTo(90);
    assertThat(water.turf()).isEqualTo(TurfCoefficient.WARM_SEASON);
    assertThat(water.kc()).isEqualTo(0.75);
    assertThat(water.outlook().turfMm()).isCloseTo(0.75 * 12, within(1e-12));
    assertThat(water.outlook().rainMm()).isEqualTo(3);
    assertThat(site.wateringAt()).contains(OffsetDateTime.parse("2031-07-10T05:00+01:00"));
  }

  @Test
  void withoutKeysNothingIsForecastAndNoMinutesAreKnown() throws IOException {
    WateringSettings water =
        SettingsReader.parse("course.yml", "crs: EPSG:32628").mapping().watering();
    assertThat(water).isEqualTo(WateringSettings.defaults());
    assertThat(water.outlook().lossMm()).isZero();
    assertThat(water.minutes(100)).isNaN();
  }

  @Test
  void everyMistakeIsToldAtOnce() {
    assertThatThrownBy(
            () ->
                read(
                    "target_share: 33, efficiency: 0, cap_mm: -1, flow_l_min: fast, turf: moss,"
                        + " et0_mm_d: 5, at: tomorrow, root: 100"))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("water.target_share: expected a number from 0.0 to 1.0, was 33.0")
        .hasMessageContaining("water.efficiency")
        .hasMessageContaining("water.cap_mm")
        .hasMessageContaining("water.flow_l_min: expected a number, was 'fast'")
        .hasMessageContaining("water.turf: expected one of cool season, warm season, was 'moss'")
        .hasMessageContaining("et0_mm_d and days together")
        .hasMessageContaining("water.at: expected a time with its offset")
        .hasMessageContaining("unknown key 'root'; did you mean 'root_mm'?");
  }
}
