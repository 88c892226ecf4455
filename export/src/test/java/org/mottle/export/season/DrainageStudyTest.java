package org.mottle.export.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.CourseGenerator;
import org.mottle.engine.progress.Progress;
import org.mottle.export.field.FieldFiles;
import org.mottle.export.read.ElevationUnit;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.write.Format;

/**
 * Which hypothesis comes first on the invented courses, from the files alone: on G3 a blocked
 * lateral, on G6 a hollow, the rest without a drainage fault. Over many seeds by {@code
 * -Dmottle.drainage.seeds=1-40}; the figures are in docs/drainage.md.
 */
class DrainageStudyTest {
  @TempDir Path folder;

  /** How often a hypothesis came first, was suggested, or nothing was. */
  private final Map<String, Integer> counts = new TreeMap<>();

  private int courses;
  private int third;
  private int sixth;
  private int soundOnes;

  @Test
  void faultsComeFirstAndSoundGreensGiveNone() throws IOException {
    String[] seeds = System.getProperty("mottle.drainage.seeds", "20250514").split("-");
    long from = Long.parseLong(seeds[0]);
    long to = Long.parseLong(seeds[seeds.length - 1]);
    for (long seed = from; seed <= to; seed++) {
      course(seed);
    }
    System.out.printf(
        "seeds %d-%d: G3 subsurface first %d, G6 surface first %d, sound greens without a"
            + " suggestion %d of %d; %s%n",
        from, to, third, sixth, soundOnes, courses, counts);
    assertThat(third).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * courses));
    assertThat(sixth).isGreaterThanOrEqualTo((int) Math.ceil(0.8 * courses));
    assertThat(soundOnes).isGreaterThanOrEqualTo((int) Math.ceil(0.9 * courses));
  }

  private void course(long seed) throws IOException {
    courses++;
    boolean sound = true;
    boolean[] first = new boolean[2];
    for (Map<String, Object> row : hypotheses(seed)) {
      if (Long.valueOf(1).equals(row.get("rank"))) {
        String green = row.get("green_id").toString();
        String kind = row.get("kind").toString();
        boolean suggested = row.get("verdict").equals("suggested");
        counts.merge(green + (suggested ? "! " : " ") + kind.split(" ")[0], 1, Integer::sum);
        // of several places the largest comes first
        boolean largest = row.get("place_id").equals(green + "-1");
        first[0] |= green.equals("G3") && largest && kind.startsWith("subsurface");
        first[1] |= green.equals("G6") && largest && kind.startsWith("surface");
        sound &= green.equals("G3") || green.equals("G6") || !suggested;
      }
    }
    third += first[0] ? 1 : 0;
    sixth += first[1] ? 1 : 0;
    soundOnes += sound ? 1 : 0;
  }

  @SuppressWarnings("unchecked") // rows of a layer are maps
  private List<Map<String, Object>> hypotheses(long seed) throws IOException {
    Path course = folder.resolve("course" + seed);
    CourseGenerator.generate(seed).writeSmall(course);
    CourseGenerator.generate(seed).writeLarge(course);
    List<String> elevation;
    try (Stream<Path> files = Files.list(course)) {
      elevation = files.map(Path::toString).filter(f -> f.endsWith(".asc")).sorted().toList();
    }
    SeasonReport report =
        new SeasonJob(
                new SeasonRequest(
                    new SeasonRequest.Inputs(
                        course.resolve("greens.geojson").toString(),
                        List.of(course.resolve("readings.csv").toString()),
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
                        elevation,
                        ElevationUnit.METRE,
                        Optional.of(course.resolve("heads.geojson").toString())),
                    SettingsReader.read(course.resolve("course.yml")).withCrs("EPSG:32628"),
                    2,
                    Optional.empty(),
                    folder.resolve("out" + seed),
                    EnumSet.of(Format.GEOPACKAGE),
                    false,
                    2))
            .run(Progress.NONE);
    return (List<Map<String, Object>>) report.figures().get("hypo");
  }
}
