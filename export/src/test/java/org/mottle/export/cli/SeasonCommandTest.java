package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.CourseGenerator;
import org.mottle.export.record.Json;

/** {@code mottle season} on the invented course. */
class SeasonCommandTest {
  @TempDir static Path folder;
  private static Ran ran;

  @BeforeAll
  static void run() throws IOException {
    Path course = folder.resolve("course");
    CourseGenerator.generate(CourseGenerator.DEFAULT_SEED).writeSmall(course);
    CourseGenerator.generate(CourseGenerator.DEFAULT_SEED).writeLarge(course);
    // the ground of the dead head, put right before S6
    Files.writeString(
        folder.resolve("repaired.geojson"),
        """
        {"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:32628"}},
        "features":[{"type":"Feature","properties":{},"geometry":{"type":"Polygon","coordinates":
        [[[500642,5316708],[500655,5316708],[500655,5316724],[500642,5316724],[500642,5316708]]]}}]}
        """);
    ran =
        season(
            "out",
            "--elevation",
            elevation(course),
            "--repaired",
            folder.resolve("repaired.geojson").toString(),
            "--before",
            "S4",
            "--after",
            "S6",
            "--wanted",
            "wetter");
  }

  private static String elevation(Path course) throws IOException {
    try (Stream<Path> files = Files.list(course)) {
      return String.join(
          ",", files.map(Path::toString).filter(f -> f.endsWith(".asc")).sorted().toList());
    }
  }

  private static Ran season(String out, String... more) {
    return season(out, "readings.csv", List.of(more));
  }

  private static Ran season(String out, String readings, List<String> more) {
    Path course = folder.resolve("course");
    List<String> words =
        new ArrayList<>(
            List.of(
                "season",
                "--greens",
                course.resolve("greens.geojson").toString(),
                "--readings",
                course.resolve(readings).toString(),
                "--conditions",
                course.resolve("surveys.csv").toString(),
                "--plan",
                course.resolve("plan.csv").toString(),
                "--controls",
                course.resolve("controls.csv").toString(),
                "--track",
                course.resolve("track_S2.gpx") + "," + course.resolve("track_S3.gpx"),
                "--settings",
                course.resolve("course.yml").toString(),
                "--crs",
                "EPSG:32628",
                "--heads",
                course.resolve("heads.geojson").toString(),
                "--out",
                folder.resolve(out).toString()));
    words.addAll(more);
    return Ran.mottle(words.toArray(String[]::new));
  }

  @SuppressWarnings("unchecked") // rows of a layer are maps
  private static List<Map<String, Object>> rows(String layer) throws IOException {
    Map<?, ?> summary = (Map<?, ?>) Json.read(folder.resolve("out/summary.json"));
    return (List<Map<String, Object>>) summary.get(layer);
  }

  private static Map<String, Object> change(String green, String before) throws IOException {
    return rows("change").stream()
        .filter(r -> r.get("green_id").equals(green) && r.get("surv_a").equals(before))
        .findFirst()
        .orElseThrow();
  }

  private static double number(Map<String, Object> row, String field) {
    return ((Number) row.get(field)).doubleValue();
  }

  @Test
  void whatIsDeliveredReadsBackAndSaysWhatWasNotMapped() {
    // greens that must not be mapped are planted in the course
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.PARTLY);
    assertThat(ran.out()).contains("green G9, S4: no map").contains("38 mm");
    Ran verified = Ran.mottle("verify", folder.resolve("out").toString());
    assertThat(verified.exitCode()).as(verified.out()).isEqualTo(ExitCode.DONE);
  }

  /** Invented truth: sand dries by about 1.8 % a day from S1 to S2, over three days. */
  @Test
  void theDryDownIsToldWhereNoWaterFellBetween() throws IOException {
    Map<String, Object> dried = change("G1", "S1");
    assertThat(number(dried, "dvwc")).isBetween(-7.0, -4.0);
    assertThat(number(dried, "k_lo")).isLessThan(1.8);
    assertThat(number(dried, "k_hi")).isGreaterThan(1.4);
    assertThat(dried).doesNotContainKey("why_no_k");
    assertThat(change("G1", "S3").get("why_no_k").toString()).isNotBlank();
  }

  @Test
  void theHollowIsSuggestedWhereItLiesAndTheBlockedDrainComesFirst() throws IOException {
    List<Map<String, Object>> first =
        rows("hypo").stream().filter(r -> r.get("rank") != null && number(r, "rank") == 1).toList();
    assertThat(first)
        .anySatisfy(
            r -> {
              assertThat(r.get("place_id")).isEqualTo("G6-1");
              assertThat(r.get("kind").toString()).startsWith("surface");
            })
        .anySatisfy(
            r -> {
              assertThat(r.get("place_id")).isEqualTo("G3-1");
              assertThat(r.get("kind").toString()).startsWith("subsurface");
            });
    Map<String, Object> hollow =
        rows("depress").stream()
            .filter(r -> r.get("green_id").equals("G6"))
            .findFirst()
            .orElseThrow();
    // 54 mm and 27 m² of ground 10 mm deep or more, before noise
    assertThat(number(hollow, "depth_mm")).isBetween(45.0, 62.0);
    assertThat(number(hollow, "area_m2")).isBetween(22.0, 32.0);
  }

  @Test
  void theRepairOfTheHeadIsSeenAgainstTheRestOfTheGreen() throws IOException {
    Map<String, Object> repair = rows("repair").get(0);
    assertThat(repair.get("green_id")).isEqualTo("G5");
    assertThat(number(repair, "effect")).isPositive();
    assertThat(number(repair, "p_improved")).isGreaterThan(0.8);
  }

  @Test
  void thePageHoldsAllGreensAndFetchesNothing() throws IOException {
    String page = Files.readString(folder.resolve("out/season.html"));
    for (int g = 1; g <= 9; g++) {
      assertThat(page).contains("Green G" + g);
    }
    assertThat(page).doesNotContain("http:", "https:", "<script");
  }

  @Test
  void mistakesAreToldAtOnce() {
    Ran wrong =
        season(
            "wrong",
            "--repaired",
            "areas.geojson",
            "--wanted",
            "better",
            "--change",
            "-1",
            "--elevation-unit",
            "cubits");
    assertThat(wrong.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(wrong.err())
        .contains("--repaired, --before and --after go together")
        .contains("--wanted must be drier or wetter, was 'better'")
        .contains("--change must lie between 0 and 100, was -1.0")
        .contains("--elevation-unit must be m, ft or us-ft, was 'cubits'");
    assertThat(folder.resolve("wrong")).doesNotExist();
    Ran missing = season("missing", "--elevation", folder.resolve("none.tif").toString());
    assertThat(missing.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(missing.err()).contains("none.tif");
  }

  @Test
  void oneSurveyIsSaidToBeOne() {
    Ran one = season("one", "readings_S1.csv", List.of());
    assertThat(one.exitCode()).as(one.err()).isEqualTo(ExitCode.DONE);
    assertThat(one.out()).contains("no elevation was given (--elevation)");
    assertThat(page("one")).contains("One survey only: nothing to compare");
  }

  private static String page(String out) {
    try {
      return Files.readString(folder.resolve(out).resolve("season.html"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
