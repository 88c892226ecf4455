package org.mottle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CourseTest {

  private static final GeneratedCourse DEFAULT =
      CourseGenerator.generate(CourseGenerator.DEFAULT_SEED);

  @Test
  void thePackedFilesAreThoseOfTheGeneratorByteForByte() throws IOException {
    SortedMap<String, byte[]> generated = DEFAULT.smallFiles();
    List<String> expected =
        generated.keySet().stream().filter(name -> !name.equals("index.txt")).toList();
    assertThat(Course.names()).isEqualTo(expected);
    for (String name : generated.keySet()) {
      try (InputStream in = Course.open(name)) {
        assertThat(in.readAllBytes()).as(name).isEqualTo(generated.get(name));
      }
    }
  }

  @Test
  void theSameSeedGivesTheSameBytesAndAnotherSeedOtherReadings() {
    SortedMap<String, byte[]> once = CourseGenerator.generate(3).smallFiles();
    SortedMap<String, byte[]> again = CourseGenerator.generate(3).smallFiles();
    SortedMap<String, byte[]> other = CourseGenerator.generate(4).smallFiles();
    assertThat(again.keySet()).isEqualTo(once.keySet());
    for (String name : once.keySet()) {
      assertThat(again.get(name)).as(name).isEqualTo(once.get(name));
    }
    for (String name : List.of("readings_S1.csv", "plan.csv", "track_S2.gpx", "cans.csv")) {
      assertThat(other.get(name)).as(name).isNotEqualTo(once.get(name));
    }
    assertThat(other.get("greens.geojson")).isEqualTo(once.get("greens.geojson"));
  }

  @Test
  void everySeedMakesACourse() {
    for (long seed : new long[] {0, -1, 1, 99, Long.MAX_VALUE, Long.MIN_VALUE}) {
      assertThat(CourseGenerator.generate(seed).smallFiles())
          .as("seed " + seed)
          .hasSameSizeAs(DEFAULT.smallFiles());
    }
  }

  @Test
  void thePackedFilesAreSmallAndHoldNoTruth() throws IOException {
    int bytes = 0;
    for (String name : Course.names()) {
      try (InputStream in = Course.open(name)) {
        byte[] content = in.readAllBytes();
        bytes += content.length;
        String text = new String(content, StandardCharsets.ISO_8859_1);
        assertThat(text).as(name).doesNotContain("soil_pct", "micro_pct", "fault_pct", "shift_x");
        assertThat(name).doesNotContain("truth");
      }
    }
    assertThat(bytes).isLessThan(700_000);
    assertThat(Course.class.getResource("course/truth")).isNull();
  }

  @Test
  void copiesAllFiles(@TempDir Path folder) throws IOException {
    Course.copyTo(folder.resolve("new"));
    try (var walk = Files.walk(folder)) {
      assertThat(walk.filter(Files::isRegularFile)).hasSize(Course.names().size());
    }
    assertThat(folder.resolve("new/imported/greens_import.shp")).exists();
  }

  @Test
  void anUnknownNameIsToldByName() {
    assertThatThrownBy(() -> Course.open("grens.geojson"))
        .isInstanceOf(FileNotFoundException.class)
        .hasMessageContaining("grens.geojson");
  }

  @Test
  void theCommandTakesSeedFolderAndSize() {
    GenerateCourse.Options options =
        GenerateCourse.parse(List.of("--seed", "12", "--small", "--out", "here"));
    assertThat(options).isEqualTo(new GenerateCourse.Options(Path.of("here"), 12, true));
    assertThat(GenerateCourse.parse(List.of("--out", "x")).seed()).isEqualTo(20250514);
  }

  @Test
  void wrongArgumentsAreNamed() {
    for (String[] wrong :
        new String[][] {{"--out"}, {"--seed", "x1", "--out", "o"}, {"--sead", "1"}, {}}) {
      List<String> arguments = Arrays.asList(wrong);
      assertThatThrownBy(() -> GenerateCourse.parse(arguments))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageMatching(".*(needs a value|'x1'|'--sead'|--out is missing).*");
    }
  }
}
