package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.verify.Verification;
import org.mottle.export.write.Format;

/** What a map in heat offers for the decision, from the invented course's own files. */
class DecisionTest {
  @TempDir static Path folder;
  private static Map<String, ?> figures;

  @BeforeAll
  static void map() throws IOException {
    Path course = folder.resolve("course");
    Course.copyTo(course);
    // a name may hold anything; G1 is not known by its root depth
    Path greens = course.resolve("greens.geojson");
    Files.writeString(
        greens,
        Files.readString(greens)
            .replace("\"Alder\"", "\"<script>alert(1)</script> & Alder\"")
            .replaceFirst("\"root_mm\":120", "\"root_mm\":null"));
    SiteSettings site =
        SettingsReader.read(course.resolve("course.yml"))
            .withCrs("EPSG:32628")
            .withWateringAt(OffsetDateTime.parse("2025-07-11T05:00+01:00"));
    site =
        site.withMapping(
            site.mapping()
                .withUncertainty(
                    UncertaintySettings.defaults().withRealisations(100).withNextStations(0))
                .withWatering(site.mapping().watering().withFlow(25)));
    MapReport report =
        new MapJob(
                MapRequest.of(greens, course.resolve("readings_S4.csv"), folder.resolve("out"))
                    .withSite(site)
                    .withFormats(EnumSet.of(Format.GEOPACKAGE))
                    .withHeads(course.resolve("heads.geojson").toString())
                    .withField(
                        new FieldFiles(
                            Optional.of(course.resolve("surveys.csv").toString()),
                            Optional.of(course.resolve("plan.csv").toString()),
                            Optional.of(course.resolve("controls.csv").toString()),
                            Optional.empty(),
                            Optional.empty(),
                            List.of(),
                            Optional.empty())))
            .run(Progress.NONE);
    figures = report.figures();
  }

  @SuppressWarnings("unchecked") // rows of a layer are maps
  private static List<Map<String, Object>> rows(String layer) {
    return (List<Map<String, Object>>) figures.get(layer);
  }

  private static double number(Map<String, Object> row, String field) {
    return ((Number) row.get(field)).doubleValue();
  }

  private static Map<String, Object> of(String layer, String green) {
    return rows(layer).stream()
        .filter(r -> r.get("green_id").equals(green))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whatWasDeliveredReadsBack() throws IOException {
    assertThat(Verification.of(folder.resolve("out")).faults()).isEmpty();
  }

  @Test
  void theWalkHasEveryDryPatchWithItsLitres() {
    List<Map<String, Object>> stops = rows("water");
    for (int i = 0; i < stops.size(); i++) {
      assertThat(stops.get(i).get("stop")).isEqualTo(i + 1L);
    }
    List<Map<String, Object>> dry =
        rows("patch").stream().filter(p -> p.get("kind").equals("dry")).toList();
    assertThat(dry).isNotEmpty();
    for (Map<String, Object> patch : dry) {
      Map<String, Object> stop =
          stops.stream()
              .filter(s -> patch.get("patch_id").equals(s.get("patch_id")))
              .findFirst()
              .orElseThrow();
      assertThat(stop.get("water_l")).isEqualTo(patch.get("water_l"));
      assertThat(number(patch, "wat_lo")).isLessThan(number(patch, "water_l"));
      assertThat(number(patch, "wat_hi")).isGreaterThan(number(patch, "water_l"));
      // one pass is no more than 6 mm, a tenth lost
      assertThat(number(patch, "water_l")).isLessThanOrEqualTo(6 * number(patch, "area_m2") / 0.9);
      assertThat(number(stop, "hose_min")).isCloseTo(number(stop, "water_l") / 25, within(1e-9));
      assertThat(stop.get("caution").toString()).contains("old", "heat", "below the rods");
    }
  }

  @Test
  void greensAreComparedWithTheirLikeAndTheRestSaysWhyNot() {
    Map<String, Object> g2 = of("course", "G2");
    assertThat(g2.get("like_of"))
        .isEqualTo("S4, after irrigation, rods 60 mm, grade A or B, for ball roll");
    assertThat(of("even", "G2").get("rank")).isNotNull();
    Map<String, Object> g9 = of("course", "G9");
    assertThat(g9.get("note").toString()).contains("38 mm");
    assertThat(g9).doesNotContainKeys("rank_dry", "dry_pct");
    assertThat(rows("course").get(0).get("grade")).isEqualTo("D");
    assertThat(number(g2, "taw_mm")).isCloseTo(0.16 * 120, within(1e-9));
  }

  @Test
  void sharesOfEveryGreenSumToTheWhole() {
    for (Map<String, Object> even : rows("even")) {
      if (even.containsKey("dry_pct")) {
        assertThat(number(even, "dry_pct") + number(even, "band_pct") + number(even, "wet_pct"))
            .isCloseTo(100, within(1e-9));
        assertThat(number(even, "sdc_lo")).isLessThan(number(even, "sd_corr"));
        assertThat(number(even, "lq_moist")).isBetween(0.3, 1.0);
      }
    }
  }

  @Test
  void withoutARootDepthItIsSaidWhyThereAreNoLitres() throws IOException {
    assertThat(of("course", "G1").get("note").toString()).contains("no litres", "root_mm");
    assertThat(of("course", "G1")).doesNotContainKey("water_l");
    assertThat(of("even", "G1")).containsKey("sd_corr");
    assertThat(Files.readString(folder.resolve("out/watering.html"))).contains("no litres");
  }

  @Test
  void theHeadThatIsDeadIsTheFirstOfItsGreen() {
    Map<String, Object> first =
        rows("sector").stream()
            .filter(r -> r.get("green_id").equals("G5") && Long.valueOf(1).equals(r.get("rank")))
            .findFirst()
            .orElseThrow();
    assertThat(first.get("head_id")).isEqualTo("H5-2");
  }

  @Test
  void namesAreTextAndNothingElse() throws IOException {
    for (String page : List.of("course.html", "watering.html")) {
      String html = Files.readString(folder.resolve("out").resolve(page));
      assertThat(html).doesNotContain("<script").contains("</html>");
      assertThat(html).doesNotContain("http:", "https:", "src=");
    }
    assertThat(Files.readString(folder.resolve("out/course.html"))).contains("&lt;script&gt;");
  }
}
