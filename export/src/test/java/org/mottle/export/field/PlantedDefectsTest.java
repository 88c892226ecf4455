package org.mottle.export.field;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.demo.CourseGenerator;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.review.Rule;
import org.mottle.engine.review.Severity;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;

/**
 * The mistakes planted in the invented course, found from its files alone: no truth is read. Over
 * many seeds by {@code -Dmottle.review.seeds=1-20}; the figures are in docs/review.md.
 */
class PlantedDefectsTest {
  private static final Set<String> PARTIAL = Set.of("S2/G4/7", "S3/G1/3", "S3/G1/4", "S4/G6/11");
  private static final Set<String> OTHERS =
      Set.of("S2/G2/9", "S2/G2/10", "S2/G2/11", "S2/G2/12", "S1/G9/1", "S5/G7/5", "S3/G4/5");
  private static final Set<String> VISITS = Set.of("S5/G1", "S4/G9", "S3/G9", "S4/G7");

  @TempDir Path folder;

  static FieldWork work(long seed, Path folder) throws IOException {
    Path course = folder.resolve("course" + seed);
    CourseGenerator.generate(seed).writeSmall(course);
    InputOptions options = InputOptions.NONE.withCrs(Crs.parse("EPSG:32628"));
    Greens greens =
        GreensReader.read(course.resolve("greens.geojson").toString(), options, Optional.empty());
    List<String> readings = new ArrayList<>();
    for (String name : List.of("S1", "S1_G3_copy", "S2", "S3", "S4", "S5", "S6")) {
      readings.add(course.resolve("readings_" + name + ".csv").toString());
    }
    return FieldWork.of(
        greens,
        readings,
        new FieldFiles(
            Optional.of(course.resolve("surveys.csv").toString()),
            Optional.of(course.resolve("plan.csv").toString()),
            Optional.of(course.resolve("controls.csv").toString()),
            Optional.of(course.resolve("ties.csv").toString()),
            Optional.of(course.resolve("heads.geojson").toString()),
            List.of(
                course.resolve("track_S2.gpx").toString(),
                course.resolve("track_S3.gpx").toString()),
            Optional.empty()),
        options,
        Optional.empty(),
        Progress.NONE);
  }

  /** Which defects a review found, by code; D1 as the share of its four readings. */
  static Map<String, Boolean> found(FieldWork work, int[] counts) {
    List<Finding> all = work.reviewed().allFindings();
    Map<String, Boolean> found = new TreeMap<>();
    int partial = 0;
    for (ReviewedVisit v : work.reviewed().visits()) {
      String visit = v.visit().surveyId() + "/" + v.visit().green().id();
      for (Reading r : v.visit().readings()) {
        String key = visit + "/" + r.label().stationId();
        boolean doubted = !r.quality().status().equals("ok");
        if (PARTIAL.contains(key)) {
          partial += doubted ? 1 : 0;
          counts[0] += doubted ? 1 : 0;
          counts[1]++;
        } else if (!OTHERS.contains(key)
            && !VISITS.contains(visit)
            && !r.quality().code().equals(Rule.COPY.code())) {
          counts[2] += doubted ? 1 : 0;
          counts[3]++;
        }
      }
    }
    found.put("D01", partial >= 2);
    found.put("D02", any(all, Rule.STUCK, "S2", "G2", "9"));
    found.put(
        "D03", any(all, Rule.RANGE, "S1", "G9", "1") && any(all, Rule.RANGE, "S5", "G7", "5"));
    found.put("D04", any(all, Rule.CLOCK, "S3", "", "about 60 minutes ahead"));
    found.put(
        "D05",
        any(all, Rule.PLACED, "S2", "G1", "skipped: station 8;")
            && any(all, Rule.PLACED, "S2", "G1", "than planned: station 13"));
    found.put(
        "D06",
        any(all, Rule.POSITION, "S3", "G4", "station 5")
            && any(all, Rule.SHIFT, "S5", "G2", "positions of the visit"));
    found.put("D07", all.stream().filter(f -> f.rule() == Rule.LABEL).count() >= 5);
    found.put("D08", any(all, Rule.WATER, "S3", "G9", "minutes before"));
    found.put("D09", any(all, Rule.RODS, "S4", "G9", "38 mm"));
    found.put("D10", any(all, Rule.OPERATOR, "S4", "", "taken off"));
    found.put("D11", any(all, Rule.UNITS, "S5", "G1", "fractions"));
    found.put("D12", any(all, Rule.FEW, "S4", "G7", "summary"));
    found.put("D13", any(all, Rule.SPREAD, "S2", "G8", "farther"));
    found.put("D15", any(all, Rule.COPY, "S1", "G3", "second time"));
    return found;
  }

  private static boolean any(
      List<Finding> all, Rule rule, String survey, String green, String words) {
    return all.stream()
        .anyMatch(
            f ->
                f.rule() == rule
                    && f.severity() != Severity.NOTE
                    && f.surveyId().equals(survey)
                    && f.greenId().equals(green)
                    && (f.reason().contains(words)
                        || f.readings().stream()
                            .anyMatch(r -> r.label().stationId().equals(words))));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {20250514, 3, 8})
  void eachIsFound(long seed) throws IOException {
    int[] counts = new int[4];
    Map<String, Boolean> found = found(work(seed, folder), counts);
    long missed = found.values().stream().filter(f -> !f).count();
    assertThat(missed).as("seed %d: %s", seed, found).isLessThanOrEqualTo(1);
    assertThat(counts[2] / (double) counts[3]).as("sound readings doubted").isLessThan(0.07);
  }

  @ParameterizedTest(name = "seeds {0}")
  @org.junit.jupiter.params.provider.MethodSource("seeds")
  void overManySeedsNineInTenAreFound(String seeds) throws IOException {
    int from = Integer.parseInt(seeds.split("-")[0]);
    int to = Integer.parseInt(seeds.split("-")[1]);
    int[] counts = new int[4];
    Map<String, Integer> share = new TreeMap<>();
    for (int seed = from; seed <= to; seed++) {
      found(work(seed, folder), counts)
          .forEach((code, f) -> share.merge(code, f ? 1 : 0, Integer::sum));
    }
    System.out.printf(
        "seeds %s: found %s; D1 readings %d of %d; sound readings doubted %d of %d%n",
        seeds, share, counts[0], counts[1], counts[2], counts[3]);
    int all = to - from + 1;
    // stations of a coverage plan are equally far apart: a skip among them may leave no trace
    assertThat(share.remove("D05")).isGreaterThanOrEqualTo(all / 2);
    assertThat(share.values()).allMatch(n -> n >= 0.9 * all);
    assertThat(counts[2] / (double) counts[3]).isLessThan(all < 20 ? 0.07 : 0.05);
  }

  static List<String> seeds() {
    return List.of(System.getProperty("mottle.review.seeds", "1-2"));
  }

  /** D14: an outline that crosses itself and has no CRS is refused where it is read. */
  @org.junit.jupiter.api.Test
  void theCrossedOutlineIsRefused() throws IOException {
    Path course = folder.resolve("course");
    CourseGenerator.generate(5).writeSmall(course);
    Path shape;
    try (var files = java.nio.file.Files.walk(course.resolve("imported"))) {
      shape = files.filter(p -> p.toString().endsWith(".shp")).findFirst().orElseThrow();
    }
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () -> GreensReader.read(shape.toString(), InputOptions.NONE, Optional.empty()))
        .isInstanceOf(InputRefused.class);
    org.assertj.core.api.Assertions.assertThatThrownBy(
            () ->
                GreensReader.read(
                    shape.toString(),
                    InputOptions.NONE.withCrs(Crs.parse("EPSG:32628")),
                    Optional.empty()))
        .hasMessageContaining("cross");
  }
}
