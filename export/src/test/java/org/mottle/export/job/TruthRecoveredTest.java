package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.demo.CourseGenerator;
import org.mottle.demo.GeneratedCourse;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * Maps of five invented courses against the ground they were read on: survey S1, the eight greens
 * on sand. The truth is that of the start of the survey; the readings dry by up to 1 % while it
 * lasts, probe and position err too. Found with this code: RMSE 1.42 % (mean of the readings 2.19
 * %), coverage 90 %, 3.4 % of sound ground called wet or probably wet and 0.9 % wet, 66 to 96 % of
 * the core of the wet fault; expected wet ground of G3 and G6 1,342 m² where 1,430 m² are, nine of
 * its ten intervals hold the truth; the fault is outlined on three of the five seeds, with 97 % of
 * its core or more.
 */
class TruthRecoveredTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Half width of the 90 % interval of a normal error, in standard deviations. */
  private static final double Z90 = 1.6449;

  private record Run(GeneratedCourse course, SurveyMap map) {
    GreenTruth truth(Outcome.Mapped green) {
      return course.season().truth(green.subject().green().id());
    }

    Outcome.Mapped green(String id) {
      return (Outcome.Mapped) map.of(id, "S1").orElseThrow();
    }
  }

  private record Cell(double truth, double map, double sd, double readingsMean) {}

  @TempDir static Path folder;
  private static List<Run> runs;
  private static List<Cell> cells;

  @BeforeAll
  static void mapFiveCourses() throws IOException {
    runs = new ArrayList<>();
    cells = new ArrayList<>();
    for (long seed : LongStream.rangeClosed(1, 5).toArray()) {
      Run run = run(seed);
      runs.add(run);
      run.map().maps().forEach(green -> cells.addAll(cells(run, green)));
    }
  }

  private static Run run(long seed) throws IOException {
    GeneratedCourse course = CourseGenerator.generate(seed);
    Path files = folder.resolve("course" + seed);
    course.writeSmall(files);
    Path readings = files.resolve("sand.csv");
    Files.write(
        readings,
        Files.readAllLines(files.resolve("readings_S1.csv")).stream()
            .filter(line -> !line.startsWith("G9,"))
            .toList());
    SiteSettings site =
        SettingsReader.parse("s.yml", "bands: {default: {lo_pct: 18, hi_pct: 27}}")
            .withCrs("EPSG:32628");
    MapRequest request =
        MapRequest.of(files.resolve("greens.geojson"), readings, folder.resolve("map" + seed))
            .withSite(site)
            .withFormats(EnumSet.of(Format.GEOJSON))
            .withThreads(2);
    return new Run(course, new MapJob(request).run(Progress.NONE).map());
  }

  private static List<Cell> cells(Run run, Outcome.Mapped green) {
    GreenTruth truth = run.truth(green);
    Point centre = truth.green().world(0, 0);
    CellGrid grid = green.surface().mean().grid();
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < grid.size(); i++) {
      if (green.surface().mean().has(i)) {
        double dx = grid.x(i % grid.columns()) - centre.x();
        double dy = grid.y(i / grid.columns()) - centre.y();
        cells.add(
            new Cell(
                truth.soilPct(Survey.S1, dx, dy),
                green.surface().mean().value(i),
                green.surface().sd().value(i),
                green.summary().mean()));
      }
    }
    return cells;
  }

  @Test
  void everyGreenIsMapped() {
    for (Run run : runs) {
      assertThat(run.map().maps()).as("seed %d", run.course().seed()).hasSize(8);
      assertThat(run.map().notMapped())
          .singleElement()
          .satisfies(none -> assertThat(none.why().reason()).isEqualTo("no readings"));
    }
  }

  @Test
  void theMapIsNearerToTheTruthThanTheMeanOfTheReadings() {
    double ofMap = rmse(cells.stream().mapToDouble(c -> c.map() - c.truth()).toArray());
    double ofMean = rmse(cells.stream().mapToDouble(c -> c.readingsMean() - c.truth()).toArray());
    assertThat(ofMap).as("seeds 1 to 5: RMSE of the mean %.3f", ofMean).isLessThan(0.85 * ofMean);
  }

  @Test
  void theNinetyPerCentIntervalHoldsAboutNinetyPerCentOfTheCells() {
    double held =
        cells.stream().filter(c -> Math.abs(c.map() - c.truth()) <= Z90 * c.sd()).count()
            / (double) cells.size();
    assertThat(held).as("seeds 1 to 5").isBetween(0.80, 0.97);
  }

  @Test
  void soundGreensAreNotCalledWet() {
    assertThat(shareOfSoundGreens(ZoneClass.WET, ZoneClass.PROBABLY_WET))
        .as("seeds 1 to 5, probability 0.5 or more")
        .isLessThan(0.10);
    assertThat(shareOfSoundGreens(ZoneClass.WET))
        .as("seeds 1 to 5, probability 0.8 or more")
        .isLessThan(0.02);
  }

  private static double shareOfSoundGreens(ZoneClass... classes) {
    return runs.stream()
        .flatMap(run -> List.of(run.green("G1"), run.green("G2")).stream())
        .mapToDouble(
            g -> Arrays.stream(classes).mapToDouble(g::areaM2).sum() / g.subject().green().areaM2())
        .average()
        .orElseThrow();
  }

  @Test
  void theBlockedDrainOfG3IsFound() {
    for (Run run : runs) {
      Outcome.Mapped green = run.green("G3");
      List<Geometry> wet =
          green.parts().zones().stream()
              .filter(z -> z.cls() == ZoneClass.WET || z.cls() == ZoneClass.PROBABLY_WET)
              .map(Zone::geometry)
              .toList();
      assertThat(shareOfCore(run, wet)).as("seed %d", run.course().seed()).isGreaterThan(0.4);
    }
  }

  /**
   * The survey is too coarse to outline it on every seed; what is outlined holds most of the core:
   * 72 % on seed 2, more than 90 % on the others.
   */
  @Test
  void anOutlineOfTheBlockedDrainHoldsItsCore() {
    int outlined = 0;
    for (Run run : runs) {
      List<Geometry> patches =
          run.green("G3").parts().patches().stream()
              .filter(patch -> patch.kind() == ZoneClass.WET)
              .map(patch -> (Geometry) patch.geometry())
              .toList();
      if (patches.isEmpty()) {
        assertThat(run.green("G3").parts().spots())
            .as("seed %d: a symbol in its place", run.course().seed())
            .anyMatch(spot -> spot.kind() == ZoneClass.WET);
      } else {
        outlined++;
        assertThat(shareOfCore(run, patches)).as("seed %d", run.course().seed()).isGreaterThan(0.6);
      }
    }
    assertThat(outlined).as("of seeds 1 to 5").isGreaterThanOrEqualTo(3);
  }

  private static double shareOfCore(Run run, List<Geometry> places) {
    GreenTruth truth = run.truth(run.green("G3"));
    List<Point> core =
        truth.green().cells(0.5).stream()
            .filter(c -> truth.faults().get(0).shape(c.x(), c.y()) >= 0.5)
            .toList();
    long inside =
        core.stream()
            .map(truth.green()::world)
            .map(c -> FACTORY.createPoint(new Coordinate(c.x(), c.y())))
            .filter(c -> places.stream().anyMatch(place -> place.covers(c)))
            .count();
    return inside / (double) core.size();
  }

  /** Wet ground of G3 and G6 in truth against the expected area and its 5 to 95 % interval. */
  @Test
  void expectedAreasAreNearTheTruth() {
    double found = 0;
    double truly = 0;
    int held = 0;
    for (Run run : runs) {
      for (String id : List.of("G3", "G6")) {
        GreenTruth truth = run.truth(run.green(id));
        double area =
            0.25
                * truth.green().cells(0.5).stream()
                    .filter(c -> truth.soilPct(Survey.S1, c.x(), c.y()) > 27)
                    .count();
        ExpectedGround wet = run.green(id).parts().marks().orElseThrow().expected().get(1);
        found += wet.areaM2();
        truly += area;
        held += wet.areaLow() <= area && area <= wet.areaHigh() ? 1 : 0;
      }
    }
    assertThat(found)
        .as("seeds 1 to 5, truly %.0f m²", truly)
        .isBetween(0.85 * truly, 1.15 * truly);
    assertThat(held).as("of ten intervals of 90 %%").isGreaterThanOrEqualTo(7);
  }

  private static double rmse(double[] errors) {
    double sum = 0;
    for (double e : errors) {
      sum += e * e;
    }
    return Math.sqrt(sum / errors.length);
  }
}
