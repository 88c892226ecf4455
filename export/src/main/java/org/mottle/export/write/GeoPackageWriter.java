package org.mottle.export.write;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;
import org.mottle.export.record.Provenance;
import org.mottle.export.schema.DataDictionary;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.FieldType;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.LayerData;
import org.sqlite.SQLiteConfig;

/**
 * Every layer and table to one GeoPackage (OGC 12-128r17, version 1.3) in the working CRS. Lines
 * and areas are stored as multi-geometries, so that a table has one type. Numbers keep every digit.
 *
 * <p>Features go in first, then extent, R-tree (annex F.3) and its triggers, all in one transaction
 * with a rollback journal: one file is left, and no reader sees a half-filled index. Field units
 * and meanings are in {@code gpkg_data_columns} (annex F.9) and, for those who read tables, in
 * {@code name_dict}; how layers are drawn is in {@code layer_styles}. The time stamps are those of
 * the record of the run, so the same rows give the same bytes.
 *
 * <p>Stateless but for what it is given.
 */
public final class GeoPackageWriter {
  private static final String GEOMETRY = "geom";

  private final Crs crs;
  private final Provenance provenance;

  public GeoPackageWriter(Crs crs, Provenance provenance) {
    this.crs = crs;
    this.provenance = provenance;
  }

  /**
   * Loads the native database library, about 0.1 s in a fresh process; worth starting on another
   * thread while there is nothing to write yet.
   */
  public static void warmUp() {
    try {
      org.sqlite.SQLiteJDBCLoader.initialize();
    } catch (Exception e) {
      throw new IllegalStateException("the SQLite library cannot be loaded: " + e.getMessage(), e);
    }
  }

  /** Writes or replaces the file. */
  public void write(Path file, List<LayerData> layers) throws IOException {
    Files.deleteIfExists(file);
    try (Connection db = open(file)) {
      db.setAutoCommit(false);
      GeoPackageTables.create(db, crs);
      for (LayerData data : layers) {
        if (data.layer().isTable()) {
          table(db, data);
        } else {
          layer(db, data);
        }
        GeoPackageTables.describe(db, data.layer());
      }
      List<Layer> all = layers.stream().map(LayerData::layer).toList();
      LayerData names = DataDictionary.table(all);
      table(db, names);
      GeoPackageTables.describe(db, names.layer());
      GeoPackageStyles.create(db, all, provenance.utc());
      db.commit();
    } catch (SQLException e) {
      throw new IOException(file.getFileName() + ": " + e.getMessage(), e);
    }
  }

  private static Connection open(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setPageSize(4096);
    config.setApplicationId(GeoPackageTables.APPLICATION_ID);
    config.setUserVersion(GeoPackageTables.VERSION);
    config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
    // the file is moved into place only when it is complete: no need to wait for the disk
    config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
    return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
  }

  private void table(Connection db, LayerData data) throws SQLException {
    createTable(db, data.layer(), "");
    insertRows(db, data, false);
    GeoPackageTables.register(db, data.layer(), crs, provenance.utc(), null);
  }

  private void layer(Connection db, LayerData data) throws SQLException {
    createTable(db, data.layer(), ", \"" + GEOMETRY + "\" " + GeometryBlob.type(data.layer()));
    insertRows(db, data, true);
    Envelope extent = new Envelope();
    for (FeatureRow row : data.rows()) {
      if (row.geometry() != null) {
        extent.expandToInclude(row.geometry().getEnvelopeInternal());
      }
    }
    GeoPackageTables.register(db, data.layer(), crs, provenance.utc(), extent);
    GeoPackageIndex.create(db, data, GEOMETRY);
  }

  private static void createTable(Connection db, Layer layer, String geometryColumn)
      throws SQLException {
    String columns =
        layer.fields().stream()
            .map(f -> ", \"" + f.name() + "\" " + sqlType(f))
            .collect(Collectors.joining());
    try (Statement sql = db.createStatement()) {
      sql.executeUpdate(
          "CREATE TABLE \""
              + layer.name()
              + "\" (\"fid\" INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL"
              + geometryColumn
              + columns
              + ")");
    }
  }

  private static String sqlType(Field field) {
    return switch (field.type()) {
      case TEXT -> "TEXT";
      case INTEGER -> "INTEGER";
      case REAL -> "REAL";
      case DATE -> "DATE";
    };
  }

  private void insertRows(Connection db, LayerData data, boolean spatial) throws SQLException {
    List<Field> fields = data.layer().fields();
    int columns = fields.size() + (spatial ? 2 : 1);
    String marks = IntStream.range(0, columns).mapToObj(i -> "?").collect(Collectors.joining(","));
    try (PreparedStatement insert =
        db.prepareStatement("INSERT INTO \"" + data.layer().name() + "\" VALUES (" + marks + ")")) {
      for (int i = 0; i < data.rows().size(); i++) {
        FeatureRow row = data.rows().get(i);
        int column = 1;
        insert.setInt(column++, i + 1);
        if (spatial) {
          Geometry g = row.geometry();
          insert.setBytes(column++, g == null ? null : GeometryBlob.of(g, crs.epsg()));
        }
        for (int f = 0; f < fields.size(); f++) {
          bind(insert, column++, fields.get(f).type(), row.value(f));
        }
        insert.executeUpdate();
      }
    }
  }

  private static void bind(PreparedStatement insert, int column, FieldType type, Object value)
      throws SQLException {
    if (value == null) {
      insert.setObject(column, null);
    } else if (type == FieldType.REAL) {
      insert.setDouble(column, (Double) value);
    } else if (type == FieldType.INTEGER) {
      insert.setLong(column, (Long) value);
    } else {
      insert.setString(column, value.toString());
    }
  }
}
