package org.mottle.export.crs;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.geotools.referencing.factory.epsg.hsql.ThreadedHsqlEpsgFactory;
import org.mottle.export.problem.InputRefused;

/**
 * Looks into the tables of the EPSG data set for the systems a description may mean: all of its
 * method, or all geographic ones. A tenth of a second once the data set is open; GeoTools' own look
 * up by description builds every system first and takes minutes.
 */
final class EpsgTables {
  private static final String ELLIPSOID =
      " e.semi_major_axis, e.inv_flattening, e.semi_minor_axis, eu.factor_b, eu.factor_c,"
          + " pm.greenwich_longitude, pm.uom_code";
  private static final String JOINS =
      " JOIN epsg_datum d ON d.datum_code = b.datum_code"
          // an ensemble has the ellipsoid of its members
          + " LEFT JOIN epsg_datumensemblemember m ON m.datum_ensemble_code = d.datum_code"
          + " AND m.datum_sequence = 1"
          + " JOIN epsg_datum f ON f.datum_code = COALESCE(m.datum_code, d.datum_code)"
          + " JOIN epsg_ellipsoid e ON e.ellipsoid_code = f.ellipsoid_code"
          + " JOIN epsg_unitofmeasure eu ON eu.uom_code = e.uom_code"
          + " JOIN epsg_primemeridian pm ON pm.prime_meridian_code = f.prime_meridian_code";
  private static final String GEOGRAPHIC =
      "SELECT b.coord_ref_sys_code, b.coord_ref_sys_name, b.deprecated, b.coord_ref_sys_code,"
          + " b.coord_ref_sys_name, d.datum_code, d.datum_name,"
          + ELLIPSOID
          + " FROM epsg_coordinatereferencesystem b"
          + JOINS
          + " WHERE b.coord_ref_sys_kind = 'geographic 2D'";
  private static final String PROJECTED =
      "SELECT c.coord_ref_sys_code, c.coord_ref_sys_name, c.deprecated, b.coord_ref_sys_code,"
          + " b.coord_ref_sys_name, d.datum_code, d.datum_name,"
          + ELLIPSOID
          + ", v.parameter_code, v.parameter_value, v.uom_code, pu.factor_b, pu.factor_c,"
          + " au.factor_b, au.factor_c"
          + " FROM epsg_coordinatereferencesystem c"
          + " JOIN epsg_coordoperation o ON o.coord_op_code = c.projection_conv_code"
          + " JOIN epsg_coordoperationparamvalue v ON v.coord_op_code = o.coord_op_code"
          + " JOIN epsg_unitofmeasure pu ON pu.uom_code = v.uom_code"
          + " JOIN epsg_coordinateaxis a ON a.coord_sys_code = c.coord_sys_code"
          + " AND a.coord_axis_order = 1"
          + " JOIN epsg_unitofmeasure au ON au.uom_code = a.uom_code"
          + " JOIN epsg_coordinatereferencesystem b ON b.coord_ref_sys_code = c.base_crs_code"
          + JOINS
          + " WHERE c.coord_ref_sys_kind = 'projected' AND o.coord_op_method_code = ?";
  private static final Map<Integer, String> PARAMETERS =
      Map.ofEntries(
          Map.entry(8801, "lat0"),
          Map.entry(8811, "lat0"),
          Map.entry(8821, "lat0"),
          Map.entry(8802, "lon0"),
          Map.entry(8812, "lon0"),
          Map.entry(8822, "lon0"),
          Map.entry(8805, "k0"),
          Map.entry(8815, "k0"),
          Map.entry(8806, "fe"),
          Map.entry(8816, "fe"),
          Map.entry(8826, "fe"),
          Map.entry(8807, "fn"),
          Map.entry(8817, "fn"),
          Map.entry(8827, "fn"),
          Map.entry(8823, "sp1"),
          Map.entry(8824, "sp2"),
          Map.entry(8813, "azimuth"),
          Map.entry(8814, "grid"));
  private static final int SEXAGESIMAL = 9110;

  private EpsgTables() {}

  /** Opens the data source only; nothing of the factory's own tables is built. */
  private static final class Source extends ThreadedHsqlEpsgFactory {
    DataSource dataSource() throws SQLException {
      return createDataSource();
    }
  }

  static List<EpsgCandidate> candidates(CrsDescription d) {
    if (d.isProjected() && d.method().isEmpty()) {
      return List.of();
    }
    EpsgDatabase.quiet();
    try (Connection connection = new Source().dataSource().getConnection()) {
      Map<Integer, EpsgCandidate> found = new HashMap<>();
      if (d.isProjected()) {
        for (String method : d.method().split(",")) {
          read(connection, PROJECTED, Integer.valueOf(method), found);
        }
      } else {
        read(connection, GEOGRAPHIC, null, found);
      }
      List<EpsgCandidate> fitting = found.values().stream().filter(c -> c.fits(d)).toList();
      return withAliases(connection, fitting);
    } catch (SQLException e) {
      throw new InputRefused(
          "the CRS '%s' cannot be looked up (%s); name its EPSG code with --crs"
              .formatted(d.name(), e.getMessage()));
    }
  }

  private static void read(
      Connection connection, String sql, Integer method, Map<Integer, EpsgCandidate> found)
      throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      if (method != null) {
        statement.setInt(1, method);
      }
      try (ResultSet row = statement.executeQuery()) {
        while (row.next()) {
          EpsgCandidate candidate = found.get(row.getInt(1));
          if (candidate == null) {
            candidate = candidate(row, method != null);
            found.put(candidate.epsg(), candidate);
          }
          if (method != null) {
            int code = row.getInt(15);
            candidate
                .parameters()
                .put(
                    PARAMETERS.getOrDefault(code, "p" + code),
                    value(row.getDouble(16), row.getInt(17), row.getDouble(18), row.getDouble(19)));
          }
        }
      }
    }
  }

  private static EpsgCandidate candidate(ResultSet row, boolean projected) throws SQLException {
    Set<String> names = new HashSet<>();
    names.add("#" + row.getInt(4));
    names.add("@" + row.getInt(6));
    names.add(WktNode.plain(row.getString(2)));
    names.add(WktNode.plain(row.getString(5)));
    names.add(WktNode.plain(row.getString(7)));
    double unit = row.getDouble(11) / row.getDouble(12);
    double major = row.getDouble(8) * unit;
    double inverse = row.getDouble(9);
    if (row.wasNull() || inverse == 0) {
      double minor = row.getDouble(10) * unit;
      inverse = minor == major || minor == 0 ? 0 : major / (major - minor);
    }
    return new EpsgCandidate(
        row.getInt(1),
        row.getString(2),
        row.getInt(3) != 0,
        names,
        projected ? new HashMap<>(CrsDescription.defaults()) : Map.of(),
        major,
        inverse,
        value(row.getDouble(13), row.getInt(14), 1, 1),
        projected ? row.getDouble(20) / row.getDouble(21) : Double.NaN);
  }

  /** Degrees, metres or a factor. */
  private static double value(double own, int unit, double factorB, double factorC) {
    if (unit == SEXAGESIMAL) {
      return sexagesimal(own);
    }
    boolean angle = unit >= 9101 && unit <= 9199;
    double degrees = unit == 9102 || unit == 9122 ? own : Math.toDegrees(own * factorB / factorC);
    return angle ? degrees : own * factorB / factorC;
  }

  /** DDD.MMSSsss, as the data set writes many of its angles. */
  private static double sexagesimal(double own) {
    double a = Math.abs(own);
    double degrees = Math.floor(a + 1e-10);
    double rest = (a - degrees) * 100;
    double minutes = Math.floor(rest + 1e-8);
    double seconds = (rest - minutes) * 100;
    return Math.copySign(degrees + minutes / 60 + seconds / 3600, own);
  }

  private static List<EpsgCandidate> withAliases(
      Connection connection, List<EpsgCandidate> candidates) throws SQLException {
    String sql = "SELECT alias FROM epsg_alias WHERE object_table_name = ? AND object_code = ?";
    List<EpsgCandidate> sorted = new ArrayList<>(candidates);
    // twins that differ in the order of their axes mean the same here: the older one first
    sorted.sort(
        Comparator.comparing((EpsgCandidate c) -> c.name().endsWith("(E-N)"))
            .thenComparing(EpsgCandidate::epsg));
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (EpsgCandidate c : sorted) {
        for (String name : List.copyOf(c.names())) {
          if (name.startsWith("#")) {
            alias(statement, "epsg_coordinatereferencesystem", name, c.names());
          } else if (name.startsWith("@")) {
            alias(statement, "epsg_datum", name, c.names());
          }
        }
        alias(statement, "epsg_coordinatereferencesystem", "#" + c.epsg(), c.names());
      }
    }
    return sorted;
  }

  private static void alias(
      PreparedStatement statement, String table, String code, Set<String> names)
      throws SQLException {
    statement.setString(1, table);
    statement.setInt(2, Integer.parseInt(code.substring(1)));
    try (ResultSet row = statement.executeQuery()) {
      while (row.next()) {
        names.add(WktNode.plain(row.getString(1)));
      }
    }
  }
}
