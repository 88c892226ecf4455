package org.mottle.export.write;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.schema.LayerData;

/**
 * R-tree of a feature table with the triggers that keep it right when others edit the file (OGC
 * 12-128r17, annex F.3, extension gpkg_rtree_index). The triggers call functions that only
 * GeoPackage software has, so they are made when the table is full.
 */
final class GeoPackageIndex {
  private static final String INSERT =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_insert" AFTER INSERT ON "%1$s"
      WHEN (NEW."%2$s" NOT NULL AND NOT ST_IsEmpty(NEW."%2$s"))
      BEGIN
        INSERT OR REPLACE INTO "rtree_%1$s_%2$s" VALUES (NEW."fid",
          ST_MinX(NEW."%2$s"), ST_MaxX(NEW."%2$s"), ST_MinY(NEW."%2$s"), ST_MaxY(NEW."%2$s"));
      END""";
  private static final String UPDATE_GEOMETRY =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_update1" AFTER UPDATE OF "%2$s" ON "%1$s"
      WHEN OLD."fid" = NEW."fid" AND (NEW."%2$s" NOTNULL AND NOT ST_IsEmpty(NEW."%2$s"))
      BEGIN
        INSERT OR REPLACE INTO "rtree_%1$s_%2$s" VALUES (NEW."fid",
          ST_MinX(NEW."%2$s"), ST_MaxX(NEW."%2$s"), ST_MinY(NEW."%2$s"), ST_MaxY(NEW."%2$s"));
      END""";
  private static final String UPDATE_TO_EMPTY =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_update2" AFTER UPDATE OF "%2$s" ON "%1$s"
      WHEN OLD."fid" = NEW."fid" AND (NEW."%2$s" ISNULL OR ST_IsEmpty(NEW."%2$s"))
      BEGIN
        DELETE FROM "rtree_%1$s_%2$s" WHERE id = OLD."fid";
      END""";
  private static final String UPDATE_ID =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_update3" AFTER UPDATE ON "%1$s"
      WHEN OLD."fid" != NEW."fid" AND (NEW."%2$s" NOTNULL AND NOT ST_IsEmpty(NEW."%2$s"))
      BEGIN
        DELETE FROM "rtree_%1$s_%2$s" WHERE id = OLD."fid";
        INSERT OR REPLACE INTO "rtree_%1$s_%2$s" VALUES (NEW."fid",
          ST_MinX(NEW."%2$s"), ST_MaxX(NEW."%2$s"), ST_MinY(NEW."%2$s"), ST_MaxY(NEW."%2$s"));
      END""";
  private static final String UPDATE_ID_AND_EMPTY =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_update4" AFTER UPDATE ON "%1$s"
      WHEN OLD."fid" != NEW."fid" AND (NEW."%2$s" ISNULL OR ST_IsEmpty(NEW."%2$s"))
      BEGIN
        DELETE FROM "rtree_%1$s_%2$s" WHERE id IN (OLD."fid", NEW."fid");
      END""";
  private static final String DELETE =
      """
      CREATE TRIGGER "rtree_%1$s_%2$s_delete" AFTER DELETE ON "%1$s"
      WHEN OLD."%2$s" NOT NULL
      BEGIN
        DELETE FROM "rtree_%1$s_%2$s" WHERE id = OLD."fid";
      END""";
  private static final String[] TRIGGERS = {
    INSERT, UPDATE_GEOMETRY, UPDATE_TO_EMPTY, UPDATE_ID, UPDATE_ID_AND_EMPTY, DELETE
  };

  private GeoPackageIndex() {}

  static void create(Connection db, LayerData data, String column) throws SQLException {
    String table = data.layer().name();
    String index = "rtree_" + table + "_" + column;
    try (Statement sql = db.createStatement()) {
      sql.executeUpdate(
          "CREATE VIRTUAL TABLE \"" + index + "\" USING rtree(id, minx, maxx, miny, maxy)");
      fill(db, data, index);
      for (String trigger : TRIGGERS) {
        sql.executeUpdate(String.format(trigger, table, column));
      }
    }
    GeoPackageTables.registerExtension(
        db,
        table,
        column,
        "gpkg_rtree_index",
        "http://www.geopackage.org/spec120/#extension_rtree",
        "write-only");
  }

  private static void fill(Connection db, LayerData data, String index) throws SQLException {
    try (PreparedStatement insert =
        db.prepareStatement("INSERT INTO \"" + index + "\" VALUES (?,?,?,?,?)")) {
      for (int i = 0; i < data.rows().size(); i++) {
        Geometry geometry = data.rows().get(i).geometry();
        if (geometry != null) {
          Envelope box = geometry.getEnvelopeInternal();
          insert.setInt(1, i + 1);
          insert.setDouble(2, box.getMinX());
          insert.setDouble(3, box.getMaxX());
          insert.setDouble(4, box.getMinY());
          insert.setDouble(5, box.getMaxY());
          insert.executeUpdate();
        }
      }
    }
  }
}
