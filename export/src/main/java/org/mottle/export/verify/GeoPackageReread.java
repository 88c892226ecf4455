package org.mottle.export.verify;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygonal;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/** Reads every layer and table of a GeoPackage and measures it; the file is opened read-only. */
final class GeoPackageReread {
  private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};

  private static final String STYLES = "layer_styles";
  private static final String NAMES = "name_dict";

  /** Tables that are about the layers, and no layers. */
  private static final Set<String> BESIDE = Set.of(STYLES, NAMES);

  private final Map<String, String> qml = new TreeMap<>();
  private final Map<String, String> sld = new TreeMap<>();
  private final List<Reread> layers = new ArrayList<>();
  private final List<String> faults = new ArrayList<>();

  private GeoPackageReread() {}

  static GeoPackageReread of(Path file, int epsg) throws IOException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    GeoPackageReread reread = new GeoPackageReread();
    try (Connection db = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        Statement sql = db.createStatement()) {
      reread.contents(db, sql, epsg);
      return reread;
    } catch (SQLException | ParseException e) {
      throw new IOException("does not read back: " + e.getMessage(), e);
    }
  }

  List<Reread> layers() {
    return layers;
  }

  /** QML of the layers that have a default style, by their names. */
  Map<String, String> qml() {
    return qml;
  }

  /** SLD of the same. */
  Map<String, String> sld() {
    return sld;
  }

  /** What is wrong with the file by itself. */
  List<String> faults() {
    return faults;
  }

  private void contents(Connection db, Statement sql, int epsg)
      throws SQLException, ParseException {
    List<String> features = new ArrayList<>();
    List<String> tables = new ArrayList<>();
    Set<String> beside = new TreeSet<>();
    try (ResultSet row =
        sql.executeQuery("SELECT table_name, data_type, srs_id FROM gpkg_contents")) {
      while (row.next()) {
        String name = row.getString(1);
        String type = row.getString(2);
        if (type.equals("features")) {
          features.add(name);
          if (row.getInt(3) != epsg) {
            faults.add("table " + name + " is in srs " + row.getInt(3) + ", not EPSG:" + epsg);
          }
        } else if (type.equals("attributes") && !BESIDE.contains(name)) {
          tables.add(name);
        } else if (type.equals("attributes")) {
          beside.add(name);
        }
      }
    }
    for (String name : features) {
      layers.add(layer(db, name, "geom"));
      compareIndex(sql, name);
    }
    for (String name : tables) {
      layers.add(layer(db, name, null));
    }
    // earlier versions wrote neither
    if (beside.contains(STYLES)) {
      styles(sql, features);
    }
    if (beside.contains(NAMES)) {
      names(sql);
    }
  }

  private void styles(Statement sql, List<String> features) throws SQLException {
    try (ResultSet row =
        sql.executeQuery("SELECT f_table_name, styleQML, styleSLD FROM " + STYLES)) {
      while (row.next()) {
        String name = row.getString(1);
        if (!features.contains(name)) {
          faults.add("there is a style of " + name + ", which is no layer");
        }
        style(name, row.getString(2), StyleReread.QML_ROOT, qml);
        style(name, row.getString(3), StyleReread.SLD_ROOT, sld);
      }
    }
  }

  private void style(String name, String style, String root, Map<String, String> kept) {
    kept.put(name, style);
    try {
      StyleReread.check(style == null ? "" : style, root);
    } catch (IOException e) {
      faults.add("the " + root + " of " + name + " " + e.getMessage());
    }
  }

  /** Every field has a meaning, and nothing else has one. */
  private void names(Statement sql) throws SQLException {
    Map<String, List<String>> named = new TreeMap<>();
    try (ResultSet row =
        sql.executeQuery("SELECT layer, field, meaning FROM " + NAMES + " ORDER BY fid")) {
      while (row.next()) {
        if (row.getString(3) != null) {
          named.computeIfAbsent(row.getString(1), l -> new ArrayList<>()).add(row.getString(2));
        }
      }
    }
    for (Reread layer : layers) {
      List<String> told = named.remove(layer.layer());
      if (!layer.fields().equals(told)) {
        faults.add(
            NAMES
                + " tells of the fields "
                + told
                + " of "
                + layer.layer()
                + ", which has "
                + layer.fields());
      }
    }
    named.keySet().forEach(l -> faults.add(NAMES + " tells of " + l + ", which is not there"));
  }

  private void compareIndex(Statement sql, String name) throws SQLException {
    long indexed;
    try (ResultSet count = sql.executeQuery("SELECT count(*) FROM \"rtree_" + name + "_geom\"")) {
      indexed = count.getLong(1);
    }
    long placed = layers.get(layers.size() - 1).placed();
    if (indexed != placed) {
      faults.add(
          "the index of " + name + " has " + indexed + " entries for " + placed + " features");
    }
  }

  private static Reread layer(Connection db, String name, String geometryColumn)
      throws SQLException, ParseException {
    List<String> fields = new ArrayList<>();
    try (Statement sql = db.createStatement()) {
      try (ResultSet column = sql.executeQuery("PRAGMA table_info(\"" + name + "\")")) {
        while (column.next()) {
          fields.add(column.getString("name"));
        }
      }
      fields.remove("fid");
      fields.remove(geometryColumn);
      if (geometryColumn == null) {
        try (ResultSet count = sql.executeQuery("SELECT count(*) FROM \"" + name + "\"")) {
          return new Reread(name, count.getLong(1), 0, 0, fields);
        }
      }
      return measured(sql, name, geometryColumn, fields);
    }
  }

  private static Reread measured(
      Statement sql, String name, String geometryColumn, List<String> fields)
      throws SQLException, ParseException {
    WKBReader wkb = new WKBReader();
    long rows = 0;
    long placed = 0;
    double measure = 0;
    try (ResultSet row =
        sql.executeQuery("SELECT \"" + geometryColumn + "\" FROM \"" + name + "\"")) {
      while (row.next()) {
        rows++;
        byte[] blob = row.getBytes(1);
        if (blob != null) {
          placed++;
          Geometry geometry = wkb.read(body(blob));
          measure += geometry instanceof Polygonal ? geometry.getArea() : geometry.getLength();
        }
      }
    }
    return new Reread(name, rows, placed, measure, fields);
  }

  private static byte[] body(byte[] blob) throws ParseException {
    if (blob.length < 8 || blob[0] != 'G' || blob[1] != 'P') {
      throw new ParseException("a geometry does not start with GP");
    }
    int envelope = blob[3] >> 1 & 0b111;
    if (envelope >= ENVELOPE_BYTES.length) {
      throw new ParseException("a geometry has the unknown envelope code " + envelope);
    }
    ByteBuffer buffer = ByteBuffer.wrap(blob).order(ByteOrder.LITTLE_ENDIAN);
    byte[] body = new byte[blob.length - 8 - ENVELOPE_BYTES[envelope]];
    buffer.position(8 + ENVELOPE_BYTES[envelope]);
    buffer.get(body);
    return body;
  }
}
