package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.jenetics.jpx.GPX;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.demo.Course;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading.Role;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.PlansReader;
import org.mottle.export.record.Json;
import org.mottle.export.verify.Verification;

/** {@code plan} as typed, on the invented course. */
class PlanCommandTest {
  @TempDir Path folder;
  private Path greens;

  @BeforeEach
  void unpack() throws IOException {
    Course.copyTo(folder.resolve("course"));
    greens = folder.resolve("course/greens.geojson");
  }

  private Ran plan(Path of, String out, String... more) {
    List<String> args = new ArrayList<>(List.of("plan", "--greens", of.toString()));
    args.addAll(List.of("--out", folder.resolve(out).toString()));
    args.addAll(List.of(more));
    return Ran.mottle(args);
  }

  private Ran plan(String... more) {
    return plan(greens, "out", more);
  }

  private List<StationPlan> planned(String out) {
    Greens read = GreensReader.read(greens.toString(), InputOptions.NONE, Optional.empty());
    String csv = folder.resolve(out).resolve("stations.csv").toString();
    return PlansReader.read(csv, InputOptions.NONE.withCrs(read.working()), read.working());
  }

  private void refused(Ran ran, String... lines) {
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines()).containsExactly(lines);
    assertThat(ran.out()).isEmpty();
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private Path squares(String text) throws IOException {
    return Files.writeString(folder.resolve("squares.geojson"), text);
  }

  /** Squares in UTM zone 28N, named by their side in metres. */
  private Path squares(int... sides) throws IOException {
    StringBuilder features = new StringBuilder();
    int west = 500_000;
    for (int s : sides) {
      features.append(features.isEmpty() ? "" : ",");
      features.append(
          ("{\"type\":\"Feature\",\"properties\":{\"green_id\":\"%d\"},\"geometry\":{\"type\":"
                  + "\"Polygon\",\"coordinates\":[[[%d,5316000],[%d,5316000],[%d,%d],[%d,%d],"
                  + "[%d,5316000]]]}}")
              .formatted(s, west, west + s, west + s, 5316000 + s, west, 5316000 + s, west));
      west += 100;
    }
    return squares(
        "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":"
            + "\"urn:ogc:def:crs:EPSG::32628\"}},\"features\":["
            + features
            + "]}");
  }

  @Test
  void everyFileIsThereAndReadsBack() throws IOException {
    Ran ran = plan("--stations", "18");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.out())
        .contains("green Alder (G1): 18 stations (2 close pairs, 3 read twice) and 1 control")
        .contains("9 of 9 planned")
        .containsPattern("a round dry spot of 5 m, [0-9.]+ % drier: [0-9] in 10");
    Path out = folder.resolve("out");
    Verification verification = Verification.of(out);
    assertThat(verification.faults()).isEmpty();
    assertThat(verification.notes()).isEmpty();
    assertThat(names(out))
        .contains("stations.gpx", "stations.geojson", "stations.csv", "mottle.gpkg", "cards.html")
        .contains("cards/G1.html", "cards/G9.html", "summary.json");

    List<StationPlan> plans = planned("out");
    assertThat(plans).hasSize(9);
    Greens read = GreensReader.read(greens.toString(), InputOptions.NONE, Optional.empty());
    for (StationPlan plan : plans) {
      Green green =
          read.greens().stream().filter(g -> g.id().equals(plan.greenId())).findFirst().get();
      Geometry inner = green.outline().buffer(-0.99);
      for (PlannedStation s : plan.stations()) {
        Coordinate place = new Coordinate(s.x(), s.y());
        assertThat(inner.contains(inner.getFactory().createPoint(place)))
            .as(green.id() + " " + s)
            .isTrue();
      }
      assertThat(plan.stations()).filteredOn(s -> s.role() == Role.CONTROL).hasSize(1);
      assertThat(plan.stations()).filteredOn(s -> s.role() == Role.PAIR).hasSize(2);
      assertThat(plan.stations()).filteredOn(s -> s.role() != Role.CONTROL).hasSize(18);
      assertThat(plan.stations())
          .filteredOn(s -> s.role() != Role.CONTROL && s.insertions() == 2)
          .hasSize(3);
    }
  }

  @Test
  void theReceiverGetsTheSamePlaces() throws IOException {
    assertThat(plan().exitCode()).isEqualTo(ExitCode.DONE);
    GPX gpx = GPX.read(folder.resolve("out/stations.gpx"));
    List<PlannedStation> stations =
        planned("out").stream().flatMap(p -> p.stations().stream()).toList();
    assertThat(gpx.getWayPoints()).hasSameSizeAs(stations);
    assertThat(gpx.getRoutes()).hasSize(9);
    assertThat(gpx.getRoutes().get(0).getPoints()).hasSize(19);
    assertThat(gpx.getWayPoints()).extracting(w -> w.getName().get()).doesNotHaveDuplicates();
    List<String> rows = Files.readAllLines(folder.resolve("out/stations.csv"));
    for (int i = 0; i < stations.size(); i++) {
      String[] cells = rows.get(i + 1).split(",");
      assertThat(gpx.getWayPoints().get(i).getLongitude().doubleValue())
          .isCloseTo(Double.parseDouble(cells[7]), within(1e-8));
      assertThat(gpx.getWayPoints().get(i).getName()).contains(cells[1] + "-" + cells[2]);
    }
  }

  @Test
  void everyDesignOfTheWholeGreen() {
    for (String design :
        List.of("transect", "w", "square-grid", "triangular-grid", "stratified", "balanced")) {
      Ran ran = plan(greens, design, "--design", design, "--stations", "12", "--json", "--quiet");
      assertThat(ran.exitCode()).as(design + ran.err()).isEqualTo(ExitCode.DONE);
      assertThat(ran.out()).startsWith("{\"greens_asked\":9,\"greens_planned\":9,");
      assertThat(planned(design)).as(design).hasSize(9);
      for (StationPlan plan : planned(design)) {
        assertThat(plan.stations())
            .as(design)
            .filteredOn(s -> s.role() != Role.CONTROL)
            .hasSize(12);
      }
    }
  }

  @Test
  void theSameBytesForAnyThreadsAndOthersForAnotherSeed() throws IOException {
    plan(greens, "one", "--design", "stratified", "--threads", "1");
    plan(greens, "two", "--design", "stratified", "--threads", "4");
    plan(greens, "three", "--design", "stratified", "--seed", "7");
    assertThat(bytes(folder.resolve("one"))).isEqualTo(bytes(folder.resolve("two")));
    assertThat(Files.readString(folder.resolve("three/stations.csv")))
        .isNotEqualTo(Files.readString(folder.resolve("one/stations.csv")));
  }

  @Test
  void anEarlierPlanAgainAndBetweenItsStations() throws IOException {
    plan(greens, "first");
    String earlier = folder.resolve("first/stations.csv").toString();
    Ran again =
        plan(greens, "again", "--design", "repeat", "--earlier", earlier, "--crs", "EPSG:32628");
    assertThat(again.exitCode()).as(again.err()).isEqualTo(ExitCode.DONE);
    assertThat(folder.resolve("again/stations.csv"))
        .hasSameTextualContentAs(folder.resolve("first/stations.csv"));
    Ran between =
        plan(
            greens,
            "between",
            "--design",
            "infill",
            "--stations",
            "6",
            "--earlier",
            earlier,
            "--crs",
            "EPSG:32628");
    assertThat(between.exitCode()).as(between.err()).isEqualTo(ExitCode.DONE);
    Map<String, StationPlan> first = new TreeMap<>();
    planned("first").forEach(p -> first.put(p.greenId(), p));
    for (StationPlan more : planned("between")) {
      List<PlannedStation> added =
          more.stations().stream().filter(s -> s.role() == Role.INFILL).toList();
      assertThat(added).hasSize(6);
      for (PlannedStation s : added) {
        assertThat(first.get(more.greenId()).stations())
            .as(more.greenId() + " " + s)
            .noneMatch(e -> Math.hypot(e.x() - s.x(), e.y() - s.y()) < 1);
      }
    }
  }

  @Test
  void pointsOfInterestOnOneGreenOfNine() throws IOException {
    Path points = folder.resolve("points.csv");
    Files.writeString(points, "x,y\n500120,5316380\n500122,5316383\n500220,5316383\n");
    Ran ran = plan("--design", "interest", "--areas", points.toString(), "--crs", "EPSG:32628");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.out())
        .contains("points.csv: row 4 meets no green and is left out")
        .contains("points.csv: nothing in green G2, G3, G4, G5, G6, G7, G8, G9")
        .contains("stations chosen for what is seen there say nothing of the mean");
    assertThat(planned("out")).hasSize(1);
    assertThat(planned("out").get(0).stations())
        .filteredOn(s -> s.role() == Role.POINT_OF_INTEREST)
        .hasSize(2);
  }

  @Test
  void areasThatMissEveryGreen() throws IOException {
    Path points = Files.writeString(folder.resolve("points.csv"), "x,y\n400000,5316380\n");
    refused(
        plan("--design", "interest", "--areas", points.toString(), "--crs", "EPSG:32628"),
        "points.csv: none of its 1 areas meets a green of greens.geojson; check its CRS, or take"
            + " the file of this course");
  }

  @Test
  void aGreenTooSmallIsNamedAndTheOthersAreDelivered() throws IOException {
    Ran ran = plan(squares(22, 2), "out");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.PARTLY);
    assertThat(ran.out()).contains("green 2: NO PLAN: ").contains("1 of 2 planned");
    Map<?, ?> summary = (Map<?, ?>) Json.read(folder.resolve("out/summary.json"));
    assertThat(summary.get("greens_planned")).isEqualTo(1L);
    assertThat((List<?>) summary.get("not_planned")).hasSize(1);
    assertThat(names(folder.resolve("out")))
        .contains("cards/22.html")
        .doesNotContain("cards/2.html");
  }

  @Test
  void nothingIsWrittenWhenNoGreenCanBePlanned() throws IOException {
    Ran ran = plan(squares(2, 1), "out");
    assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.errLines()).hasSize(2).allMatch(l -> l.contains(": NO PLAN: "));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void howManyForTheMean() {
    // smallest n with n >= (t s / e)²: 18 for s = 2, e = 1, as qt(0.975, 17)² 4 = 17.8; 17 gives
    // 18.0
    Ran ran = plan("--sd", "2", "--margin", "1", "--json");
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.err()).contains("18 stations tell a green's mean to 1.0 % either side");
    assertThat(planned("out").get(0).stations()).filteredOn(s -> s.role() == Role.PLAN).hasSize(18);
  }

  @Test
  void anotherVariogramChangesWhatAMapIsWorth() {
    Path model =
        Models.text(
            folder,
            "v.json",
            "{\"nugget\": 1.5, \"structures\": [{\"type\": \"spherical\", \"partial_sill\": 4,"
                + " \"range\": 15}]}");
    Ran ran = plan("--model", model.toString());
    assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(ran.out()).contains("with the variogram of v.json").contains("(given variogram)");
  }

  @Test
  void refusedOptions() {
    refused(
        plan("--design", "coverag"),
        "--design: unknown 'coverag', did you mean 'coverage'; known: transect, w, square-grid,"
            + " triangular-grid, coverage, stratified, balanced, interest, repeat, infill");
    refused(plan("--stations", "0"), "--stations must be from 1 to 500, was 0");
    refused(
        plan("--stations", "3"),
        "--stations 3 leaves 1 beside 2 close pairs, and each pair needs one; use more stations or"
            + " --pairs 0");
    refused(
        plan("--design", "repeat"),
        "--design repeat needs the earlier plan: add --earlier with a stations.csv of 'mottle"
            + " plan'");
    refused(
        plan("--areas", greens.toString(), "--bearing", "400", "--sd", "2"),
        "--bearing must be from 0 to 360 degrees, was 400.0",
        "--areas is for the design interest, and the design is coverage",
        "--bearing is for the design transect, and the design is coverage",
        "--sd and --margin go together: the standard deviation of the readings and the margin"
            + " wanted, as --sd 2 --margin 1");
    refused(
        plan("--stations", "18", "--sd", "2", "--margin", "1"),
        "--stations and --sd with --margin both say how many; give one of them");
  }

  @Test
  void aModelThatCannotBeRead() {
    Path none = folder.resolve("none.json");
    Ran ran = plan("--model", none.toString());
    assertThat(ran.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(ran.err()).contains(none.getFileName().toString());
    Ran broken = plan("--model", Models.text(folder, "v.json", "{\"nugget\": ").toString());
    assertThat(broken.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(broken.err()).contains("v.json");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void anEarlierDeliveryStaysUnlessTold() throws IOException {
    plan("--stations", "18");
    Map<String, Long> before = bytes(folder.resolve("out"));
    Ran again = plan("--stations", "12");
    assertThat(again.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(again.err()).contains("stations.csv exists; use --overwrite");
    assertThat(bytes(folder.resolve("out"))).isEqualTo(before);
    Ran replaced = plan(squares(22), "out", "--overwrite");
    assertThat(replaced.exitCode()).as(replaced.err()).isEqualTo(ExitCode.DONE);
    assertThat(names(folder.resolve("out")))
        .contains("cards/22.html")
        .doesNotContain("cards/G1.html");
  }

  private static List<String> names(Path out) throws IOException {
    return List.copyOf(bytes(out).keySet());
  }

  /** A hash of the content of every file, by relative name. */
  private static Map<String, Long> bytes(Path out) throws IOException {
    Map<String, Long> all = new TreeMap<>();
    try (Stream<Path> walk = Files.walk(out)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        java.util.zip.CRC32 crc = new java.util.zip.CRC32();
        crc.update(Files.readAllBytes(file));
        all.put(out.relativize(file).toString().replace('\\', '/'), crc.getValue());
      }
    }
    return all;
  }
}
