package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.Outcome;
import org.mottle.export.cli.Mottle;
import org.mottle.export.job.MapReport;
import org.mottle.export.verify.Verification;

class Sample03MainJobTest {
  private static final Path SETTINGS = Path.of("settings");

  @Test
  void from_java() throws IOException {
    Path folder = TargetFolder.fresh("03-java");
    MapReport report = Sample03MainJob.map(folder, SETTINGS.resolve("minimal.yml"));
    assertThat(report.allMapped()).isTrue();
    assertThat(report.map().outcomes()).hasSize(9);
    assertThat(report.map().outcomes())
        .allMatch(o -> o.subject().band().orElseThrow().lowPct() == 15.6);
    assertThat(folder.resolve("map/mottle.gpkg")).isNotEmptyFile();
    assertThat(folder.resolve("map/raster")).doesNotExist();
    Verification verification = Verification.of(folder.resolve("map"));
    assertThat(verification.faults()).isEmpty();
    assertThat(report.map().outcomes()).allMatch(Outcome.Mapped.class::isInstance);
  }

  /** The full settings file does what its comments say, on a file with the site's own headings. */
  @Test
  void from_the_command_line() throws IOException {
    Path folder = TargetFolder.fresh("03-command");
    Course.copyTo(folder.resolve("course"));
    Path readings = folder.resolve("readings.csv");
    List<String> rows =
        new ArrayList<>(Files.readAllLines(folder.resolve("course/readings_S1.csv")));
    rows.set(
        0,
        rows.get(0)
            .replace("vwc_raw", "Moisture %")
            .replace("surv_id", "Survey")
            .replace("st_id", "Station"));
    Files.write(readings, rows);

    int code =
        Mottle.run(
            "map",
            "--greens",
            folder.resolve("course/greens.geojson").toString(),
            "--readings",
            readings.toString(),
            "--settings",
            SETTINGS.resolve("course.yml").toString(),
            "--quiet",
            "--out",
            folder.resolve("map").toString());

    assertThat(code).isZero();
    assertThat(Verification.of(folder.resolve("map")).faults()).isEmpty();
    assertThat(folder.resolve("map/raster/G3_S1_vwc.tif")).isNotEmptyFile();
    assertThat(Files.readString(folder.resolve("map/summary.json"))).contains("\"saving water\"");
  }
}
