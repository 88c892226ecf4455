package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.demo.Course;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.position.Mark;
import org.mottle.engine.position.Tie;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.track.Track;
import org.mottle.export.crs.Crs;

/** The files of the invented course, as they are delivered. Counts are of lines in the files. */
class DemoFieldFilesTest {
  private static final Crs WORKING = Crs.utm(28, true);
  private static final InputOptions UTM = InputOptions.NONE.withCrs(WORKING);

  @TempDir static Path folder;
  private final List<String> notes = new ArrayList<>();

  @BeforeAll
  static void course() throws IOException {
    Course.copyTo(folder);
  }

  private static String file(String name) {
    return folder.resolve(name).toString();
  }

  private static Greens greens() {
    return GreensReader.read(file("greens.geojson"), InputOptions.NONE, Optional.of(WORKING));
  }

  @Test
  void aSurveyWithoutPositions() {
    Readings all =
        ReadingsReader.readWithUnplaced(
            file("readings_S2.csv"), InputOptions.NONE, greens(), Optional.empty());
    assertThat(all.readings()).isEmpty();
    assertThat(all.outside()).isEmpty();
    assertThat(
            all.unplaced().stream()
                .collect(Collectors.groupingBy(r -> r.position().source(), Collectors.counting())))
        .containsOnly(java.util.Map.entry("order", 69L), java.util.Map.entry("track", 123L));
  }

  @Test
  void allSurveysInOneFile() {
    Readings all =
        ReadingsReader.readWithUnplaced(file("readings.csv"), UTM, greens(), Optional.empty());
    assertThat(all.unplaced()).hasSize(192);
    assertThat(all.readings().size() + all.outside().size()).isEqualTo(1453 - 192);
  }

  @Test
  void controlsOnTheCollar() {
    Readings all =
        ReadingsReader.readWithUnplaced(file("controls.csv"), UTM, greens(), Optional.empty());
    assertThat(all.readings()).hasSize(260).allMatch(r -> r.role() == Reading.Role.CONTROL);
    assertThat(all.outside()).isEmpty();
  }

  @Test
  void conditionsOfEveryVisit() {
    List<Conditions> all = ConditionsReader.read(file("surveys.csv"), UTM, notes);
    assertThat(all).hasSize(54);
    assertThat(notes).isEmpty();
    Conditions s1g3 = all.stream().filter(c -> c.isOf("S1", "G3")).findFirst().orElseThrow();
    assertThat(s1g3.visit().planId()).isEqualTo("base+infill");
    assertThat(s1g3.water().rainHours()).isEqualTo(36);
    assertThat(s1g3.water().irrigationHours()).isNaN();
  }

  @Test
  void plansOfEveryGreen() {
    List<StationPlan> plans = PlansReader.read(file("plan.csv"), UTM, WORKING);
    assertThat(plans).hasSize(15);
    assertThat(plans.stream().mapToInt(p -> p.stations().size()).sum()).isEqualTo(222);
    assertThat(plans.get(0).stations().get(0).x()).isEqualTo(500115.25);
  }

  @Test
  void headsAndTies() {
    List<Mark> heads = MarksReader.marks(file("heads.geojson"), UTM, WORKING);
    List<Tie> ties = MarksReader.ties(file("ties.csv"), UTM, WORKING);
    assertThat(ties).hasSize(94);
    assertThat(heads).extracting(Mark::id).containsAll(ties.stream().map(Tie::markId).toList());
    Mark first = heads.get(0);
    // gdaltransform (GDAL 3.6.2) of -14.998321588 48.000831108 from EPSG:4326 to EPSG:32628
    assertThat(first.x()).isCloseTo(500125.199977127, within(1e-4));
    assertThat(first.y()).isCloseTo(5316392.60002317, within(1e-4));
  }

  @Test
  void tracks() {
    List<Track> s2 = TrackReader.read(file("track_S2.gpx"), WORKING, notes);
    List<Track> s3 = TrackReader.read(file("track_S3.gpx"), WORKING, notes);
    assertThat(s2.stream().mapToInt(Track::size).sum()).isEqualTo(570);
    assertThat(s3.stream().mapToInt(Track::size).sum()).isEqualTo(477);
    assertThat(s2.get(0).seconds()[0]).isEqualTo(1747465471.0);
    // gdaltransform (GDAL 3.6.2) of -14.9907026 48.0018205 from EPSG:4326 to EPSG:32628
    assertThat(s2.get(0).x()[0]).isCloseTo(500693.519832476, within(1e-4));
    assertThat(s2.get(0).y()[0]).isCloseTo(5316502.60731429, within(1e-4));
    assertThat(notes).isEmpty();
  }
}
