package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

class GeoPackageWriterTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void write() throws IOException {
    file = folder.resolve("mottle.gpkg");
    new GeoPackageWriter(Examples.CRS, Examples.provenance()).write(file, Examples.layers());
  }

  private List<List<Object>> query(String sql) throws SQLException {
    try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = db.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      List<List<Object>> found = new ArrayList<>();
      while (rows.next()) {
        List<Object> row = new ArrayList<>();
        for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
          row.add(rows.getObject(i));
        }
        found.add(row);
      }
      return found;
    }
  }

  /**
   * OGC 12-128r17, clause 2.1.3: GP, version 0, flags 1, srs, then WKB; computed with GDAL 3.6.2.
   */
  @Test
  void pointBlobIsTheOneOthersWrite() {
    Geometry point = new GeometryFactory().createPoint(new Coordinate(500_000, 5_780_000));
    assertThat(HexFormat.of().formatHex(GeometryBlob.of(point, 32630)))
        .isEqualTo("47500001767f000001010000000000000080841e4100000000880c5641");
  }

  @Test
  void identifiesItselfAndIsSound() throws SQLException {
    assertThat(query("PRAGMA application_id")).containsExactly(List.of(0x47504B47));
    assertThat(query("PRAGMA user_version")).containsExactly(List.of(10300));
    assertThat(query("PRAGMA integrity_check")).containsExactly(List.of("ok"));
    assertThat(query("PRAGMA foreign_key_check")).isEmpty();
    assertThat(query("PRAGMA journal_mode")).containsExactly(List.of("delete"));
    assertThat(query("SELECT srs_id FROM gpkg_spatial_ref_sys ORDER BY srs_id"))
        .containsExactly(List.of(-1), List.of(0), List.of(4326), List.of(32628));
  }

  @Test
  void valuesComeBack() throws SQLException {
    List<List<Object>> rows = query("SELECT fid, txt, n, v, day FROM odd");
    assertThat(rows.get(0))
        .containsExactly(1, Examples.LETTERS, 1234567890123L, 17.12345, "2031-02-28");
    assertThat(rows.get(1)).isEqualTo(Arrays.asList(2, null, null, null, null));
    assertThat(rows.get(2)).isEqualTo(Arrays.asList(3, Examples.LONG_TEXT, -1, -0.0004, null));
  }

  @Test
  void geometriesComeBack() throws SQLException, ParseException {
    List<List<Object>> rows = query("SELECT geom FROM odd");
    byte[] blob = (byte[]) rows.get(1).get(0);
    Geometry read = new WKBReader().read(Arrays.copyOfRange(blob, 40, blob.length));
    assertThat(read.equalsExact(Examples.partInHole())).isTrue();
    byte[] single = (byte[]) rows.get(0).get(0);
    Geometry hole = new WKBReader().read(Arrays.copyOfRange(single, 40, single.length));
    assertThat(hole.getGeometryType()).isEqualTo("MultiPolygon");
    assertThat(hole.getGeometryN(0).equalsExact(Examples.withHole())).isTrue();
    assertThat(rows.get(2)).containsOnlyNulls();
    assertThat(rows.get(3)).containsOnlyNulls();
  }

  @Test
  void stylesAreDefaultsAndCarryTheTimeOfTheRun() throws SQLException {
    assertThat(
            query(
                "SELECT DISTINCT f_table_catalog, f_table_schema, f_geometry_column, useAsDefault,"
                    + " update_time = (SELECT last_change FROM gpkg_contents"
                    + " WHERE table_name = 'zone') FROM layer_styles"))
        .containsExactly(List.of("", "", "geom", 1, 1));
    assertThat(query("SELECT f_table_name FROM layer_styles WHERE f_table_name = 'zone'"))
        .hasSize(1);
    assertThat(
            query(
                "SELECT data_type FROM gpkg_contents WHERE table_name IN"
                    + " ('layer_styles', 'name_dict')"))
        .containsExactly(List.of("attributes"), List.of("attributes"));
    assertThat(query("SELECT type, unit FROM name_dict WHERE layer = 'zone' AND field = 'area_m2'"))
        .containsExactly(List.of("number", "m²"));
  }

  @Test
  void contentsHaveExtentAndTheTimeOfTheRun() throws SQLException {
    assertThat(
            query(
                "SELECT min_x, max_y, last_change, data_type FROM gpkg_contents"
                    + " WHERE table_name = 'green'"))
        .containsExactly(
            List.of(Examples.EAST, Examples.NORTH + 20, "2031-05-02T06:07:08.912Z", "features"));
    assertThat(query("SELECT min_x, srs_id FROM gpkg_contents WHERE table_name = 'patch'"))
        .containsExactly(Arrays.asList(null, 32628));
    assertThat(query("SELECT data_type, srs_id FROM gpkg_contents WHERE table_name = 'even'"))
        .containsExactly(Arrays.asList("attributes", null));
  }

  @Test
  void indexHoldsEveryPlacedFeature() throws SQLException {
    assertThat(query("SELECT id FROM rtree_reading_geom ORDER BY id")).hasSize(6);
    assertThat(
            query(
                "SELECT count(*) FROM sqlite_master WHERE type = 'trigger'"
                    + " AND tbl_name = 'reading'"))
        .containsExactly(List.of(6));
    assertThat(query("SELECT id FROM rtree_odd_geom WHERE minx <= 500165 AND maxx >= 500165"))
        .containsExactly(List.of(2));
  }

  @Test
  void fieldsSayTheirUnitAndMeaning() throws SQLException {
    assertThat(
            query(
                "SELECT title, description FROM gpkg_data_columns"
                    + " WHERE table_name = 'green' AND column_name = 'area_m2'"))
        .containsExactly(List.of("area_m2, m²", "area"));
  }

  @Test
  void sameRowsSameBytesAndOneFile() throws IOException {
    byte[] first = Files.readAllBytes(file);
    write();
    assertThat(Files.readAllBytes(file)).isEqualTo(first);
    assertThat(folder.toFile().list()).containsExactly("mottle.gpkg");
  }
}
