package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Pooling;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.mapping.VariogramSettings;
import org.mottle.engine.observation.DuplicatePolicy;
import org.mottle.engine.survey.Purpose;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.WateringSettings;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.settings.BandRule;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;

/** The settings files of the samples say what their comments say, and leave no key out. */
class SettingsFilesTest {
  private static final Path COURSE = Path.of("settings/course.yml");

  @Test
  void the_full_file() throws IOException {
    SiteSettings site = SettingsReader.read(COURSE);

    assertThat(site.columns())
        .isEqualTo(Map.of("vwc_raw", "Moisture %", "surv_id", "Survey", "st_id", "Station"));
    assertThat(site.crs()).contains("EPSG:32628");
    assertThat(site.workingCrs()).contains("EPSG:32628");
    assertThat(site.bands().byDefault())
        .contains(
            new BandRule.Limits(
                new TargetBand("drainage", 18, 27, "site agronomist", "2025-05-01")));
    assertThat(site.bands().greens().get("G7"))
        .isEqualTo(
            new BandRule.Anchors(Purpose.BALL_ROLL, 33, 15, "site agronomist", "2025-05-01"));
    assertThat(site.bands().greens().get("G5"))
        .isEqualTo(new BandRule.Anchors(Purpose.SAVING_WATER, Double.NaN, Double.NaN, "", ""));
    assertThat(site.mapping())
        .isEqualTo(
            new MappingSettings(
                Method.AUTO,
                0.5,
                1,
                1,
                DuplicatePolicy.REJECT,
                new VariogramSettings(
                    Pooling.ROOT_ZONE, Optional.empty(), 16, 1.5, Estimator.CRESSIE_HAWKINS),
                new MappingSettings.Needed(8, 12, 100, 60),
                new UncertaintySettings(500, 25, 0, 6, 0.3),
                new PositionSettings(0.6, 1),
                new WateringSettings(
                    0.33, 0.9, 6, 25, 120, new WateringSettings.Outlook(0.9 * 4.5, 0))));
    assertThat(site.wateringAt()).contains(OffsetDateTime.parse("2025-07-10T05:00+01:00"));
  }

  @Test
  void the_smallest_file_changes_nothing_but_the_band() throws IOException {
    SiteSettings site = SettingsReader.read(Path.of("settings/minimal.yml"));
    assertThat(site.withBands(SiteSettings.DEFAULTS.bands())).isEqualTo(SiteSettings.DEFAULTS);
    assertThat(site.bands().byDefault())
        .contains(new BandRule.Limits(new TargetBand("ball roll", 15.6, 20.4, "", "")));
  }

  /** A key that no one could have meant makes the reader list those it knows. */
  @Test
  void the_full_file_shows_every_key() throws IOException {
    String file = Files.readString(COURSE);
    List<String> known = new ArrayList<>();
    for (String place :
        List.of(
            "%s: 1",
            "variogram: {%s: 1}",
            "needed: {%s: 1}",
            "uncertainty: {%s: 1}",
            "positions: {%s: 1}",
            "water: {%s: 1}",
            "bands: {%s: 1}",
            "bands: {default: {%s: 1}}")) {
      String yaml = place.formatted("zzzzzzzzzzzzzzzzzzzzzzzzzzzzzz");
      InputRefused refused =
          catchThrowableOfType(InputRefused.class, () -> SettingsReader.parse("t.yml", yaml));
      Matcher list = Pattern.compile("known here: (.*)").matcher(refused.lines().get(0));
      assertThat(list.find()).as(refused.lines().get(0)).isTrue();
      known.addAll(List.of(list.group(1).split(", ")));
    }
    assertThat(known)
        .contains(
            "columns", "lag_m", "own_variogram", "greens", "wp_pct", "next_stations", "shift_m");
    assertThat(known).allSatisfy(key -> assertThat(file).containsPattern("\\b" + key + ":"));
  }
}
