package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.export.record.Json;

/** {@code review} as typed, on the invented course. */
class ReviewCommandTest {
  @TempDir Path folder;
  private Path course;

  @BeforeEach
  void unpack() throws IOException {
    course = folder.resolve("course");
    Course.copyTo(course);
  }

  private Ran review(List<Path> readings, String... more) {
    List<String> args = new ArrayList<>(List.of("review", "--crs", "EPSG:32628", "--overwrite"));
    args.addAll(List.of("--greens", course.resolve("greens.geojson").toString()));
    args.addAll(
        List.of("--readings", String.join(",", readings.stream().map(Path::toString).toList())));
    args.addAll(List.of("--out", folder.resolve("out").toString()));
    args.addAll(List.of(more));
    return Ran.mottle(args);
  }

  private static List<String> found(Ran ran, String code) {
    return ran.out().lines().filter(line -> line.contains(": " + code + " ")).toList();
  }

  /** The row of the file is that of an editor: the heading is row 1. */
  @Test
  void ofSeveralFilesAFindingNamesItsOwn() throws IOException {
    Path first = course.resolve("readings_S1.csv");
    Ran ran =
        review(
            List.of(
                first,
                course.resolve("readings_S1_G3_copy.csv"),
                course.resolve("readings_S3.csv")));
    assertThat(found(ran, "Q01"))
        .singleElement()
        .asString()
        .startsWith("S1, green G9, readings_S1.csv row 182: Q01 reject: station 1: 0.6 %");
    assertThat(Files.readAllLines(first).get(181)).startsWith("G9,").contains(",0.6");
    assertThat(ran.out()).contains("S1, green G3, readings_S1_G3_copy.csv rows 2, 3, 4, 5 and ");
    assertThat(Files.readString(folder.resolve("out/review.html")))
        .contains("(readings_S1.csv row 182)");
    Map<?, ?> summary = (Map<?, ?>) Json.read(folder.resolve("out/summary.json"));
    assertThat((List<?>) summary.get("findings"))
        .anyMatch(f -> ((Map<?, ?>) f).get("rows").equals(List.of("readings_S1.csv row 182")));
  }

  @Test
  void ofOneFileNoNameIsNeeded() {
    Ran ran = review(List.of(course.resolve("readings_S1.csv")));
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(found(ran, "Q01"))
        .singleElement()
        .asString()
        .startsWith("S1, green G9: Q01 reject: station 1");
  }

  @Test
  void filesOfOneNameAreToldApartByTheirPaths() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other")).resolve("readings_S1.csv");
    Files.copy(course.resolve("readings_S5.csv"), other);
    Ran ran = review(List.of(course.resolve("readings_S1.csv"), other));
    assertThat(found(ran, "Q01"))
        .anyMatch(line -> line.startsWith("S5, green G7, " + other + " row "));
  }

  @Test
  void theUnitThatWasSaidIsNotAskedFor() {
    List<Path> fifth = List.of(course.resolve("readings_S5.csv"));
    Ran asked = review(fifth);
    assertThat(asked.exitCode()).isEqualTo(ExitCode.PARTLY);
    assertThat(found(asked, "Q02")).hasSize(1);
    assertThat(found(review(fifth, "--unit", "percent"), "Q02")).isEmpty();
  }
}
