package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.verify.Verification;
import org.mottle.export.write.OutputRefused;

/** The main job on the invented course. */
class MapJobTest {
  @TempDir Path folder;
  private Path course;

  @BeforeEach
  void unpack() throws IOException {
    course = folder.resolve("course");
    Course.copyTo(course);
  }

  private SiteSettings site(String settings) throws IOException {
    return SettingsReader.read(course.resolve(settings)).withCrs("EPSG:32628");
  }

  /** As much as is needed where nothing is said of what is drawn. */
  private static SiteSettings quick(SiteSettings site) {
    return site.withMapping(
        site.mapping()
            .withUncertainty(
                UncertaintySettings.defaults().withRealisations(20).withNextStations(0)));
  }

  private MapReport map(String readings, SiteSettings site, String out, int threads)
      throws IOException {
    return job(readings, site, out, threads, false).run(Progress.NONE);
  }

  private MapJob job(
      String readings, SiteSettings site, String out, int threads, boolean overwrite) {
    return new MapJob(
        MapRequest.of(
                course.resolve("greens.geojson"), course.resolve(readings), folder.resolve(out))
            .withSite(site)
            .withOverwrite(overwrite)
            .withThreads(threads));
  }

  @Test
  void mapsTheCourseAndReadsItBack() throws IOException {
    MapReport report = map("readings_S1.csv", site("course_after_rain.yml"), "out", 2);
    assertThat(report.allMapped()).isTrue();
    assertThat(report.map().outcomes()).hasSize(9);
    assertThat(Verification.of(folder.resolve("out")).faults()).isEmpty();
    // the course's truth: a wet fault on G3 and a wet hollow on G6, sound ground on G1
    assertThat(wet(report, "G3").areaM2()).isBetween(60.0, 300.0);
    assertThat(wet(report, "G6").areaM2()).isBetween(40.0, 250.0);
    for (String green : List.of("G3", "G6")) {
      assertThat(mapped(report, green).areaM2(ZoneClass.WET)).as(green).isGreaterThan(20);
      assertThat(wet(report, green).areaLow()).isLessThan(wet(report, green).areaM2());
      assertThat(wet(report, green).areaHigh()).isGreaterThan(wet(report, green).areaM2());
    }
    assertThat(mapped(report, "G1").areaM2(ZoneClass.WET)).isLessThan(45);
    assertThat(report.text())
        .containsPattern("(?m)^green G1, S1: .*; SD about \\d\\.\\d %")
        .containsPattern(
            "(?m)^variogram of S1 \\(7 greens, \\d+ stations\\): [a-z]+.*, range .* nugget .*"
                + "cross-validation of \\d+: \\d+ % inside their 90 % interval, MSDR \\d\\.\\d\\d")
        .containsPattern(
            "green G3, S1: .* expected dry .* m² \\(.*\\), wet \\d+ m² \\(.* to .*\\)");
    assertThat(evenness(report, "G1")).containsKey("sd_med").containsKey("cu_moist");
    assertThat((double) evenness(report, "G1").get("lq_moist")).isBetween(0.5, 1.0);
    // a probe read in air is told, not dropped
    assertThat(report.told()).anyMatch(t -> t.contains("0.6 % is what a probe reads in air"));
    assertThat(mapped(report, "G9").readingsUsed())
        .isEqualTo(mapped(report, "G9").subject().readings().size());
  }

  @Test
  void twoRunsGiveTheSameBytesOnAnyNumberOfThreads() throws IOException {
    SiteSettings site = site("course_after_rain.yml");
    map("readings_S1.csv", site, "one", 1);
    map("readings_S1.csv", site, "four", 4);
    assertThat(fingerprints("four")).isEqualTo(fingerprints("one"));
  }

  @Test
  void areasOfZonesSumToTheGreens() throws IOException {
    MapReport report = map("readings_S3.csv", quick(site("course.yml")), "out", 2);
    for (Outcome outcome : report.map().outcomes()) {
      if (outcome instanceof Outcome.Mapped green) {
        double zones =
            green.parts().zones().stream().mapToDouble(z -> z.geometry().getArea()).sum();
        assertThat(zones).isCloseTo(green.subject().green().areaM2(), within(0.01));
      }
    }
  }

  @Test
  void earlierOutputIsNeverTouchedUnasked() throws IOException {
    SiteSettings site = quick(site("course_after_rain.yml"));
    map("readings_S1.csv", site, "out", 2);
    Map<String, String> before = fingerprints("out");
    assertThatThrownBy(() -> map("readings_S1.csv", site, "out", 2))
        .isInstanceOfSatisfying(
            OutputRefused.class,
            refused -> assertThat(refused.lines()).anyMatch(l -> l.contains("--overwrite")));
    assertThat(fingerprints("out")).isEqualTo(before);
    assertThat(job("readings_S1.csv", site, "out", 2, true).run(Progress.NONE).allMapped())
        .isTrue();
  }

  @Test
  void refusedInputWritesNothing() throws IOException {
    Path bad = course.resolve("bad.csv");
    Files.writeString(
        bad,
        "green_id,x,y,vwc_raw\nG1,500120,5316380,wet\nG1,500121,5316381,21\nG1,500122,,20\n",
        StandardCharsets.UTF_8);
    assertThatThrownBy(() -> map("bad.csv", site("course.yml"), "out", 2))
        .isInstanceOfSatisfying(
            InputRefused.class,
            refused -> assertThat(refused.lines()).hasSizeGreaterThanOrEqualTo(2));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void aGreenReadInFractionsIsAskedAboutAndLeftOutOfTheVariogram() throws IOException {
    MapReport report = map("readings_S5.csv", quick(site("course_after_rain.yml")), "out", 2);
    assertThat(report.map().notMapped())
        .singleElement()
        .satisfies(
            none -> {
              assertThat(none.subject().green().id()).isEqualTo("G1");
              assertThat(none.why().reason())
                  .isEqualTo(
                      "all 21 values are below 1 (0.200 to 0.292), as fractions are and not % by volume");
            });
    assertThat(report.map().variograms().stream().flatMap(v -> v.greens().stream()))
        .doesNotContain("G1")
        .hasSize(8);
    MapReport said =
        map(
            "readings_S5.csv",
            quick(site("course_after_rain.yml")).withUnit(MoistureUnit.PERCENT),
            "said",
            2);
    assertThat(said.allMapped()).isTrue();
  }

  @Test
  void aColumnThatIsNotThereIsNotReplacedInSilence() throws IOException {
    SiteSettings site = quick(site("course_after_rain.yml")).withColumn("vwc_raw", "nope");
    assertThatThrownBy(() -> map("readings_S1.csv", site, "out", 2))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("has no column 'nope' (mapped to vwc_raw)");
    // the outlines are named by another heading, the readings by ours: that is meant
    SiteSettings greens = quick(site("course_after_rain.yml")).withColumn("green_id", "Green");
    assertThat(map("readings_S1.csv", greens, "out", 2).allMapped()).isTrue();
  }

  @Test
  void aBandForAGreenThatIsNotThereIsRefused() throws IOException {
    SiteSettings site =
        SettingsReader.parse("s.yml", "bands: {greens: {G99: {lo_pct: 1, hi_pct: 2}}}")
            .withCrs("EPSG:32628");
    assertThatThrownBy(() -> map("readings_S1.csv", site, "out", 2))
        .hasMessageStartingWith("s.yml, bands.greens: there is no green 'G99'");
  }

  @Test
  void withoutBandsTheMapSaysWhyItHasNoClasses() throws IOException {
    MapReport report =
        map("readings_S1.csv", quick(SiteSettings.DEFAULTS.withCrs("EPSG:32628")), "out", 2);
    assertThat(report.told()).anyMatch(t -> t.startsWith("no classes: no band is set"));
    assertThat(mapped(report, "G1").parts().zones()).isEmpty();
    assertThat(folder.resolve("out/raster/G1_S1_vwc.tif")).exists();
    assertThat(folder.resolve("out/raster/G1_S1_cls.tif")).doesNotExist();
  }

  /** About a visit's own median: each visit has its band, in its row and in the record. */
  @Test
  void aBandForEvennessIsEachVisitsOwn() throws IOException {
    List<String> one = Files.readAllLines(course.resolve("readings_S1.csv"));
    List<String> other = Files.readAllLines(course.resolve("readings_S3.csv"));
    Files.write(
        course.resolve("g1.csv"),
        Stream.of(one.stream().limit(1), of("G1", one), of("G1", other)).flatMap(l -> l).toList());
    SiteSettings site =
        SettingsReader.parse("s.yml", "bands: {default: {purpose: evenness}}")
            .withCrs("EPSG:32628");
    MapReport report = map("g1.csv", quick(site), "out", 2);
    List<TargetBand> bands =
        report.map().maps().stream().map(m -> m.subject().band().orElseThrow()).toList();
    assertThat(bands).hasSize(2);
    // after soaking rain the green is wetter than after dry days
    assertThat(bands.get(0).lowPct()).isGreaterThan(bands.get(1).lowPct());
    assertThat(Files.readString(folder.resolve("out/summary.json")))
        .contains("\"band_prov\" : \"it is not recorded who set it, nor when\"")
        .containsPattern("\"G1\" : \\{\\s*\"purpose\" : \"evenness\"")
        .containsPattern("\"green G1, S3\" : \\{\\s*\"purpose\" : \"evenness\"");
    assertThat(report.told())
        .containsOnlyOnce("provisional band for green G1: it is not recorded who set it, nor when");
  }

  private static Stream<String> of(String green, List<String> lines) {
    return lines.stream().filter(l -> l.startsWith(green + ","));
  }

  @Test
  void aSelfCrossingOutlineIsRefusedWithItsPlace() {
    MapJob job =
        new MapJob(
            MapRequest.of(
                    course.resolve("imported/greens_import.shp"),
                    course.resolve("readings_S1.csv"),
                    folder.resolve("out"))
                .withSite(SiteSettings.DEFAULTS.withCrs("EPSG:32628")));
    assertThatThrownBy(() -> job.run(Progress.NONE))
        .isInstanceOf(InputRefused.class)
        .hasMessageContaining("G6")
        .hasMessageContaining("cross");
  }

  @Test
  void aGreenThatNoSurveyReadIsToldAndNotCalledUnknown() throws IOException {
    List<String> lines =
        Files.readAllLines(course.resolve("readings_S1.csv")).stream()
            .filter(line -> !line.startsWith("G9,"))
            .toList();
    Stream<String> again = lines.stream().skip(1).map(l -> l.replaceFirst(",S1,", ",S1b,"));
    Files.write(course.resolve("two.csv"), Stream.concat(lines.stream(), again).toList());
    SiteSettings site =
        SettingsReader.parse("s.yml", "bands: {greens: {G9: {lo_pct: 18, hi_pct: 27}}}")
            .withCrs("EPSG:32628");
    MapReport report = map("two.csv", site, "out", 2);
    assertThat(report.map().outcomes()).hasSize(16);
    assertThat(report.told()).anyMatch(t -> t.startsWith("no survey has a reading of green G9"));
  }

  private static Outcome.Mapped mapped(MapReport report, String green) {
    return (Outcome.Mapped) report.map().of(green, "S1").orElseThrow();
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> evenness(MapReport report, String green) {
    return ((List<Map<String, Object>>) report.figures().get("even"))
        .stream().filter(row -> row.get("green_id").equals(green)).findFirst().orElseThrow();
  }

  private static ExpectedGround wet(MapReport report, String green) {
    return mapped(report, green).parts().marks().orElseThrow().expected().stream()
        .filter(e -> e.kind() == ZoneClass.WET)
        .findFirst()
        .orElseThrow();
  }

  private Map<String, String> fingerprints(String out) throws IOException {
    Map<String, String> prints = new TreeMap<>();
    Path root = folder.resolve(out);
    List<Path> files;
    try (Stream<Path> walk = Files.walk(root)) {
      files = walk.filter(Files::isRegularFile).toList();
    }
    for (Path file : files) {
      prints.put(root.relativize(file).toString(), Fingerprint.of(file).sha256());
    }
    assertThat(prints).hasSizeGreaterThan(30);
    return prints;
  }
}
