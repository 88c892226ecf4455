package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.export.record.Json;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.verify.Verification;
import org.mottle.export.write.Format;

/** Three surveys of the invented course in one file: what is said of how sure the maps are. */
class SeasonLayersTest {
  @TempDir static Path folder;
  private static MapReport report;
  private static Map<?, ?> summary;

  @BeforeAll
  static void map() throws IOException {
    Path course = folder.resolve("course");
    Course.copyTo(course);
    List<String> rows = new ArrayList<>();
    for (String survey : List.of("S3", "S4", "S5")) {
      List<String> lines = Files.readAllLines(course.resolve("readings_" + survey + ".csv"));
      rows.addAll(rows.isEmpty() ? lines : lines.subList(1, lines.size()));
    }
    Path readings = Files.write(folder.resolve("season.csv"), rows);
    SiteSettings site = SettingsReader.read(course.resolve("course.yml")).withCrs("EPSG:32628");
    MapRequest request =
        MapRequest.of(course.resolve("greens.geojson"), readings, folder.resolve("out"))
            .withSite(site)
            .withCells(true)
            .withFormats(EnumSet.of(Format.GEOPACKAGE, Format.GEOJSON, Format.RASTER));
    report = new MapJob(request).run(Progress.NONE);
    summary = (Map<?, ?>) Json.read(folder.resolve("out/summary.json"));
  }

  private static List<Map<?, ?>> rows(String layer) {
    List<Map<?, ?>> rows = new ArrayList<>();
    ((List<?>) summary.get(layer)).forEach(row -> rows.add((Map<?, ?>) row));
    return rows;
  }

  private static Set<Object> values(String layer, String field) {
    Set<Object> values = new HashSet<>();
    rows(layer).forEach(row -> values.add(row.get(field)));
    return values;
  }

  private static double number(Map<?, ?> row, String field) {
    return ((Number) row.get(field)).doubleValue();
  }

  @Test
  void whatIsDeliveredReadsBack() throws IOException {
    assertThat(Verification.of(folder.resolve("out")).faults()).isEmpty();
  }

  /** A row a pool and survey: sand, soil and the third kind; what is common stands in each. */
  @Test
  void variogramsAreOnePoolAndSurveyEach() {
    assertThat(rows("vgm"))
        .hasSize(report.map().variograms().stream().mapToInt(v -> v.surveys().size()).sum());
    for (Map<?, ?> row : rows("vgm")) {
      assertThat(row.get("pooled_in")).isEqualTo("S3 S4 S5");
      assertThat(number(row, "prac_lo")).isLessThanOrEqualTo(number(row, "prac_m"));
      assertThat(number(row, "prac_m")).isLessThanOrEqualTo(number(row, "prac_hi"));
      assertThat(number(row, "sill"))
          .isCloseTo(number(row, "c0") + number(row, "psill"), within(1e-9));
      assertThat(number(row, "s2_err") + number(row, "c0_micro"))
          .isCloseTo(number(row, "c0"), within(1e-9));
      assertThat((String) row.get("weights")).contains("spherical", "exponential", "matern 1.5");
      assertThat(number(row, "deff")).isGreaterThanOrEqualTo(1);
    }
    assertThat(values("vgm", "borrowed")).contains(0L);
  }

  @Test
  void theExperimentalVariogramIsThereForAPicture() {
    for (Map<?, ?> pool : rows("variograms")) {
      List<?> lags = (List<?>) pool.get("lags");
      assertThat(lags).hasSizeGreaterThan(5);
      double before = 0;
      for (Object lag : lags) {
        assertThat(number((Map<?, ?>) lag, "distance")).isGreaterThan(before);
        before = number((Map<?, ?>) lag, "distance");
        assertThat(number((Map<?, ?>) lag, "pairs")).isPositive();
      }
    }
  }

  @Test
  void calibrationIsBySurveyAndPooled() {
    Map<?, ?> calibration = (Map<?, ?>) summary.get("calibration");
    List<?> surveys = (List<?>) calibration.get("surveys");
    assertThat(surveys).hasSize(3);
    double n = 0;
    for (Object survey : surveys) {
      Map<?, ?> one = (Map<?, ?>) survey;
      n += number(one, "n");
      assertThat(number(one, "coverage50")).isBetween(0.3, 0.7);
      assertThat(number(one, "coverage90")).isBetween(0.8, 1.0);
      for (String kind : List.of("dry", "wet")) {
        double predicted = 0;
        for (Object bin : (List<?>) one.get(kind)) {
          Map<?, ?> b = (Map<?, ?>) bin;
          predicted += number(b, "n");
          assertThat(number(b, "stated")).isBetween(number(b, "from"), number(b, "to"));
          assertThat(number(b, "found")).isBetween(0.0, 1.0);
        }
        assertThat(predicted).as(kind).isEqualTo(number(one, "n"));
      }
    }
    assertThat(number((Map<?, ?>) calibration.get("pooled"), "n")).isEqualTo(n);
    double byGreen =
        rows("survey").stream()
            .filter(r -> r.containsKey("cv_n"))
            .mapToDouble(r -> number(r, "cv_n"))
            .sum();
    assertThat(byGreen).isEqualTo(n);
  }

  @Test
  void surveysSayWhatTheyAreGoodForAndCouldSee() {
    for (Map<?, ?> row : rows("survey")) {
      assertThat(row.get("standing")).isIn("patches", "probabilities", "indicative", "none");
      if (!row.get("standing").equals("none")) {
        assertThat(number(row, "n_real")).isEqualTo(500);
        assertThat(number(row, "min_patch"))
            .isCloseTo(4 * Math.pow(number(row, "spacing_m"), 2), within(1e-6));
        for (String kind : List.of("dry", "wet")) {
          double expected = number(row, kind + "_exp");
          assertThat(number(row, kind + "_lo")).isLessThanOrEqualTo(number(row, kind + "_hi"));
          assertThat(number(row, kind + "_lo")).isLessThanOrEqualTo(expected + 1e-9);
          // the mean of a rare, large area may lie above the 95 %
          if (expected > 5) {
            assertThat(number(row, kind + "_hi")).isGreaterThanOrEqualTo(expected);
          }
        }
        assertThat(row.get("pop")).isIn("one", "one; test", "apart");
        assertThat(row.containsKey("pop_seen")).isTrue();
      }
    }
    assertThat(values("survey", "standing")).contains("patches");
  }

  /** The course's truth: water-repellent spots on G8. */
  @Test
  void repellentSpotsAreSymbolsWithTheTestTheyAskFor() {
    List<Map<?, ?>> apart =
        rows("survey").stream().filter(r -> "apart".equals(r.get("pop"))).toList();
    assertThat(apart)
        .isNotEmpty()
        .allMatch(r -> r.get("green_id").equals("G8"))
        .allMatch(r -> ((String) r.get("reason")).startsWith("two populations of readings"))
        .noneMatch(r -> ((String) r.get("reason")).contains((String) r.get("pop_next")));
    List<Map<?, ?>> repel =
        rows("spot").stream().filter(r -> r.get("kind").equals("repel")).toList();
    assertThat(repel).isNotEmpty().allMatch(r -> r.get("green_id").equals("G8"));
    assertThat(repel)
        .allSatisfy(
            r -> {
              assertThat((String) r.get("note"))
                  .startsWith("seen at station " + r.get("st_id") + ", size unknown")
                  .contains("water drop penetration test");
              assertThat(number(r, "p_exist")).isBetween(0.5, 1.0);
              assertThat(r.containsKey("area_exp")).isFalse();
            });
    assertThat(folder.resolve("out/raster/G8_S4_p_low.tif")).isNotEmptyFile();
    assertThat(folder.resolve("out/raster/G3_S4_p_low.tif")).doesNotExist();
  }

  @Test
  void symbolsAreNeverMappable() {
    assertThat(values("spot", "mapbl")).containsExactly(0L);
    for (Map<?, ?> patch : rows("patch")) {
      assertThat(number(patch, "mapbl")).isEqualTo(1);
      assertThat(number(patch, "n_st")).isPositive();
      assertThat(number(patch, "area_lo")).isLessThanOrEqualTo(number(patch, "area_hi"));
      assertThat(number(patch, "p_exist")).isGreaterThanOrEqualTo(0.5);
    }
    assertThat(rows("patch")).isNotEmpty();
  }

  @Test
  void stationsToReadNextAreOfTheLastSurveyOfEachGreen() {
    for (Map<?, ?> row : rows("nextst")) {
      String green = (String) row.get("green_id");
      String last =
          report.map().outcomes().stream()
              .filter(o -> o.subject().green().id().equals(green))
              .reduce((a, b) -> b)
              .orElseThrow()
              .subject()
              .surveyId();
      assertThat(row.get("surv_id")).isEqualTo(last);
      assertThat(number(row, "gain_m2")).isPositive();
      assertThat(row.get("why")).isIn("near a limit", "far from readings", "both");
    }
    assertThat(values("nextst", "rank")).contains(1L, 6L);
  }

  /** The raster of classes and the zones are of one rule; parts below a cell alone may differ. */
  @Test
  void cellsAreOfTheClassOfTheirZone() {
    for (Outcome.Mapped map : report.map().maps()) {
      Surface.Chances chances = map.surface().chances().orElseThrow();
      double cell = map.surface().cells().grid().cell();
      for (ZoneClass cls : ZoneClass.values()) {
        double cells = 0;
        for (double number : chances.classes().values()) {
          cells += number == cls.number() ? cell * cell : 0;
        }
        double green = map.subject().green().areaM2();
        assertThat(cells)
            .as("%s, %s", map.subject().label(), cls)
            .isCloseTo(map.areaM2(cls), within(0.02 * green));
      }
    }
  }
}
