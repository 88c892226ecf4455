package org.mottle.export.write;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.mottle.export.schema.Layer;
import org.mottle.export.style.LayerStyle;
import org.mottle.export.style.LayerStyles;
import org.mottle.export.style.Qml;
import org.mottle.export.style.Sld;

/**
 * The table {@code layer_styles}, in which QGIS and others look for the default style of a layer; a
 * custom of theirs, not part of the GeoPackage standard.
 */
final class GeoPackageStyles {
  static final String TABLE = "layer_styles";

  private static final String COLUMNS =
      """
      CREATE TABLE layer_styles (
        id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
        f_table_catalog TEXT(256),
        f_table_schema TEXT(256),
        f_table_name TEXT(256),
        f_geometry_column TEXT(256),
        styleName TEXT(30),
        styleQML TEXT,
        styleSLD TEXT,
        useAsDefault BOOLEAN,
        description TEXT,
        owner TEXT(30),
        ui TEXT(30),
        update_time DATETIME)""";

  private GeoPackageStyles() {}

  /** Makes the table with a row for every layer that has a style, each the layer's default. */
  static void create(Connection db, List<Layer> layers, Instant changed) throws SQLException {
    try (Statement sql = db.createStatement()) {
      sql.executeUpdate(COLUMNS);
    }
    GeoPackageTables.registerAttributes(db, TABLE, "how the layers are drawn", changed);
    // empty texts, not nulls: QGIS looks for them so
    try (PreparedStatement insert =
        db.prepareStatement(
            "INSERT INTO layer_styles VALUES (NULL,'','',?,'geom',?,?,?,1,?,'',NULL,?)")) {
      for (Layer layer : layers) {
        Optional<LayerStyle> style = LayerStyles.of(layer);
        if (style.isPresent()) {
          insert.setString(1, layer.name());
          insert.setString(2, layer.name());
          insert.setString(3, Qml.of(style.get()));
          insert.setString(4, Sld.of(style.get()));
          insert.setString(5, layer.meaning() + "; " + style.get().source());
          insert.setString(6, GeoPackageTables.time(changed));
          insert.executeUpdate();
        }
      }
    }
  }
}
