package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.mottle.export.read.FeatureFile;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.read.InputOptions;
import org.mottle.export.verify.Verification;

/** A published survey ten thousand times the size of a green, through the command line. */
class Sample04FloodPlainTest {
  private static final Path DATA = Path.of("flood-plain");
  private static int code;
  private static Path out;

  @BeforeAll
  static void map() throws IOException {
    out = TargetFolder.fresh("04").resolve("map");
    code = Sample04FloodPlain.map(DATA, out);
  }

  @Test
  void it_is_mapped_and_the_delivery_is_sound() throws IOException {
    assertThat(code).isZero();
    assertThat(Verification.of(out).faults()).isEmpty();
  }

  @Test
  void zones_tile_the_outline() {
    Geometry outline = outline();
    List<Geometry> zones =
        Sample04FloodPlain.zones(out).rows().stream().map(FeatureTable.Row::geometry).toList();
    assertThat(zones).hasSize(5).allMatch(Geometry::isValid);
    assertThat(zones.stream().mapToDouble(Geometry::getArea).sum())
        .isCloseTo(outline.getArea(), within(0.01));
    Geometry union = OverlayNGRobust.union(zones);
    Geometry difference = OverlayNGRobust.overlay(union, outline, OverlayNG.SYMDIFFERENCE);
    assertThat(difference.getArea()).isLessThan(0.01);
    assertThat(union.getNumGeometries()).as("no gap, no sliver").isEqualTo(1);
  }

  @Test
  void areas_written_are_those_of_the_geometries() {
    FeatureTable zones = Sample04FloodPlain.zones(out);
    int area = zones.columns().indexOf("area_m2");
    double sum = 0;
    for (FeatureTable.Row zone : zones.rows()) {
      double written = ((Number) zone.values().get(area)).doubleValue();
      assertThat(written).isCloseTo(zone.geometry().getArea(), within(0.01));
      sum += written;
    }
    assertThat(sum).isCloseTo(outline().getArea(), within(0.01));
  }

  @Test
  void every_sample_is_used_and_the_mean_is_theirs() throws IOException {
    double[] om =
        Files.readAllLines(DATA.resolve("samples.csv")).stream()
            .skip(1)
            .mapToDouble(row -> Double.parseDouble(row.split(",")[3]))
            .toArray();
    assertThat(om).hasSize(153);
    assertThat(number("survey", "n_read")).isEqualTo(om.length);
    assertThat(number("survey", "n_used")).isEqualTo(om.length);
    assertThat(number("even", "mean"))
        .isCloseTo(Arrays.stream(om).average().orElseThrow(), within(0.001));
    // the samples crowd near the river, where organic matter is high: the ground's mean is lower,
    // and well inside the range of the samples
    double quartile = Arrays.stream(om).sorted().skip(38).findFirst().orElseThrow();
    assertThat(number("even", "area_mean"))
        .isBetween(quartile, Arrays.stream(om).average().orElseThrow());
    assertThat(read("reading").rows()).hasSize(om.length);
  }

  /**
   * Another program on the same files with the model of table vgm: gstat 2.1.0, R 4.2.2,
   * flood-plain/gstat.R. It cuts the kriged mean under the best model, which is about where the
   * probability passes a half; ours is the mean over 25 models.
   */
  @Test
  void gstat_maps_the_same_ground() {
    assertThat(number("vgm", "c0")).as("nugget").isCloseTo(2.391, within(0.02));
    assertThat(number("vgm", "psill")).as("partial sill").isCloseTo(23.73, within(0.5));
    assertThat(number("vgm", "range_m")).as("range, m").isCloseTo(1965, within(40.0));
    assertThat(number("even", "area_mean")).as("mean, %").isCloseTo(6.819, within(0.1));
    assertThat(hectares("dry") + hectares("probably dry"))
        .as("below 5 %, ha")
        .isCloseTo(115.0, within(6.0));
    assertThat(hectares("in band")).as("5 to 10 %, ha").isCloseTo(331.2, within(6.0));
    assertThat(hectares("wet") + hectares("probably wet"))
        .as("above 10 %, ha")
        .isCloseTo(50.2, within(3.0));
  }

  @Test
  void nothing_assumed_the_size_of_a_green() {
    assertThat(outline().getArea()).isGreaterThan(4e6);
    assertThat(number("survey", "cell_m")).isEqualTo(20);
    FeatureTable vgm = read("vgm");
    assertThat(number("vgm", "range_m")).as("range, m").isBetween(200.0, 4000.0);
    assertThat(number("vgm", "n_pairs")).as("pairs").isGreaterThan(1000);
    assertThat(vgm.rows()).hasSize(1);
    FeatureTable patches = read("patch");
    int width = patches.columns().indexOf("width_m");
    assertThat(patches.rows())
        .anySatisfy(
            p -> assertThat(((Number) p.values().get(width)).doubleValue()).isGreaterThan(200));
    assertThat(Sample04FloodPlain.zones(out).crs().orElseThrow().code()).isEqualTo("EPSG:28992");
  }

  private static double hectares(String cls) {
    FeatureTable zones = Sample04FloodPlain.zones(out);
    int at = zones.columns().indexOf("cls");
    return zones.rows().stream()
        .filter(zone -> zone.values().get(at).equals(cls))
        .mapToDouble(zone -> zone.geometry().getArea() / 10_000)
        .sum();
  }

  private static Geometry outline() {
    return FeatureFile.read(DATA.resolve("outline.gpkg").toString(), InputOptions.NONE)
        .rows()
        .get(0)
        .geometry();
  }

  private static FeatureTable read(String layer) {
    return FeatureFile.read(out.resolve("mottle.gpkg") + "#" + layer, InputOptions.NONE);
  }

  private static double number(String layer, String field) {
    FeatureTable table = read(layer);
    return ((Number) table.rows().get(0).values().get(table.columns().indexOf(field)))
        .doubleValue();
  }
}
