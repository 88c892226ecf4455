package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.moisture.SiteCurve;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.settings.SettingsReader;

class CalibrationInputsTest {
  private static final Crs UTM = Crs.parse("EPSG:32628");
  private static final Greens GREENS =
      new Greens(
          List.of(
              Green.of(
                  "1",
                  new GeometryFactory()
                      .toGeometry(new Envelope(500000, 500030, 5316300, 5316330)))),
          UTM,
          "greens",
          List.of());

  @TempDir Path folder;

  private Readings readings(String settings, String... rows) throws IOException {
    Path file = folder.resolve("r.csv");
    Files.writeString(file, "green_id,perm_raw,x,y\n" + String.join("\n", rows) + "\n");
    InputOptions options = SettingsReader.parse("s.yml", settings).inputOptions().withCrs(UTM);
    return ReadingsReader.read(file.toString(), options, GREENS);
  }

  /** 10 and 20 by Topp, Davis & Annan (1980): 18.83 and 34.54 %. */
  @Test
  void permittivitiesBecomeMoistureByTheCurveNamed() throws IOException {
    Readings read =
        readings("calibration: {curve: topp}", "1,10,500010,5316310", "1,20,500020,5316320");
    assertThat(read.readings().get(0).moisture().rawPct()).isCloseTo(18.83, within(1e-9));
    assertThat(read.readings().get(1).moisture().rawPct()).isCloseTo(34.54, within(1e-9));
  }

  @Test
  void withoutACurveOrWithOneThatIsNotKnownItIsAsked() {
    assertThatThrownBy(() -> readings("unit: percent", "1,10,500010,5316310"))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("calibration: {curve: topp}");
    assertThatThrownBy(() -> readings("calibration: {curve: top}", "1,10,500010,5316310"))
        .hasMessageContaining("topp");
    assertThatThrownBy(() -> readings("calibration: {curve: malicki}", "1,10,500010,5316310"))
        .hasMessageContaining("bulk_density");
    assertThatThrownBy(() -> readings("calibration: {curve: topp}", "1,0.2,500010,5316310"))
        .hasMessageContaining("between 1 and 81")
        .hasMessageContaining("row 2 (0.2)");
  }

  @Test
  void coresMakeACurve() throws IOException {
    Path file = folder.resolve("cores.csv");
    StringBuilder rows = new StringBuilder("vwc_raw,wet_g,dry_g,can_g,vol_cm3\n");
    for (int k = 0; k < 7; k++) {
      // soil of 100 g in 62.5 cm³ with 2 + k % more than the probe says, exactly
      double raw = 8 + 3 * k;
      rows.append(raw).append(',').append(130 + (raw + 2) * 0.625).append(",130,30,62.5\n");
    }
    Files.writeString(file, rows);
    SiteCurve curve = CoresReader.read(file.toString(), InputOptions.NONE);
    assertThat(curve.slope()).isCloseTo(1, within(1e-9));
    assertThat(curve.pct(20)).isCloseTo(22, within(1e-9));
    assertThat(curve.cores()).isEqualTo(7);
  }

  @Test
  void everyBadCoreIsNamed() throws IOException {
    Path file = folder.resolve("cores.csv");
    Files.writeString(
        file,
        "vwc_raw,wet_g,dry_g,can_g,vol_cm3\n12,100,120,20,50\n,110,100,20,50\n13,110,100,20,0\n");
    assertThatThrownBy(() -> CoresReader.read(file.toString(), InputOptions.NONE))
        .isInstanceOfSatisfying(
            InputRefused.class,
            e -> {
              assertThat(e.lines()).hasSize(3);
              assertThat(e.lines().get(0)).contains("row 2", "wet soil");
              assertThat(e.lines().get(1)).contains("row 3", "vwc_raw");
              assertThat(e.lines().get(2)).contains("row 4", "volume");
            });
  }
}
