package org.mottle.export.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.mottle.engine.empirical.Estimator;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Pooling;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.FieldNames;

class SettingsReaderTest {

  private static Green green(String id, double fc, double wp) throws ParseException {
    return new Green(
        id,
        "",
        new WKTReader().read("POLYGON((0 0, 9 0, 9 9, 0 9, 0 0))"),
        new RootZone("", "", Double.NaN, fc, wp, Double.NaN),
        Green.Boundary.UNKNOWN);
  }

  @Test
  void readsEveryKey() throws Exception {
    SiteSettings s =
        SettingsReader.parse(
            "course.yml",
            """
            columns: {vwc_raw: "Moisture %", green_id: Green}
            crs: EPSG:32628
            working_crs: EPSG:32628
            unit: percent
            method: kriging
            cell_m: 0.25
            iso_step_pct: 2
            measurement_sd_pct: 0.95
            duplicates: average
            variogram: {pool: root-zone, model: spherical, cutoff_m: 15, lag_m: 1, estimator: dowd}
            needed: {map: 9, full: 13, own_variogram: 120, pool: 80}
            uncertainty: {realisations: 800, draws: 30, seed: -7, next_stations: 0, operator_sd_pct: 0.4}
            positions: {jitter_m: 0.6, shift_m: 1.2}
            bands:
              default: {purpose: ball roll, lo_pct: 16, hi_pct: 22, by: site agronomist, on: 2031-05-02}
              greens: {"7": {purpose: appearance, fc_pct: 33, wp_pct: 15}}
            """);
    assertThat(s.columns())
        .containsEntry("vwc_raw", "Moisture %")
        .containsEntry("green_id", "Green");
    assertThat(s.mapping().method()).isEqualTo(Method.KRIGING);
    assertThat(s.mapping().cellM()).isEqualTo(0.25);
    assertThat(s.mapping().measurementSdPct()).isEqualTo(0.95);
    assertThat(s.mapping().variogram().pooling()).isEqualTo(Pooling.ROOT_ZONE);
    assertThat(s.mapping().variogram().shape()).contains(Shape.SPHERICAL);
    assertThat(s.mapping().variogram().cutoffM()).isEqualTo(15);
    assertThat(s.mapping().variogram().estimator()).isEqualTo(Estimator.DOWD);
    assertThat(s.mapping().needed().pool()).isEqualTo(80);
    assertThat(s.mapping().uncertainty()).isEqualTo(new UncertaintySettings(800, 30, -7, 0, 0.4));
    assertThat(s.mapping().positions()).isEqualTo(new PositionSettings(0.6, 1.2));
    assertThat(s.mapping().needed().ownVariogram()).isEqualTo(120);
    TargetBand band = s.bands().bandOf(green("1", Double.NaN, Double.NaN), List.of()).orElseThrow();
    assertThat(band)
        .isEqualTo(new TargetBand("ball roll", 16, 22, "site agronomist", "2031-05-02"));
    // appearance is 0.50 to 0.85 of the extractable water: 15 + 18 x 0.5 and 15 + 18 x 0.85
    TargetBand seven =
        s.bands().bandOf(green("7", Double.NaN, Double.NaN), List.of()).orElseThrow();
    assertThat(seven.lowPct()).isCloseTo(24, within(1e-12));
    assertThat(seven.highPct()).isCloseTo(30.3, within(1e-12));
  }

  @Test
  void anAnchorThatIsMissingComesFromTheGreen() throws Exception {
    SiteSettings s = SettingsReader.parse("s.yml", "bands: {default: {purpose: saving water}}");
    TargetBand band = s.bands().bandOf(green("1", 26, 10), List.of()).orElseThrow();
    assertThat(band.lowPct()).isCloseTo(14, within(1e-12));
    assertThat(band.highPct()).isCloseTo(18.8, within(1e-12));
    assertThat(s.bands().bandOf(green("1", Double.NaN, 10), List.of())).isEmpty();
  }

  @Test
  void anEmptyFileChangesNothing() throws IOException {
    assertThat(SettingsReader.parse("s.yml", "")).isEqualTo(SiteSettings.DEFAULTS);
    assertThat(SettingsReader.parse("s.yml", "# nothing\n")).isEqualTo(SiteSettings.DEFAULTS);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "celll_m: 1|s.yml: unknown key 'celll_m'; did you mean 'cell_m'?",
        "cell_m: 0|s.yml, cell_m: expected a number above 0, was 0.0",
        "cell_m: half|s.yml, cell_m: expected a number, was 'half'",
        "method: krigging|s.yml, method: expected one of auto, kriging, inverse-distance, was 'krigging'",
        "bands: {default: {lo_pct: 22, hi_pct: 16}}|s.yml, bands.default: a band needs lo_pct below hi_pct, were 22.0 and 16.0",
        "bands: {default: {lo_pct: 22}}|s.yml, bands.default: a band needs lo_pct below hi_pct, were 22.0 and nothing",
        "bands: {default: {purpose: roll}}|s.yml, bands.default: without lo_pct and hi_pct the purpose must be one of ball roll, appearance, saving water, evenness, was 'roll'",
        "bands: {greens: {G1: {purpose: appearance, fc_pct: 9, wp_pct: 12}}}|s.yml, bands.greens.G1: fc_pct must be above wp_pct, were 9.0 and 12.0",
        "bands: {default: {fc_pct: 30, wp_pct: 10}}|s.yml, bands.default: without lo_pct and hi_pct the purpose must be one of ball roll, appearance, saving water, evenness, was ''",
        "bands: {default: {purpose: ball roll, fc_pct: 260, wp_pct: 10}}|s.yml, bands.default.fc_pct: expected % by volume, 0 to 100, was 260.0",
        "bands: {default: {purpose: a, lo_pct: 16, hi_pct: 22, fc_pct: 30}}|s.yml, bands.default: give lo_pct and hi_pct, or fc_pct and wp_pct, not both",
        "bands: {default: {purpose: ball roll, fc_pct: 30, texture: {sand_pct: 60, clay_pct: 10, organic_pct: 2}}}|s.yml, bands.default: give fc_pct and wp_pct, or texture, not both",
        "bands: {default: {purpose: ball roll, texture: {sand_pct: 70, clay_pct: 40, organic_pct: 2}}}|s.yml, bands.default.texture: sand and clay together are 110.0 % by weight; with silt they make 100; check the analysis",
        "bands: {default: {purpose: ball roll, texture: {sand_pct: 20, clay_pct: 70, organic_pct: 9}}}|s.yml, bands.default.texture: clay of 70.0 % is more than the equations were made for; they hold up to 60 %; give the site's own readings^s.yml, bands.default.texture: organic matter of 9.0 % is more than the equations were made for; they hold up to 8 %; give the site's own readings",
        "bands: {default: {purpose: ball roll, texture: {sand_pct: 60}}}|s.yml, bands.default.texture: texture needs clay_pct, organic_pct too, in % by weight; they stand in the analysis of the root zone",
        "bands: {default: {purpose: ball roll, texture: {sand_pct: much, clay_pct: 5, organic_pct: 2}}}|s.yml, bands.default.texture.sand_pct: expected a number, was 'much'",
        "bands: {default: {purpose: Evenness, lo_pct: 16, hi_pct: 22}}|s.yml, bands.default: evenness takes its limits from the green's own median; leave out lo_pct and hi_pct",
        "bands: {default: {purpose: roll, fc_pct: 9, wp_pct: 12}, greens: {G1: {lo_pct: 9, hi_pct: 8}}}|s.yml, bands.greens.G1: a band needs lo_pct below hi_pct, were 9.0 and 8.0^s.yml, bands.default: fc_pct must be above wp_pct, were 9.0 and 12.0^s.yml, bands.default: without lo_pct and hi_pct the purpose must be one of ball roll, appearance, saving water, evenness, was 'roll'",
        "columns: vwc|s.yml, columns: expected keys and values, was 'vwc'",
        "columns: {vwc: om}|s.yml, columns: unknown name 'vwc'; did you mean 'vwc_raw'?",
        "columns: [vwc_raw]|s.yml, columns: expected keys and values, was a list",
        "variogram: {cutoff_m: 10, lag_m: 12}|s.yml, variogram: lag_m must not be above cutoff_m, were 12.0 and 10.0",
        "variogram: {cutoff_m: 15, lag_m: 1e-9}|s.yml, variogram: lag_m makes more than 1000 classes up to cutoff_m, were 1.0E-9 and 15.0; use a wider lag",
        "variogram: {lag_m: 1e-9}|s.yml, variogram.lag_m: expected 0.01 m or more, was 1.0E-9",
        "needed: {map: 0}|s.yml, needed.map: expected a whole number of 1 or more, was '0'",
        "needed: {full: 12.5}|s.yml, needed.full: expected a whole number of 1 or more, was '12.5'",
        "needed: {pool: many}|s.yml, needed.pool: expected a whole number of 1 or more, was 'many'",
        "needed: {own_variogram: -3}|s.yml, needed.own_variogram: expected a whole number of 1 or more, was '-3'",
        "needed: {pairs: 60}|s.yml, needed: unknown key 'pairs'; known here: map, full, own_variogram, pool",
        "variogram: {weights: pairs}|s.yml, variogram: unknown key 'weights'; known here: pool, model, cutoff_m, lag_m, estimator",
        "variogram: {model: power}|s.yml, variogram.model: expected one of auto, spherical, exponential, gaussian, matern, circular, pentaspherical, linear, was 'power'",
        "uncertainty: {realisation: 9}|s.yml, uncertainty: unknown key 'realisation'; did you mean 'realisations'?",
        "uncertainty: {realisations: 0}|s.yml, uncertainty.realisations: expected a whole number of 1 or more, was '0'",
        "uncertainty: {realisations: 1e9}|s.yml, uncertainty.realisations: expected 100000 or fewer, was 1000000000",
        "uncertainty: {realisations: 10, draws: 20}|s.yml, uncertainty: realisations must not be fewer than draws, were 10 and 20",
        "uncertainty: {next_stations: -1}|s.yml, uncertainty.next_stations: expected a whole number of 0 or more, was '-1'",
        "uncertainty: {seed: 1.5}|s.yml, uncertainty.seed: expected a whole number, was '1.5'",
        "uncertainty: {operator_sd_pct: -1}|s.yml, uncertainty.operator_sd_pct: expected a number of 0 or more, was -1.0",
        "positions: {jitter: 1}|s.yml, positions: unknown key 'jitter'; did you mean 'jitter_m'?",
        "positions: {shift_m: -2}|s.yml, positions.shift_m: expected a number of 0 or more, was -2.0",
        "bands: {default: {purpose: roll, lo: 16, hi_pct: 22}}|s.yml, bands.default: unknown key 'lo'; did you mean 'lo_pct'?^s.yml, bands.default: a band needs lo_pct below hi_pct, were nothing and 22.0",
        "cell_m: .nan|s.yml, line 1: not readable as YAML (Malformed numeric value '.nan')",
        "[cell_m, method]|s.yml: expected keys and values, as cell_m: 0.5 on a line of its own, was a list",
        "cell_m 0.5|s.yml: expected keys and values, as cell_m: 0.5 on a line of its own, was 'cell_m 0.5'",
        "variogram: {modell: spherical}|s.yml, variogram: unknown key 'modell'; did you mean 'model'?",
      })
  void oneClearLineEach(String yaml, String message) {
    assertThatThrownBy(() -> SettingsReader.parse("s.yml", yaml))
        .isInstanceOfSatisfying(
            InputRefused.class,
            refused -> assertThat(refused.lines()).containsExactly(message.split("\\^")));
  }

  @Test
  void fewerRealisationsThanDrawsByDefaultTakeFewerDraws() throws IOException {
    UncertaintySettings u =
        SettingsReader.parse("s.yml", "uncertainty: {realisations: 10}").mapping().uncertainty();
    assertThat(u.draws()).isEqualTo(10);
    assertThat(u.realisations()).isEqualTo(10);
  }

  @Test
  void allProblemsAtOnce() {
    assertThatThrownBy(() -> SettingsReader.parse("s.yml", "cell_m: -1\nmethod: x\nzone: 3\n"))
        .isInstanceOfSatisfying(
            InputRefused.class, refused -> assertThat(refused.lines()).hasSize(3));
  }

  @Test
  void brokenYamlNamesTheLine() {
    assertThatThrownBy(() -> SettingsReader.parse("s.yml", "cell_m: 1\nbands: {default: [\n"))
        .isInstanceOfSatisfying(
            InputRefused.class,
            refused -> assertThat(refused.lines()).singleElement().asString().contains("line "));
    assertThatThrownBy(() -> SettingsReader.parse("s.yml", "cell_m: 1\ncell_m: 2\n"))
        .isInstanceOfSatisfying(
            InputRefused.class,
            refused ->
                assertThat(List.copyOf(refused.lines()).get(0))
                    .contains("line 2")
                    .contains("cell_m"));
  }

  @Test
  void wholeNumbersMayBeWrittenWithAPoint() throws IOException {
    assertThat(SettingsReader.parse("s.yml", "needed: {map: 9.0}").mapping().needed().map())
        .isEqualTo(9);
  }

  @Test
  void everyNameTheReadersKnowCanBeMapped() throws IOException {
    for (String name : FieldNames.all()) {
      assertThat(SettingsReader.parse("s.yml", "columns: {" + name + ": A}").columns())
          .containsExactly(Map.entry(name, "A"));
    }
  }

  @Test
  void aFileThatIsNotThereOrNoText(@TempDir Path folder) throws IOException {
    Path none = folder.resolve("none.yml");
    assertThatThrownBy(() -> SettingsReader.read(none))
        .isInstanceOf(InputRefused.class)
        .hasMessage(none + ": no such file");
    assertThatThrownBy(() -> SettingsReader.read(folder))
        .isInstanceOf(InputRefused.class)
        .hasMessage(folder + " is a folder; give a YAML file");
    Path latin = Files.write(folder.resolve("latin.yml"), new byte[] {'#', (byte) 0xfc});
    assertThatThrownBy(() -> SettingsReader.read(latin))
        .isInstanceOf(InputRefused.class)
        .hasMessage("latin.yml: not UTF-8 text; save it as UTF-8");
  }
}
