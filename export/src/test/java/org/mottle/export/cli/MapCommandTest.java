package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintStream;
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

/** {@code map}, {@code demo} and {@code verify} as typed, on the invented course. */
class MapCommandTest {
  @TempDir Path folder;
  private Path course;

  @BeforeEach
  void unpack() throws IOException {
    course = folder.resolve("course");
    Course.copyTo(course);
  }

  private Ran map(String readings, String... more) {
    List<String> args = new ArrayList<>(List.of("map", "--crs", "EPSG:32628"));
    args.addAll(List.of("--greens", course.resolve("greens.geojson").toString()));
    args.addAll(List.of("--readings", course.resolve(readings).toString()));
    args.addAll(List.of("--out", folder.resolve("out").toString()));
    if (!List.of(more).contains("--formats")) {
      args.addAll(List.of("--formats", "geojson"));
    }
    args.addAll(List.of(more));
    return Ran.mottle(args);
  }

  private void refused(Ran ran, String line) {
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines()).containsExactly(line);
    assertThat(ran.out()).isEmpty();
  }

  private String settings(String text) {
    return Models.text(folder, "site.yml", text).toString();
  }

  @Test
  void aSettingsFileThatIsNotThere() {
    String none = folder.resolve("none.yml").toString();
    refused(map("readings_S1.csv", "--settings", none), none + ": no such file");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aBandOfAnUnknownGreenNamesTheSettingsFile() {
    String site = settings("bands: {greens: {G99: {lo_pct: 1, hi_pct: 2}}}");
    refused(
        map("readings_S1.csv", "--settings", site, "--quiet"),
        "site.yml, bands.greens: there is no green 'G99'; there are G1, G2, G3, G4, G5, G6, G7, G8,"
            + " G9");
  }

  /** Rows of S2 in the same file have no positions. */
  @Test
  void oneSurveyIsReadWithoutExaminingTheOthers() {
    Ran all = map("readings.csv", "--quiet");
    assertThat(all.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(all.err()).contains("no position in rows");
    Ran one = map("readings.csv", "--survey", "S1", "--duplicates", "average", "--quiet");
    assertThat(one.exitCode()).as(one.err()).isEqualTo(ExitCode.DONE);
    assertThat(one.err()).isEmpty();
  }

  @Test
  void aSurveyTheFileDoesNotHave() {
    refused(
        map("readings.csv", "--survey", "S7", "--quiet"),
        "readings.csv has no survey 'S7'; it has S1, S2, S3, S4, S5, S6");
  }

  @Test
  void quietStillSaysWhichGreensHaveNoMap() {
    String site = settings("needed: {map: 500, full: 501}");
    Ran ran = map("readings_S1.csv", "--settings", site, "--quiet");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.PARTLY);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.errLines())
        .hasSize(9)
        .allMatch(line -> line.matches("green G\\d.*NO MAP: .*500.*"), "green and reason");
  }

  @Test
  void theOutFolderIsAFile() throws IOException {
    Path file = Models.text(folder, "out", "earlier");
    refused(map("readings_S1.csv", "--quiet"), file + " is a file; --out needs a folder");
    refused(
        map("readings_S1.csv", "--overwrite", "--quiet"),
        file + " is a file; --out needs a folder");
    assertThat(Files.readString(file)).isEqualTo("earlier");
  }

  private Ran demo(String survey) {
    return Ran.mottle(
        "demo",
        "--survey",
        survey,
        "--out",
        folder.resolve("demo").toString(),
        "--formats",
        "geojson",
        "--realisations",
        "20",
        "--next-stations",
        "0",
        "--quiet");
  }

  @Test
  void theDemoMapsEveryGreenAndLeavesTheProbeInAirOut() throws IOException {
    Ran ran = demo("S1");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).isEmpty();
    Map<?, ?> summary = (Map<?, ?>) Json.read(folder.resolve("demo/summary.json"));
    assertThat((List<?>) summary.get("survey")).hasSize(9);
    assertThat((List<?>) summary.get("told"))
        .anyMatch(t -> t.toString().startsWith("S1, green G9: Q01 reject: station 1: 0.6 %"));
  }

  /** Its positions are withheld: what the file has is an order and times. */
  @Test
  void theDemoPlacesTheSurveyWithoutPositions() throws IOException {
    Ran ran = demo("S2");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    String readings = Files.readString(folder.resolve("demo/geojson/reading.geojson"));
    assertThat(readings).contains("\"pos_src\":\"order\"", "\"pos_src\":\"track\"");
    assertThat(readings).doesNotContain("\"pos_src\":\"gnss\"");
  }

  /** Water 42 minutes before, other rods, five readings: planted in the course (about.txt). */
  @Test
  void theDemoSaysWhyAGreenHasNoMap() {
    Ran third = demo("S3");
    assertThat(third.exitCode()).isEqualTo(ExitCode.PARTLY);
    assertThat(third.errLines())
        .singleElement()
        .asString()
        .contains("green G9, S3", "NO MAP: irrigation of 5 mm ended 42 minutes before");
    folder = folder.resolve("fourth");
    Ran fourth = demo("S4");
    assertThat(fourth.exitCode()).isEqualTo(ExitCode.PARTLY);
    assertThat(fourth.errLines())
        .hasSize(2)
        .anyMatch(line -> line.contains("green G7, S4: 5 places read"))
        .anyMatch(
            line -> line.contains("green G9, S4") && line.contains("NO MAP: read with rods of 38"));
  }

  @Test
  void aSurveyTheDemoDoesNotHave() {
    String out = folder.resolve("out").toString();
    refused(
        Ran.mottle("demo", "--survey", "S7", "--out", out),
        "--survey: the course has no survey 'S7'; it has S1, S2, S3, S4, S5, S6");
  }

  @Test
  void inputsOfTheDemoNeedAFolder() {
    Path file = Models.text(folder, "inputs", "");
    refused(
        Ran.mottle("demo", "--overwrite", "--inputs", file.toString()),
        file + " is a file; --inputs needs a folder");
  }

  @Test
  void helpIsPrintedWithoutComplaint() {
    for (String command :
        List.of("plan", "review", "map", "demo", "variogram", "estimate", "verify")) {
      Ran ran = Ran.mottle(command, "--help");
      assertThat(ran.exitCode()).as(command).isEqualTo(ExitCode.DONE);
      assertThat(ran.err()).as(command).isEmpty();
      assertThat(ran.out()).as(command).startsWith("Usage: mottle " + command);
      assertThat(ran.out()).as(command).doesNotContain("%%");
    }
  }

  @Test
  void helpShowsListsAsTheyAreTyped() {
    String help = Ran.mottle("map", "--help").out();
    assertThat(help).containsPattern("--band=LOW,HIGH\\s").doesNotContain("LOW,HIGH[");
    assertThat(help).containsPattern("--formats=NAME,\\.\\.\\.\\s").doesNotContain("...[");
  }

  @Test
  void aBandThatIsNone() {
    for (String band : List.of("22,16", "16", "NaN,20", "16,Infinity", "1,2,3")) {
      Ran ran = map("readings_S1.csv", "--band", band, "--quiet");
      assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
      assertThat(ran.errLines()).singleElement().asString().startsWith("--band needs two numbers");
    }
  }

  @Test
  void onlyTheFormatAskedForAndThePagesAreDelivered() {
    Ran ran = map("readings_S1.csv", "--formats", "geopackage", "--quiet");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    Ran verified = Ran.mottle("verify", folder.resolve("out").toString());
    assertThat(verified.out().lines()).containsExactly("4 files as delivered");
  }

  @Test
  void aRecordThatCannotBeReadIsRefused() throws IOException {
    Path out = Files.createDirectory(folder.resolve("out"));
    for (String text : List.of("", "{\"files\"", "[]", "{\"prov\": {}}")) {
      Files.writeString(out.resolve("summary.json"), text);
      Ran ran = Ran.mottle("verify", out.toString());
      assertThat(ran.exitCode()).as(text).isEqualTo(ExitCode.REFUSED);
      assertThat(ran.errLines())
          .singleElement()
          .asString()
          .contains("summary.json", "deliver again into another folder");
    }
  }

  @Test
  void everyOptionThatIsNoneAtOnce() {
    List<String> wrong =
        List.of(
            "--cell 0",
            "--realisations 0",
            "--next-stations -1",
            "--position-sd -0.5",
            "--shift-sd NaN",
            "--method magic");
    List<String> typed = wrong.stream().flatMap(w -> Arrays.stream(w.split(" "))).toList();
    for (Ran ran :
        List.of(
            map("readings_S1.csv", typed.toArray(String[]::new)),
            Ran.mottle(
                Stream.concat(
                        Stream.of("demo", "--out", folder.resolve("d").toString()), typed.stream())
                    .toArray(String[]::new)))) {
      assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
      assertThat(ran.errLines())
          .hasSize(wrong.size())
          .contains(
              "--realisations must be 1 to 100000, was 0",
              "--next-stations must be 0 to 100000, was -1",
              "--position-sd must lie between 0 and 100 m, was -0.5",
              "--shift-sd must lie between 0 and 100 m, was NaN");
    }
  }

  @Test
  void seedAndErrorsOfPositionAreInTheRecord() throws IOException {
    Ran ran =
        map(
            "readings_S1.csv",
            "--seed",
            "-42",
            "--realisations",
            "20",
            "--next-stations",
            "0",
            "--position-sd",
            "0.3",
            "--shift-sd",
            "0.7",
            "--band",
            "18,27",
            "--quiet");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    Map<?, ?> summary = (Map<?, ?>) Json.read(folder.resolve("out/summary.json"));
    Map<?, ?> prov = (Map<?, ?>) summary.get("prov");
    assertThat(prov.get("seed")).isEqualTo("-42");
    Map<?, ?> params = (Map<?, ?>) prov.get("params");
    assertThat(params.get("seed")).isEqualTo("-42");
    assertThat(params.get("realisations")).isEqualTo(20L);
    assertThat(params.get("draws")).isEqualTo(20L);
    assertThat(params.get("next_stations")).isEqualTo(0L);
    assertThat(params.get("jitter_m")).isEqualTo(0.3);
    assertThat(params.get("shift_m")).isEqualTo(0.7);
    Map<?, ?> green = (Map<?, ?>) ((List<?>) summary.get("survey")).get(0);
    assertThat((double) green.get("pos_sd_m")).isCloseTo(0.3, within(1e-12));
    assertThat((double) green.get("shift_sd")).isCloseTo(0.7, within(1e-12));
    assertThat((List<?>) summary.get("nextst")).isEmpty();
  }

  @Test
  void overwritingWithFewerFormatsSaysWhatIsGone() {
    String[] quick = {"--realisations", "20", "--next-stations", "0"};
    Ran all =
        map(
            "readings_S1.csv",
            Stream.concat(Stream.of(quick), Stream.of("--formats", "geopackage,shapefile"))
                .toArray(String[]::new));
    assertThat(all.exitCode()).as(all.err()).isEqualTo(ExitCode.DONE);
    Ran fewer =
        map(
            "readings_S1.csv",
            Stream.concat(Stream.of(quick), Stream.of("--overwrite")).toArray(String[]::new));
    assertThat(fewer.out())
        .containsPattern(
            "removed what an earlier delivery had and this one has not: mottle.gpkg, shapefile/"
                + " \\(\\d+ files\\)");
  }

  @Test
  void theStreamsOfTheProcessAreAsBefore() {
    PrintStream out = System.out;
    PrintStream err = System.err;
    try {
      PrintStream none = new PrintStream(PrintStream.nullOutputStream());
      System.setOut(none);
      System.setErr(none);
      Mottle.run("--version");
      Mottle.run("map", "--no-such-option");
      assertThat(System.out).isSameAs(none);
      assertThat(System.err).isSameAs(none);
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }
}
