package org.mottle.export.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.export.job.MapJob;
import org.mottle.export.job.MapReport;
import org.mottle.export.job.MapRequest;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/** The report of the invented course, a green of which has a name that means mischief. */
class ReportPageTest {
  private static final String NAME = "</script><script>alert(1)</script> & \u202eAlder\u2028";

  @TempDir static Path folder;
  private static MapRequest request;
  private static MapReport report;
  private static String page;

  @BeforeAll
  static void map() throws IOException {
    Path course = folder.resolve("course");
    Course.copyTo(course);
    Path greens = course.resolve("greens.geojson");
    Files.writeString(greens, Files.readString(greens).replace("\"Alder\"", "\"" + NAME + "\""));
    SiteSettings site = SettingsReader.read(course.resolve("course.yml")).withCrs("EPSG:32628");
    site =
        site.withMapping(
            site.mapping()
                .withUncertainty(
                    UncertaintySettings.defaults().withRealisations(100).withNextStations(2)));
    request =
        MapRequest.of(greens, course.resolve("readings_S1.csv"), folder.resolve("out"))
            .withSite(site)
            .withFormats(EnumSet.of(Format.GEOJSON));
    report = new MapJob(request).run(Progress.NONE);
    page = Files.readString(folder.resolve("out/report.html"));
  }

  @Test
  void every_green_has_its_sheet_with_the_eight_sections_in_order() {
    String[] sheets = page.split("<article class=\"sheet\"");
    assertThat(sheets).hasSize(1 + report.map().outcomes().size());
    for (int i = 1; i < sheets.length; i++) {
      assertThat(sheets[i])
          .containsSubsequence(GreenSheet.SECTIONS.stream().map(s -> "</span> " + s).toList());
    }
    assertThat(page.indexOf("id=\"appendix\"")).isGreaterThan(page.lastIndexOf("<article"));
  }

  @Test
  void the_appendix_holds_variograms_cross_validation_findings_settings_and_hashes() {
    assertThat(page.substring(page.indexOf("id=\"appendix\"")))
        .containsSubsequence(
            "Variograms", "predicted from the others", "Findings", "Settings", "SHA-256")
        .containsPattern("<code>[0-9a-f]{64}</code>");
  }

  @Test
  void a_name_is_text_and_nothing_else() {
    assertThat(page).doesNotContain("<script>alert").doesNotContain("</script><script>alert");
    assertThat(page).contains("<bdi>&lt;/script&gt;&lt;script&gt;alert(1)");
    assertThat(page).contains("\\u003c/script\\u003e\\u003cscript\\u003ealert(1)");
    // JSON, the library, our own script
    assertThat(page.split("</script>", -1)).hasSize(4);
    String data = page.substring(page.indexOf("id=\"map-data\""));
    assertThat(data.substring(0, data.indexOf("</script>"))).doesNotContain("\u2028");
  }

  @Test
  void nothing_is_fetched() {
    String library = Leaflet.script();
    assertThat(page).contains(library).doesNotContain("sourceMappingURL");
    // the library names its home in a comment and in a line of credit that is not shown
    String rest = page.replace(library, "");
    assertThat(rest).doesNotContainPattern("https?://");
    assertThat(rest).doesNotContainPattern("(src|href)=\"(?!#|data:)[^\"]");
    assertThat(rest).doesNotContainPattern("url\\((?!#|data:)[^)]*\\.(png|gif|css)");
    assertThat(page).contains("default-src 'none'").contains(ReportPage.hash(library));
  }

  @Test
  void it_is_small() {
    // half of 18 greens
    assertThat(page.length()).isBetween(200_000, 7_500_000);
  }

  @Test
  void an_image_without_its_place_or_elsewhere_is_refused() throws IOException {
    Path image = folder.resolve("air.png");
    ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "png", image.toFile());
    MapRequest with =
        request.withImagery(List.of(image.toString())).withOverwrite(true).withThreads(1);
    assertThatThrownBy(() -> new MapJob(with).run(Progress.NONE))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("does not say where it lies");
    Files.writeString(folder.resolve("air.pgw"), "1\n0\n0\n-1\n100\n200\n");
    assertThatThrownBy(() -> new MapJob(with).run(Progress.NONE))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("shows none of the greens");
  }
}
