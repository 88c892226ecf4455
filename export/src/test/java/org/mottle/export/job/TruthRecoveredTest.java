package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.demo.CourseGenerator;
import org.mottle.demo.GeneratedCourse;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.progress.Progress;
import org.mottle.export.settings.SettingsReader;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Format;

/**
 * Maps of five invented courses against the ground they were read on: survey S1, the eight greens
 * on sand. The truth is that of the start of the survey; the readings dry by up to 1 % while it
 * lasts, probe and position err too. Found with this code: RMSE 1.44 % (mean of the readings 2.19
 * %), coverage 91 %, 4 % of sound ground called wet, 67 to 97 % of the core of the wet fault.
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
    double share =
        runs.stream()
            .flatMap(run -> List.of(run.green("G1"), run.green("G2")).stream())
            .mapToDouble(g -> g.areaM2(ZoneClass.WET) / g.subject().green().areaM2())
            .average()
            .orElseThrow();
    assertThat(share).as("seeds 1 to 5").isLessThan(0.10);
  }

  @Test
  void theBlockedDrainOfG3IsFound() {
    for (Run run : runs) {
      Outcome.Mapped green = run.green("G3");
      GreenTruth truth = run.truth(green);
      List<Point> core =
          truth.green().cells(0.5).stream()
              .filter(c -> truth.faults().get(0).shape(c.x(), c.y()) >= 0.5)
              .toList();
      long wet = core.stream().filter(c -> isWet(green, truth.green().world(c))).count();
      assertThat(wet / (double) core.size()).as("seed %d", run.course().seed()).isGreaterThan(0.4);
    }
  }

  private static boolean isWet(Outcome.Mapped green, Point place) {
    var point = FACTORY.createPoint(new Coordinate(place.x(), place.y()));
    return green.parts().patches().stream()
        .filter(patch -> patch.kind() == ZoneClass.WET)
        .map(Patch::geometry)
        .anyMatch(geometry -> geometry.covers(point));
  }

  private static double rmse(double[] errors) {
    double sum = 0;
    for (double e : errors) {
      sum += e * e;
    }
    return Math.sqrt(sum / errors.length);
  }
}
