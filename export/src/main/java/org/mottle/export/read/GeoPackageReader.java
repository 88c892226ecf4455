package org.mottle.export.read;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.sqlite.SQLiteConfig;

/**
 * One layer or attribute table of an OGC GeoPackage, opened read-only. Features are numbered by
 * their primary key, which is what other software shows.
 */
final class GeoPackageReader {
  private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private final Path path;
  private final String file;
  private final InputOptions options;
  private final String wanted;
  private final String usual;
  private final Problems problems = new Problems();
  private final List<String> notes = new ArrayList<>();

  private record Layer(String table, String geometry, int srs) {}

  /**
   * @param wanted the layer the user named; empty when none
   * @param usual the layer to take of several when none is named; may be empty
   */
  GeoPackageReader(Path path, InputOptions options, String wanted, String usual) {
    this.path = path;
    this.file = path.getFileName().toString();
    this.options = options;
    this.wanted = wanted;
    this.usual = usual;
  }

  FeatureTable read() throws IOException {
    requireWhole();
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    try (Connection connection = config.createConnection("jdbc:sqlite:" + path.toAbsolutePath())) {
      return read(connection);
    } catch (SQLException e) {
      throw new InputRefused(
          "%s cannot be read as a GeoPackage (%s)".formatted(file, plain(e.getMessage())));
    }
  }

  private static String plain(String message) {
    return message == null ? "unknown fault" : message.replaceAll("\\s+", " ");
  }

  /** The header of the file says how long it must be. */
  private void requireWhole() throws IOException {
    byte[] head;
    try (InputStream in = Files.newInputStream(path)) {
      head = in.readNBytes(100);
    }
    if (head.length < 100 || !java.util.Arrays.equals(head, 0, 16, SQLITE, 0, 16)) {
      throw new InputRefused("%s is not a GeoPackage: it does not start as one".formatted(file));
    }
    ByteBuffer header = ByteBuffer.wrap(head);
    int page = header.getShort(16) & 0xFFFF;
    long expected = (page == 1 ? 65536L : page) * (header.getInt(28) & 0xFFFFFFFFL);
    long actual = Files.size(path);
    boolean lengthIsCurrent = header.getInt(24) == header.getInt(92);
    if (lengthIsCurrent && actual < expected) {
      throw new InputRefused(
          "%s is cut off: %d of its %d bytes are there; copy it again"
              .formatted(file, actual, expected));
    }
  }

  private FeatureTable read(Connection connection) throws SQLException {
    if (!hasTable(connection, "gpkg_contents")) {
      throw new InputRefused(
          "%s is a database but not a GeoPackage: it has no gpkg_contents".formatted(file));
    }
    Layer layer = layer(connection);
    String name = file + "#" + layer.table();
    FeatureTable table = rows(connection, layer, name);
    problems.require(!table.rows().isEmpty(), "%s holds no features", name);
    problems.throwIfAny();
    return table;
  }

  private static boolean hasTable(Connection connection, String table) throws SQLException {
    String sql = "SELECT 1 FROM sqlite_master WHERE type IN ('table', 'view') AND name = ?";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, table);
      try (ResultSet row = statement.executeQuery()) {
        return row.next();
      }
    }
  }

  private Layer layer(Connection connection) throws SQLException {
    List<Layer> layers = new ArrayList<>();
    String columns =
        hasTable(connection, "gpkg_geometry_columns")
            ? "SELECT c.table_name, g.column_name, g.srs_id FROM gpkg_contents c LEFT JOIN"
                + " gpkg_geometry_columns g ON g.table_name = c.table_name"
            : "SELECT c.table_name, NULL, 0 FROM gpkg_contents c";
    String sql =
        columns
            + " WHERE c.data_type IN ('features', 'attributes', 'aspatial')"
            + " ORDER BY c.table_name";
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      while (row.next()) {
        layers.add(new Layer(row.getString(1), row.getString(2), row.getInt(3)));
      }
    }
    return choose(layers);
  }

  private Layer choose(List<Layer> layers) {
    List<String> names = layers.stream().map(Layer::table).toList();
    if (!wanted.isEmpty()) {
      return layers.stream()
          .filter(l -> l.table().equals(wanted))
          .findFirst()
          .orElseThrow(
              () ->
                  new InputRefused(
                      "%s has no layer '%s'; its layers are %s"
                          .formatted(file, wanted, Problems.listed(names))));
    }
    List<Layer> features = layers.stream().filter(l -> l.geometry() != null).toList();
    if (features.size() == 1) {
      return features.get(0);
    }
    if (features.isEmpty()) {
      throw new InputRefused("%s holds no layer of features".formatted(file));
    }
    return features.stream()
        .filter(l -> l.table().equals(usual))
        .findFirst()
        .orElseThrow(
            () ->
                new InputRefused(
                    "%s has several layers (%s); name one, like %s#%s"
                        .formatted(
                            file,
                            Problems.listed(features.stream().map(Layer::table).toList()),
                            file,
                            features.get(0).table())));
  }

  private FeatureTable rows(Connection connection, Layer layer, String name) throws SQLException {
    Optional<Crs> crs =
        layer.geometry() == null ? Optional.empty() : crs(connection, layer.srs(), name);
    List<String> headings = new ArrayList<>();
    List<FeatureTable.Row> rows = new ArrayList<>();
    String quoted = "\"" + layer.table().replace("\"", "\"\"") + "\"";
    String key = primaryKey(connection, quoted);
    String order = key.isEmpty() ? "" : " ORDER BY \"" + key.replace("\"", "\"\"") + "\"";
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT * FROM " + quoted + order)) {
      ResultSetMetaData meta = row.getMetaData();
      List<Integer> shown = new ArrayList<>();
      int geometry = -1;
      int id = -1;
      for (int i = 1; i <= meta.getColumnCount(); i++) {
        if (meta.getColumnName(i).equalsIgnoreCase(layer.geometry())) {
          geometry = i;
        } else if (meta.getColumnName(i).equals(key)) {
          id = i;
        } else {
          shown.add(i);
          headings.add(meta.getColumnName(i));
        }
      }
      while (row.next()) {
        int number = id < 0 ? rows.size() + 1 : row.getInt(id);
        List<Object> values = new ArrayList<>();
        for (int i : shown) {
          values.add(cell(row.getObject(i)));
        }
        Geometry g = geometry < 0 ? null : geometry(row.getBytes(geometry), name, number);
        rows.add(new FeatureTable.Row(number, g, values));
      }
    }
    return new FeatureTable(
        new FeatureTable.Origin(name, "feature", false), headings, rows, crs, notes);
  }

  private static Object cell(Object value) {
    return value instanceof byte[] bytes ? bytes.length + " bytes" : value;
  }

  private static String primaryKey(Connection connection, String quoted) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA table_info(" + quoted + ")")) {
      while (row.next()) {
        if (row.getInt("pk") == 1
            && row.getString("type").toUpperCase(Locale.ROOT).contains("INT")) {
          return row.getString("name");
        }
      }
      return "";
    }
  }

  private Geometry geometry(byte[] blob, String name, int number) {
    if (blob == null) {
      return null;
    }
    try {
      return GeoPackageBlob.geometry(blob);
    } catch (ParseException | IllegalArgumentException e) {
      problems.add(
          "%s, feature %d: its geometry cannot be read (%s)", name, number, plain(e.getMessage()));
      return null;
    }
  }

  private Optional<Crs> crs(Connection connection, int srs, String name) throws SQLException {
    String sql =
        "SELECT organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys"
            + " WHERE srs_id = ?";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setInt(1, srs);
      try (ResultSet row = statement.executeQuery()) {
        Optional<Crs> own =
            row.next() && srs > 0
                ? Optional.of(
                    GivenCrs.described(
                        name,
                        "EPSG".equalsIgnoreCase(row.getString(1))
                            ? "EPSG:" + row.getInt(2)
                            : row.getString(3)))
                : Optional.empty();
        return Optional.of(
            GivenCrs.choose(name, own, options, notes)
                .orElseThrow(() -> GivenCrs.missing(name, "names no CRS")));
      }
    }
  }
}
