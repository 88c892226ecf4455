package org.mottle.export.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Examples;

/** Every kind of damage is told, in the place it was done. */
class VerificationTest {
  @TempDir static Path origin;
  @TempDir Path folder;
  private static Delivered delivered;
  private Path out;

  @BeforeAll
  static void deliver() {
    delivered = Examples.deliver(origin.resolve("out"));
  }

  @BeforeEach
  void copy() throws IOException {
    out = folder.resolve("out");
    for (Delivered.WrittenFile file : delivered.files()) {
      Files.createDirectories(out.resolve(file.path()).getParent());
      Files.copy(
          delivered.folder().resolve(file.path()),
          out.resolve(file.path()),
          StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private List<String> contentFaults() throws IOException {
    return Verification.contents(out, 2).faults();
  }

  private void replace(String path, String from, String to) throws IOException {
    String text = Files.readString(out.resolve(path));
    assertThat(text).contains(from);
    Files.writeString(out.resolve(path), text.replace(from, to));
  }

  private void patch(String path, int at, byte... bytes) throws IOException {
    byte[] content = Files.readAllBytes(out.resolve(path));
    System.arraycopy(bytes, 0, content, at, bytes.length);
    Files.write(out.resolve(path), content);
  }

  private void cut(String path, int by) throws IOException {
    byte[] content = Files.readAllBytes(out.resolve(path));
    Files.write(out.resolve(path), java.util.Arrays.copyOf(content, content.length - by));
  }

  private void sql(String statement) throws SQLException {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + out.resolve("mottle.gpkg"));
        Statement sql = db.createStatement()) {
      sql.executeUpdate(statement);
    }
  }

  @Test
  void untouchedFolderIsFine() throws IOException {
    Verification all = Verification.of(out);
    assertThat(all.isFine()).isTrue();
    assertThat(all.files()).isEqualTo(delivered.files().size() - 1);
    // one GeoPackage, nine layers and tables twice, five rasters with their styles, and QML and SLD
    // of five layers twice
    assertThat(Verification.contents(out, 1).files()).isEqualTo(1 + 2 * 9 + 2 * 5 + 2 * 2 * 5);
  }

  @Test
  void tellsChangedMissingAndForeignFiles() throws IOException {
    replace("geojson/zone.geojson", "in band", "In band");
    Files.delete(out.resolve("shapefile/iso.shx"));
    Files.writeString(out.resolve("x.txt"), "x");
    Verification all = Verification.of(out);
    assertThat(all.faults())
        .anyMatch(f -> f.startsWith("geojson/zone.geojson has changed since it was delivered: "))
        .contains("shapefile/iso.shx is missing")
        .anyMatch(f -> f.startsWith("shapefile/iso.dbf ") && f.contains("iso.shx"));
    assertThat(all.notes()).containsExactly("x.txt is not of this delivery");
  }

  @Test
  void tellsFeaturesThatWentAway() throws Exception {
    sql("DELETE FROM zone WHERE fid = 99");
    assertThat(contentFaults()).isEmpty();
    sql("DROP TRIGGER rtree_zone_geom_delete");
    sql("DELETE FROM zone WHERE fid = 1");
    assertThat(contentFaults())
        .contains(
            "mottle.gpkg: the index of zone has 2 entries for 1 features",
            "mottle.gpkg, layer zone: rows recorded as 2, found 1",
            "mottle.gpkg, layer zone: area, m2 recorded as 575.0, found 375.0000");
  }

  @Test
  void tellsAnotherCrsAndAMissingLayer() throws Exception {
    sql("UPDATE gpkg_contents SET srs_id = 4326 WHERE table_name = 'iso'");
    sql("DELETE FROM gpkg_contents WHERE table_name = 'survey'");
    assertThat(contentFaults())
        .containsExactly(
            "mottle.gpkg: table iso is in srs 4326, not EPSG:32628",
            "mottle.gpkg: name_dict tells of survey, which is not there",
            "mottle.gpkg has no layer survey");
  }

  @Test
  void tellsStylesThatDifferOrAreNone() throws Exception {
    replace("geojson/zone.qml", "probably dry", "Probably dry");
    replace("shapefile/patch.sld", "</Rule>", "</rule>");
    sql("DELETE FROM name_dict WHERE layer = 'zone' AND field = 'cls'");
    assertThat(contentFaults())
        .contains("the style qgis of zone differs from one place to another")
        .anyMatch(f -> f.startsWith("shapefile/patch.sld is no style: damaged in line "))
        .anyMatch(f -> f.startsWith("mottle.gpkg: name_dict tells of the fields "));
  }

  @Test
  void tellsAVertexThatMoved() throws IOException {
    replace("geojson/green.geojson", "[-14.998391302,48.000717744]", "[-14.9984,48.000717744]");
    assertThat(contentFaults())
        .singleElement()
        .asString()
        .startsWith("geojson/green.geojson: area, m2 recorded as 672.0, found 678.");
    ByteBuffer x = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
    x.putDouble(Examples.EAST + 0.5);
    // first coordinate of the first record: 100 + 8 + 44 + two parts of 4 bytes
    patch("shapefile/green.shp", 160, x.array());
    assertThat(contentFaults())
        .anyMatch(f -> f.startsWith("shapefile/green: area, m2 recorded as 672.0, found 667."));
  }

  @Test
  void tellsFieldsThatDiffer() throws IOException {
    replace("geojson/survey.geojson", "\"remedy\"", "\"remedies\"");
    assertThat(contentFaults())
        .singleElement()
        .asString()
        .startsWith("layer survey has the fields [green_id, ")
        .contains("remedies");
  }

  @Test
  void tellsTruncatedFiles() throws IOException {
    cut("geojson/zone.geojson", 40);
    cut("shapefile/zone.dbf", 5);
    cut("shapefile/green.shp", 100);
    cut("raster/1-e-471d9776_S1_sd.tif", 9);
    cut("mottle.gpkg", 8192);
    List<String> faults = contentFaults();
    for (String path :
        List.of(
            "geojson/zone.geojson",
            "shapefile/zone.dbf",
            "shapefile/green.dbf",
            "mottle.gpkg",
            "raster/1-e-471d9776_S1_sd.tif")) {
      assertThat(faults).anyMatch(fault -> fault.startsWith(path));
    }
  }

  @Test
  void tellsCellsThatWereFilled() throws IOException {
    String path = "raster/1-e-471d9776_S1_cls.tif";
    int last = (int) Files.size(out.resolve(path)) - 1;
    patch(path, last - 2, (byte) 7);
    assertThat(contentFaults())
        .containsExactly(path + ": cells with a value recorded as 5, found 6");
  }

  @Test
  void refusesAFolderWithoutARecord() throws IOException {
    Files.delete(out.resolve("summary.json"));
    assertThatThrownBy(() -> Verification.of(out))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("it is not a delivered folder");
  }

  @Test
  void aDamagedRecordIsNamed() throws IOException {
    for (String text : List.of("{\"files\": {", "[1]", "{\"prov\": {}}", "")) {
      Files.writeString(out.resolve("summary.json"), text);
      assertThatThrownBy(() -> Verification.of(out))
          .as(text)
          .isInstanceOf(UnreadableRecord.class)
          .hasMessageStartingWith(out.resolve("summary.json").toString());
    }
  }

  @Test
  void recordCannotLeadOutOfItsFolder() throws IOException {
    Files.writeString(
        out.resolve("summary.json"), "{\"files\": {\"../secret\": {\"sha256\": \"x\"}}}");
    assertThat(Verification.recorded(out)).containsExactly("summary.json");
  }
}
