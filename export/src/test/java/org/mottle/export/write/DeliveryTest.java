package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.Json;
import org.mottle.export.verify.Verification;

class DeliveryTest {
  @TempDir Path folder;

  /** A code of GeoTools' own beyond the 16 bits of a GeoTIFF's key. */
  @Test
  void tellsWhenTheRastersHaveNoCrs() {
    Path out = folder.resolve("map");
    Crs crs = Crs.ofEpsg(102115);
    Delivered delivered =
        Delivery.of(out, false, EnumSet.of(Format.RASTER))
            .write(List.of(), Examples.rasters(), crs, Examples.provenance(), Map.of());
    assertThat(delivered.files()).hasSize(1);
    assertThat(delivered.notes())
        .containsExactly(
            "no rasters: a GeoTIFF has no room for the code of EPSG:102115"
                + " (Old_Hawaiian_UTM_Zone_5N); name a --working-crs with a code below 32767");
    assertThat(out.resolve("raster")).doesNotExist();
  }

  private Delivered deliverDocument(Path out, String path, boolean overwrite) {
    return Delivery.of(out, overwrite, EnumSet.noneOf(Format.class))
        .withDocumentsAt(Set.of("cards", "plan.csv"))
        .write(
            List.of(),
            List.of(),
            List.of(new Document(path, file -> Files.writeString(file, path))),
            Examples.CRS,
            Examples.provenance(),
            Map.of());
  }

  @Test
  void documentsAreOfTheDelivery() throws IOException {
    Path out = folder.resolve("out");
    Delivered delivered = deliverDocument(out, "cards/7.html", false);
    assertThat(delivered.files())
        .extracting(Delivered.WrittenFile::path)
        .containsExactly("cards/7.html", "summary.json");
    assertThat(Verification.of(out).notes()).isEmpty();
    assertThatThrownBy(() -> deliverDocument(out, "plan.csv", false))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("cards exists");
    deliverDocument(out, "plan.csv", true);
    assertThat(out.resolve("cards")).doesNotExist();
    assertThat(out.resolve("plan.csv")).hasContent("plan.csv");
    assertThatThrownBy(() -> deliverDocument(folder.resolve("other"), "else.csv", false))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("else.csv");
    assertThat(folder.resolve("other")).doesNotExist();
  }

  /** A file of somebody else at the place of a document is not replaced in silence. */
  @Test
  void documentsDoNotReplaceWhatIsThere() throws IOException {
    Path out = Files.createDirectory(folder.resolve("out"));
    Files.writeString(out.resolve("plan.csv"), "mine");
    assertThatThrownBy(() -> deliverDocument(out, "plan.csv", false))
        .isInstanceOf(OutputRefused.class);
    assertThat(out.resolve("plan.csv")).hasContent("mine");
  }

  @Test
  void everyFormatReadsBackAsRecorded() throws IOException {
    Path out = folder.resolve("deep/out");
    Delivered delivered = Examples.deliver(out);

    Verification verification = Verification.of(out);
    assertThat(verification.faults()).isEmpty();
    assertThat(verification.notes()).isEmpty();
    assertThat(delivered.files())
        .extracting(Delivered.WrittenFile::path)
        .contains("mottle.gpkg", "geojson/zone.geojson", "shapefile/zone.shx", "shapefile/prov.dbf")
        .doesNotContain("shapefile/survey.shp", "shapefile/prov.prj")
        .endsWith("summary.json");
    for (Delivered.WrittenFile file : delivered.files()) {
      assertThat(Fingerprint.of(out.resolve(file.path())))
          .isEqualTo(new Fingerprint(file.bytes(), file.sha256()));
    }
    assertThat(delivered.notes())
        .containsExactly(
            "shapefile/reading.dbf: adj_note cut in row 6;"
                + " the GeoPackage and the GeoJSON have the whole text",
            "shapefile/odd.dbf: txt cut in row 3;"
                + " the GeoPackage and the GeoJSON have the whole text");
    assertThat(beside(out)).containsExactly("out");
  }

  /** A folder for .ci/cross-read.py, which reads it with GDAL after the tests. */
  @Test
  void leavesAFolderToBeReadByOthers() throws IOException {
    Path out = Path.of("target", "cross-read", "odd");
    Map<String, Object> cells = new TreeMap<>();
    cells.put("vwc", Examples.cells(RasterKind.VWC));
    cells.put("cls", Examples.cells(RasterKind.CLS));
    Delivery.of(out, true, EnumSet.allOf(Format.class))
        .write(
            Examples.layers(),
            Examples.rasters(),
            Examples.CRS,
            Examples.provenance(),
            Map.of("expected_cells", cells));
    assertThat(Verification.of(out).faults()).isEmpty();
  }

  @Test
  void sameRowsGiveTheSameBytesOnAnyNumberOfThreads() throws IOException {
    Path first = folder.resolve("first");
    Examples.deliver(first);
    for (int threads : new int[] {1, 4}) {
      Path other = folder.resolve("other" + threads);
      Delivery.of(other, false, EnumSet.allOf(Format.class))
          .withThreads(threads)
          .write(
              Examples.layers(),
              Examples.rasters(),
              Examples.CRS,
              Examples.provenance(),
              Map.of("greens", 2));
      assertThat(prints(other)).isEqualTo(prints(first));
    }
  }

  @Test
  void writesOnlyTheFormatsAskedFor() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.of(Format.GEOJSON));
    assertThat(beside(out.resolve("geojson").resolve("x")))
        .contains("prov.geojson", "even.geojson");
    assertThat(names(out)).containsExactly("geojson", "summary.json");
    assertThat(Verification.of(out).isFine()).isTrue();
  }

  @Test
  void summaryKeepsTheCallersFigures() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.of(Format.RASTER));
    Map<?, ?> summary = (Map<?, ?>) Json.read(out.resolve("summary.json"));
    assertThat(summary.get("figure")).isEqualTo(1.5);
    assertThat(((Map<?, ?>) summary.get("prov")).get("seed")).isEqualTo("20250514");
    assertThat((List<?>) summary.get("rasters")).hasSize(5);
  }

  @Test
  void refusesToOverwriteAndNamesEveryFile() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.of(Format.GEOJSON));
    Map<String, Fingerprint> before = prints(out);
    assertThatThrownBy(() -> write(out, false, EnumSet.of(Format.GEOJSON, Format.SHAPEFILE)))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("geojson exists; use --overwrite")
        .hasMessageContaining("summary.json exists; use --overwrite");
    assertThat(prints(out)).isEqualTo(before);
    assertThat(beside(out)).containsExactly("out");
  }

  @Test
  void overwritingTakesOldFilesAwayAndLeavesThoseOfOthers() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.allOf(Format.class));
    Files.writeString(out.resolve("mine.qgz"), "a project");
    Files.writeString(out.resolve("raster/notes.txt"), "a note");
    Files.writeString(out.resolve("shapefile/zone.prj"), "changed by hand");
    Delivered delivered = write(out, true, EnumSet.of(Format.GEOJSON));
    assertThat(names(out))
        .containsExactly("geojson", "mine.qgz", "raster", "shapefile", "summary.json");
    assertThat(names(out.resolve("raster"))).containsExactly("notes.txt");
    assertThat(names(out.resolve("shapefile"))).containsExactly("zone.prj");
    assertThat(delivered.notes())
        .satisfiesExactly(
            removed ->
                assertThat(removed)
                    .matches(
                        "removed what an earlier delivery had and this one has not: mottle.gpkg,"
                            + " raster/ \\(\\d+ files?\\), shapefile/ \\(\\d+ files\\)"),
            stays ->
                assertThat(stays)
                    .isEqualTo(
                        "shapefile/zone.prj of an earlier delivery was changed since and stays;"
                            + " it is not of this run"));
    assertThat(Verification.of(out).faults()).isEmpty();
    assertThat(beside(out)).containsExactly("out");
  }

  @Test
  void failureLeavesEarlierOutputAndNothingElse() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.allOf(Format.class));
    Map<String, Fingerprint> before = prints(out);
    Raster classes = new Raster(new CellGrid(0, 1, 1, 1, 1), new double[] {255});
    List<NamedRaster> bad = List.of(new NamedRaster("1", "S1", RasterKind.CLS, classes));
    assertThatThrownBy(
            () ->
                Delivery.of(out, true, EnumSet.allOf(Format.class))
                    .write(Examples.layers(), bad, Examples.CRS, Examples.provenance(), Map.of()))
        .hasMessage("raster cls of green 1 holds whole numbers from 0 to 254, was 255.0");
    assertThat(prints(out)).isEqualTo(before);
    assertThat(beside(out)).containsExactly("out");
  }

  @Test
  void moveThatFailsHalfWayIsTakenBack() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.of(Format.GEOJSON, Format.GEOPACKAGE));
    // a folder of somebody else where a file has to go
    Files.createDirectories(out.resolve("shapefile/zone.dbf/full"));
    Map<String, Fingerprint> before = prints(out);
    assertThatThrownBy(() -> write(out, true, EnumSet.allOf(Format.class)))
        .isInstanceOf(OutputRefused.class)
        .hasMessageContaining("zone.dbf")
        .hasMessageContaining("earlier output is as it was");
    assertThat(prints(out)).isEqualTo(before);
    assertThat(names(out.resolve("shapefile"))).containsExactly("zone.dbf");
    assertThat(beside(out)).containsExactly("out");
  }

  @Test
  void finishesWhatAKilledRunLeft() throws IOException {
    Path out = folder.resolve("out");
    write(out, false, EnumSet.of(Format.GEOJSON));
    Map<String, Fingerprint> before = prints(out);
    // as after a kill in the middle of the move: one file in place, one set aside, the rest drafted
    long dead = deadProcess();
    Path workshop = Files.createDirectories(folder.resolve(".out.mottle-" + dead));
    Files.createDirectories(workshop.resolve("earlier/geojson"));
    Files.createDirectories(workshop.resolve("draft"));
    Path zone = out.resolve("geojson/zone.geojson");
    Files.copy(out.resolve("summary.json"), workshop.resolve("draft/summary.json"));
    Files.move(zone, workshop.resolve("earlier/geojson/zone.geojson"));
    Files.writeString(zone, "of the killed run");
    for (String path : before.keySet()) {
      Path drafted = workshop.resolve("draft").resolve(path);
      Files.createDirectories(drafted.getParent());
      if (!path.endsWith("zone.geojson") && !Files.exists(drafted)) {
        Files.writeString(drafted, "drafted");
      }
    }
    try (Placement placement = Placement.beside(out, true, Set.of())) {
      assertThat(placement.draft()).isEmptyDirectory();
    }
    assertThat(prints(out)).isEqualTo(before);
    assertThat(beside(out)).doesNotContain(".out.mottle-" + dead);
  }

  @Test
  void refusesAFileAsFolder() throws IOException {
    Path out = Files.writeString(folder.resolve("out"), "x");
    assertThatThrownBy(() -> Delivery.of(out, true, EnumSet.allOf(Format.class)).check())
        .isInstanceOf(OutputRefused.class)
        .hasMessage(out + " is a file; --out needs a folder");
  }

  private static Delivered write(Path out, boolean overwrite, Set<Format> formats) {
    return Delivery.of(out, overwrite, formats)
        .write(
            Examples.layers(),
            Examples.rasters(),
            Examples.CRS,
            Examples.provenance(),
            Map.of("figure", 1.5));
  }

  private static long deadProcess() throws IOException {
    Process process =
        new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(), "-version")
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.onExit().join();
    return process.pid();
  }

  private static Map<String, Fingerprint> prints(Path folder) throws IOException {
    Map<String, Fingerprint> prints = new TreeMap<>();
    for (String path : Summary.paths(folder)) {
      prints.put(path, Fingerprint.of(folder.resolve(path)));
    }
    return prints;
  }

  private static List<String> beside(Path file) throws IOException {
    return names(file.getParent());
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
