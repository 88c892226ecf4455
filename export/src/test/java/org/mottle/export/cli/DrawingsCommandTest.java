package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.export.record.Fingerprint;

/** {@code mottle drawings} from a delivered map. GDAL reads the same files in the whole check. */
class DrawingsCommandTest {
  private static final String CONTROLS =
      """
      name,e,n,local_e,local_n
      A,500100,5316300,1000,2000
      B,500700,5316300,1600,2000
      C,500400,5316800,1300,2500
      """;

  @TempDir static Path folder;

  @BeforeAll
  static void deliver() throws IOException {
    Path course = folder.resolve("course");
    Course.copyTo(course);
    Path greens = course.resolve("greens.geojson");
    Files.writeString(greens, Files.readString(greens).replace("\"Alder\"", "\"=cmd()\""));
    Ran ran =
        Ran.mottle(
            "map",
            "--greens",
            greens.toString(),
            "--readings",
            course.resolve("readings_S4.csv").toString(),
            "--settings",
            course.resolve("course.yml").toString(),
            "--crs",
            "EPSG:32628",
            "--realisations",
            "50",
            "--next-stations",
            "0",
            "--formats",
            "geopackage,raster",
            "--out",
            folder.resolve("map").toString());
    assertThat(ran.exitCode()).as(ran.err()).isIn(ExitCode.DONE, ExitCode.PARTLY);
    Files.writeString(folder.resolve("controls.csv"), CONTROLS);
  }

  private static Ran drawings(String from, String out, String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "drawings",
                "--from",
                folder.resolve(from).toString(),
                "--out",
                folder.resolve(out).toString()));
    words.addAll(List.of(more));
    return Ran.mottle(words.toArray(String[]::new));
  }

  private static Map<String, String> hashes(String out) throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    Path root = folder.resolve(out);
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        hashes.put(root.relativize(file).toString(), Fingerprint.of(file).toString());
      }
    }
    return hashes;
  }

  @Test
  void theSameDeliveryGivesTheSameBytes() throws IOException {
    assertThat(drawings("map", "one").exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(drawings("map", "two", "--threads", "1").exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(hashes("one"))
        .isEqualTo(hashes("two"))
        .containsKeys("dxf/site.dxf", "points.csv", "kmz/survey_S4.kmz", "overlay/G2_S4_vwc.tif");
  }

  @Test
  void aLocalGridMovesPointsBySimilarity() throws IOException {
    Ran ran = drawings("map", "grid", "--local-grid", folder.resolve("controls.csv").toString());
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.out()).contains("scale 1.00000000, rotation 0.000000", "RMSE 0.000 m");
    List<String> world = Files.readAllLines(folder.resolve("grid/points.csv"));
    List<String> local = Files.readAllLines(folder.resolve("grid/points_local.csv"));
    assertThat(world.get(0)).isEqualTo("P,N,E,Z,D");
    assertThat(local).hasSameSizeAs(world);
    for (int i = 1; i < world.size(); i++) {
      String[] a = world.get(i).split(",", 5);
      String[] b = local.get(i).split(",", 5);
      assertThat(Double.parseDouble(b[2]))
          .isCloseTo(Double.parseDouble(a[2]) - 499100, within(2e-3));
      assertThat(Double.parseDouble(b[1]))
          .isCloseTo(Double.parseDouble(a[1]) - 5314300, within(2e-3));
    }
  }

  @Test
  void whatASpreadsheetWouldRunIsText() throws IOException {
    assertThat(drawings("map", "names").exitCode()).isEqualTo(ExitCode.DONE);
    String points = Files.readString(folder.resolve("names/points.csv"));
    assertThat(points).contains("\"GREEN G1 G1 '=cmd()\"");
    // no word of a cell begins a formula, whatever a spreadsheet splits at
    for (String word :
        points.lines().skip(1).flatMap(l -> Stream.of(l.split("[\",; ]"))).toList()) {
      assertThat(word).doesNotMatch("[=+@].*");
    }
  }

  @Test
  void whatCannotBeUsedIsRefusedAndNothingWritten() throws IOException {
    Path two = folder.resolve("two.csv");
    Files.writeString(two, String.join("\n", CONTROLS.lines().limit(3).toList()));
    Path off = folder.resolve("off.csv");
    Files.writeString(off, CONTROLS.replace("1300,2500", "1300,2510"));
    refused(drawings("map", "x", "--local-grid", two.toString()), "at least 3 controls, found 2");
    refused(drawings("map", "x", "--local-grid", off.toString()), "RMSE of 3.397 m");
    refused(drawings("map", "x", "--layers", "patches"), "did you mean 'patch'?");
    refused(drawings("nowhere", "x"), "holds no summary.json");
    refused(drawings("map", "map"), "--out is the delivered folder itself");
    assertThat(folder.resolve("x")).doesNotExist();
    assertThat(
            drawings("map", "accepted", "--local-grid", off.toString(), "--accept-residuals")
                .exitCode())
        .isEqualTo(ExitCode.DONE);
  }

  /** An overlay is an image that knows where it lies: it can lie beneath the report's map again. */
  @Test
  void anImageThatKnowsItsPlaceLiesBeneathTheReport() throws IOException {
    assertThat(drawings("map", "images").exitCode()).isEqualTo(ExitCode.DONE);
    Path overlay = folder.resolve("images/overlay");
    for (String image : List.of("G2_S4_vwc.tif", "G2_S4_vwc.png")) {
      Ran ran = mapOver("over-" + image, overlay.resolve(image));
      assertThat(ran.exitCode()).as(ran.err()).isIn(ExitCode.DONE, ExitCode.PARTLY);
      assertThat(ran.out()).contains(image + " lies beneath the map of the report");
    }
    Files.writeString(
        overlay.resolve("G2_S4_vwc.prj"),
        Files.readString(overlay.resolve("G2_S4_vwc.prj"))
            .replace("28N", "29N")
            .replace("-15", "-9")
            .replace("32628", "32629"));
    refused(mapOver("other", overlay.resolve("G2_S4_vwc.png")), "G2_S4_vwc.png");
    Files.delete(overlay.resolve("G2_S4_vwc.pgw"));
    refused(mapOver("placeless", overlay.resolve("G2_S4_vwc.png")), "G2_S4_vwc.png");
    assertThat(folder.resolve("other")).doesNotExist();
    assertThat(folder.resolve("placeless")).doesNotExist();
  }

  private static Ran mapOver(String out, Path image) {
    return Ran.mottle(
        "map",
        "--greens",
        folder.resolve("course/greens.geojson").toString(),
        "--readings",
        folder.resolve("course/readings_S4.csv").toString(),
        "--crs",
        "EPSG:32628",
        "--realisations",
        "25",
        "--next-stations",
        "0",
        "--formats",
        "geopackage",
        "--imagery",
        image.toString(),
        "--out",
        folder.resolve(out).toString());
  }

  private static void refused(Ran ran, String words) {
    assertThat(ran.exitCode()).as(ran.out()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.err()).contains(words);
  }
}
