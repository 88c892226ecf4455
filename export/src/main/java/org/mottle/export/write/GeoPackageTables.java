package org.mottle.export.write;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.locationtech.jts.geom.Envelope;
import org.mottle.export.crs.Crs;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.Layer;

/** The tables every GeoPackage has, and those of its extensions we use (OGC 12-128r17, annex C). */
final class GeoPackageTables {
  /** "GPKG". */
  static final int APPLICATION_ID = 0x47504B47;

  /** 1.3.0. */
  static final int VERSION = 10300;

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private static final String[] TABLES = {
    """
    CREATE TABLE gpkg_spatial_ref_sys (
      srs_name TEXT NOT NULL,
      srs_id INTEGER NOT NULL PRIMARY KEY,
      organization TEXT NOT NULL,
      organization_coordsys_id INTEGER NOT NULL,
      definition TEXT NOT NULL,
      description TEXT)""",
    """
    CREATE TABLE gpkg_contents (
      table_name TEXT NOT NULL PRIMARY KEY,
      data_type TEXT NOT NULL,
      identifier TEXT UNIQUE,
      description TEXT DEFAULT '',
      last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
      min_x DOUBLE,
      min_y DOUBLE,
      max_x DOUBLE,
      max_y DOUBLE,
      srs_id INTEGER,
      CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""",
    """
    CREATE TABLE gpkg_geometry_columns (
      table_name TEXT NOT NULL,
      column_name TEXT NOT NULL,
      geometry_type_name TEXT NOT NULL,
      srs_id INTEGER NOT NULL,
      z TINYINT NOT NULL,
      m TINYINT NOT NULL,
      CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
      CONSTRAINT uk_gc_table_name UNIQUE (table_name),
      CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
      CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id))""",
    """
    CREATE TABLE gpkg_extensions (
      table_name TEXT,
      column_name TEXT,
      extension_name TEXT NOT NULL,
      definition TEXT NOT NULL,
      scope TEXT NOT NULL,
      CONSTRAINT ge_tce UNIQUE (table_name, column_name, extension_name))""",
    """
    CREATE TABLE gpkg_data_columns (
      table_name TEXT NOT NULL,
      column_name TEXT NOT NULL,
      name TEXT,
      title TEXT,
      description TEXT,
      mime_type TEXT,
      constraint_name TEXT,
      CONSTRAINT pk_gdc PRIMARY KEY (table_name, column_name),
      CONSTRAINT gdc_tn UNIQUE (table_name, name))""",
    """
    CREATE TABLE gpkg_data_column_constraints (
      constraint_name TEXT NOT NULL,
      constraint_type TEXT NOT NULL,
      value TEXT,
      min NUMERIC,
      min_is_inclusive BOOLEAN,
      max NUMERIC,
      max_is_inclusive BOOLEAN,
      description TEXT,
      CONSTRAINT gdcc_ntv UNIQUE (constraint_name, constraint_type, value))"""
  };

  private GeoPackageTables() {}

  static void create(Connection db, Crs crs) throws SQLException {
    try (Statement sql = db.createStatement()) {
      for (String table : TABLES) {
        sql.executeUpdate(table);
      }
    }
    insertSrs(db, "Undefined Cartesian SRS", -1, "NONE", -1, "undefined");
    insertSrs(db, "Undefined geographic SRS", 0, "NONE", 0, "undefined");
    Crs wgs84 = Crs.wgs84();
    insertSrs(db, wgs84.name(), 4326, "EPSG", 4326, wgs84.wkt());
    if (crs.epsg() != 4326) {
      insertSrs(db, crs.name(), crs.epsg(), "EPSG", crs.epsg(), crs.wkt());
    }
    String schema = "http://www.geopackage.org/spec/#extension_schema";
    registerExtension(db, "gpkg_data_columns", null, "gpkg_schema", schema, "read-write");
    registerExtension(
        db, "gpkg_data_column_constraints", null, "gpkg_schema", schema, "read-write");
  }

  private static void insertSrs(
      Connection db, String name, int id, String organization, int code, String definition)
      throws SQLException {
    update(
        db,
        "INSERT INTO gpkg_spatial_ref_sys VALUES (?,?,?,?,?,NULL)",
        name,
        id,
        organization,
        code,
        definition);
  }

  /** Enters a table in the contents; an extent only for features, and only when there are any. */
  static void register(Connection db, Layer layer, Crs crs, Instant changed, Envelope extent)
      throws SQLException {
    boolean features = !layer.isTable();
    boolean box = features && !extent.isNull();
    update(
        db,
        "INSERT INTO gpkg_contents VALUES (?,?,?,?,?,?,?,?,?,?)",
        layer.name(),
        features ? "features" : "attributes",
        layer.name(),
        layer.meaning(),
        TIME.format(changed),
        box ? extent.getMinX() : null,
        box ? extent.getMinY() : null,
        box ? extent.getMaxX() : null,
        box ? extent.getMaxY() : null,
        features ? crs.epsg() : null);
    if (features) {
      update(
          db,
          "INSERT INTO gpkg_geometry_columns VALUES (?,'geom',?,?,0,0)",
          layer.name(),
          GeometryBlob.type(layer),
          crs.epsg());
    }
  }

  /** Name and unit as the title, meaning as the description of every field. */
  static void describe(Connection db, Layer layer) throws SQLException {
    try (PreparedStatement sql =
        db.prepareStatement("INSERT INTO gpkg_data_columns VALUES (?,?,?,?,?,NULL,NULL)")) {
      for (Field field : layer.fields()) {
        String title = field.unit().isEmpty() ? field.name() : field.name() + ", " + field.unit();
        sql.setString(1, layer.name());
        sql.setString(2, field.name());
        sql.setString(3, field.name());
        sql.setString(4, title);
        sql.setString(5, field.meaning());
        sql.executeUpdate();
      }
    }
  }

  /** Enters a table that is no layer of ours. */
  static void registerAttributes(Connection db, String table, String meaning, Instant changed)
      throws SQLException {
    update(
        db,
        "INSERT INTO gpkg_contents VALUES (?,'attributes',?,?,?,NULL,NULL,NULL,NULL,NULL)",
        table,
        table,
        meaning,
        time(changed));
  }

  /** ISO 8601 in UTC with milliseconds, as every time in the file. */
  static String time(Instant instant) {
    return TIME.format(instant);
  }

  static void registerExtension(
      Connection db, String table, String column, String name, String definition, String scope)
      throws SQLException {
    update(
        db,
        "INSERT INTO gpkg_extensions VALUES (?,?,?,?,?)",
        table,
        column,
        name,
        definition,
        scope);
  }

  private static void update(Connection db, String statement, Object... values)
      throws SQLException {
    try (PreparedStatement sql = db.prepareStatement(statement)) {
      for (int i = 0; i < values.length; i++) {
        sql.setObject(i + 1, values[i]);
      }
      sql.executeUpdate();
    }
  }
}
