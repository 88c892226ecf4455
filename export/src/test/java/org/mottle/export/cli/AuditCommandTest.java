package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.export.record.Json;
import org.mottle.export.verify.Verification;

/** {@code audit} as typed, on the invented course. */
class AuditCommandTest {
  @TempDir Path folder;
  private Path course;

  @BeforeEach
  void unpack() throws IOException {
    course = folder.resolve("course");
    Course.copyTo(course);
  }

  private String of(String name) {
    return course.resolve(name).toString();
  }

  private Ran audit(String... more) {
    List<String> args = new ArrayList<>(List.of("audit"));
    args.addAll(List.of(more));
    return Ran.mottle(args);
  }

  private Ran everything(String out, String... more) {
    List<String> args =
        new ArrayList<>(
            List.of("audit", "--cans", of("cans.csv"), "--greens", of("greens.geojson")));
    args.addAll(List.of("--heads", of("heads.geojson"), "--crs", "EPSG:32628"));
    args.addAll(List.of("--out", folder.resolve(out).toString()));
    args.addAll(List.of(more));
    return Ran.mottle(args);
  }

  private String write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @SuppressWarnings("unchecked")
  private static List<Map<String, Object>> areas(Ran ran) throws IOException {
    Path json = Files.createTempFile("audit", ".json");
    try {
      Files.writeString(json, ran.out());
      return (List<Map<String, Object>>) ((Map<String, Object>) Json.read(json)).get("areas");
    } finally {
      Files.delete(json);
    }
  }

  private static double figure(Map<String, Object> area, String name) {
    return ((Number) area.get(name)).doubleValue();
  }

  /**
   * Merriam and Keller 1978, pp. 41-43, inches; published rounded: CU 75, DU 55, DU low half 76.
   */
  @Test
  void thePublishedSolidSetTest() throws IOException {
    double[] inches = {
      .57, .69, .83, .65, .61, .38, .27, .64, .51, .26, .36, .52, .79, .65, .61, .86
    };
    StringBuilder csv = new StringBuilder("can_id,ml,mouth_cm2,min_run\n");
    for (int i = 0; i < inches.length; i++) {
      // 1 ml on 0.39370 cm² is an inch
      csv.append("c%d,%s,%s,60%n".formatted(i, inches[i], 1 / 2.54));
    }
    Ran ran = audit("--cans", write("cans.csv", csv.toString()), "--json", "--quiet");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).isEmpty();
    Map<String, Object> area = areas(ran).get(0);
    assertThat(figure(area, "du_lq")).isCloseTo(0.5521739130434783, within(1e-12));
    assertThat(figure(area, "cu")).isCloseTo(74.89130434782608, within(1e-9));
    assertThat(figure(area, "du_lh")).isCloseTo(0.7565217391304348, within(1e-12));
    assertThat(figure(area, "rtm_alt")).isCloseTo(1.3674197384066586, within(1e-9));
    assertThat(figure(area, "mm")).isCloseTo(0.575 * 25.4, within(1e-9));
    assertThat(figure(area, "mm_h")).isCloseTo(0.575 * 25.4, within(1e-9));
    assertThat(area.get("sc1")).isNull();
    assertThat(area.get("missing").toString()).contains("sc1").contains("outline");
  }

  /** Invented catches: 0.5 to 0.6 where a head is dead, 0.75 to 0.8 elsewhere were aimed at. */
  @Test
  void theInventedCourse() throws IOException {
    Ran ran = everything("out", "--json", "--et0", "5", "--kc", "0.9", "--rain", "0.5");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    List<Map<String, Object>> areas = areas(ran);
    assertThat(areas).extracting(a -> a.get("green_id")).containsExactly("G1", "G5");
    Map<String, Object> sound = areas.get(0);
    Map<String, Object> dead = areas.get(1);
    assertThat(figure(sound, "du_lq")).isBetween(0.74, 0.84);
    assertThat(figure(dead, "du_lq")).isBetween(0.50, 0.62);
    assertThat(figure(dead, "du_hi")).isLessThan(figure(sound, "du_lo"));
    for (String sc : List.of("sc1", "sc2", "sc5")) {
      assertThat(figure(sound, sc)).isBetween(1.0, 1.5);
      assertThat(figure(dead, sc)).isGreaterThan(1.6);
    }
    assertThat(figure(dead, "run_min"))
        .isCloseTo(60 * 4 * figure(dead, "rtm") / figure(dead, "mm_h"), within(1e-9));
    assertThat(dead.get("cautions").toString()).contains("look at the heads").contains("pressure");
    assertThat(dead.get("missing")).asList().isEmpty();

    assertThat(Verification.contents(folder.resolve("out"), 1).faults()).isEmpty();
    String page = Files.readString(folder.resolve("out/audit.html"));
    assertThat(page)
        .contains("green G5, 2025-06-10", "agronomist", "H5-2", "<svg", "0.56 (0.")
        .doesNotContain("http", "NaN", "src=");
  }

  @Test
  @SuppressWarnings("unchecked")
  void theCoverTilesTheGreens() throws IOException {
    assertThat(everything("out", "--quiet").exitCode()).isEqualTo(ExitCode.DONE);
    Map<String, Object> summary =
        (Map<String, Object>) Json.read(folder.resolve("out/summary.json"));
    Map<String, Map<String, Object>> layers =
        (Map<String, Map<String, Object>>) summary.get("layers");
    assertThat(layers.keySet()).contains("green", "catch", "head", "cover", "irr", "prov");
    assertThat(figure(layers.get("catch"), "rows")).isEqualTo(48);
    assertThat(figure(layers.get("cover"), "area_m2"))
        .isCloseTo(figure(layers.get("green"), "area_m2"), within(0.001));
    for (Object one : (List<Object>) summary.get("cover")) {
      Map<String, Double> shares =
          (Map<String, Double>) ((Map<String, Object>) one).get("share_by_heads");
      assertThat(shares.values().stream().mapToDouble(s -> s).sum()).isCloseTo(1, within(1e-9));
    }
  }

  @Test
  void twoRunsAreTheSameBytes() throws IOException {
    assertThat(everything("a", "--quiet").exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(everything("b", "--quiet", "--threads", "1").exitCode()).isEqualTo(ExitCode.DONE);
    List<Path> files;
    try (Stream<Path> walk = Files.walk(folder.resolve("a"))) {
      files = walk.filter(Files::isRegularFile).toList();
    }
    assertThat(files).hasSizeGreaterThan(30);
    for (Path file : files) {
      Path other = folder.resolve("b").resolve(folder.resolve("a").relativize(file));
      assertThat(Files.mismatch(file, other)).as(file.toString()).isEqualTo(-1);
    }
  }

  @Test
  void withoutOutNothingIsWritten() throws IOException {
    List<String> before = names();
    Ran ran = audit("--cans", of("cans.csv"));
    assertThat(ran.exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(ran.out())
        .contains("green G1, 2025-06-10: 24 cans, DU of the low quarter (rounded up) 0.802")
        .contains("not given: sc1, sc2, sc5: no outline")
        .contains("run-time multiplier 1.14");
    assertThat(names()).isEqualTo(before);
  }

  private List<String> names() {
    return Stream.of(folder.toFile().list()).sorted().toList();
  }

  @Test
  void outputIsNotOverwrittenUnlessTold() {
    assertThat(everything("out", "--quiet").exitCode()).isEqualTo(ExitCode.DONE);
    Ran again = everything("out", "--quiet");
    assertThat(again.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(again.err()).contains("--overwrite");
    assertThat(everything("out", "--quiet", "--overwrite").exitCode()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void optionsThatDoNotFit() {
    Ran ran = audit("--cans", of("cans.csv"), "--et0", "5", "--low-quarter", "upp", "--out", "x");
    assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines())
        .containsExactly(
            "--low-quarter: unknown 'upp', did you mean 'up'?; known: up, down, fraction",
            "--et0, --kc and --rain go together, as --et0 5 --kc 0.9 --rain 0: run minutes are 60"
                + " (kc et0 - rain) multiplier / rate");
    Ran range = audit("--cans", of("cans.csv"), "--et0", "50", "--kc", "-1", "--rain", "0");
    assertThat(range.errLines()).hasSize(2);
  }

  @Test
  void layersNeedACrs() {
    Ran ran = audit("--cans", of("cans.csv"), "--out", folder.resolve("out").toString());
    assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines()).hasSize(1);
    assertThat(ran.err()).contains("--crs").contains("leave out --out");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  /**
   * Cans without a mouth, some without a place: what can be told still is; the exit code says so.
   */
  @Test
  void whatIsMissingIsNamedAndTheRestDelivered() throws IOException {
    String text = Files.readString(course.resolve("cans.csv"));
    List<String> lines = new ArrayList<>();
    for (String line : text.lines().toList()) {
      String[] cells = line.split(",");
      if (cells[1].equals("K5-7")) {
        cells[3] = "";
        cells[4] = "";
      }
      if (cells[0].equals("G5")) {
        cells[6] = "";
        cells[8] = "";
      }
      lines.add(String.join(",", cells));
    }
    Files.writeString(course.resolve("cans.csv"), String.join("\n", lines) + "\n");
    Ran ran = everything("out", "--json", "--quiet", "--et0", "5", "--kc", "0.9", "--rain", "0");
    assertThat(ran.exitCode()).isEqualTo(ExitCode.PARTLY);
    Map<String, Object> dead = areas(ran).get(1);
    assertThat(figure(dead, "du_lq")).isCloseTo(0.5646, within(1e-4));
    for (String gone : List.of("mm", "mm_h", "run_min", "sc1", "sc2", "sc5")) {
      assertThat(dead.get(gone)).as(gone).isNull();
      assertThat(dead.get("missing").toString()).contains("figure=" + gone);
    }
    assertThat(ran.errLines()).hasSize(4).allMatch(l -> l.startsWith("green G5, 2025-06-10: "));
    assertThat(ran.err()).contains("1 of 24 cans have no place");
    assertThat(Verification.contents(folder.resolve("out"), 1).faults()).isEmpty();
    // the can without a place is in the layer all the same
    String layer = Files.readString(folder.resolve("out/geojson/catch.geojson"));
    assertThat(layer).contains("K5-7");
  }

  @Test
  void theRuleAndTheSeedAreInTheRecord() throws IOException {
    String fifteen = "47 42 45 24 13 26 33 34 27 30 40 44 32 12 12";
    String file = write("f.csv", "ml\n" + fifteen.replace(' ', '\n') + "\n");
    Ran down = audit("--cans", file, "--json", "--quiet", "--low-quarter", "down");
    Map<String, Object> area = areas(down).get(0);
    // of three cans; published rounding up gives 0.4962
    assertThat(figure(area, "du_lq")).isCloseTo(0.4013015184381779, within(1e-12));
    assertThat(area.get("lq_rule")).isEqualTo("rounded down");
    Map<String, Object> up = areas(audit("--cans", file, "--json", "--quiet")).get(0);
    assertThat(figure(up, "du_lq")).isCloseTo(0.4962039, within(1e-7));
    Map<String, Object> seed =
        areas(audit("--cans", file, "--json", "--quiet", "--seed", "9")).get(0);
    assertThat(figure(seed, "du_lq")).isEqualTo(figure(up, "du_lq"));
    assertThat(figure(seed, "du_lo")).isNotEqualTo(figure(up, "du_lo"));
    assertThat(Arrays.asList("missing", "cautions")).allMatch(k -> up.get(k) != null);
  }
}
