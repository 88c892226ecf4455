package org.mottle.export.schema;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.locationtech.jts.geom.Geometry;

/**
 * A layer (with a geometry) or a table (without), the same in every format.
 *
 * @param name lower case ASCII; names the files and the GeoPackage table
 * @param meaning one sentence for the data dictionary
 * @param kind what its geometries are
 * @param fields in the order of every format
 */
public record Layer(String name, String meaning, GeometryKind kind, List<Field> fields) {

  /** Column names the GeoPackage needs for itself. */
  private static final Set<String> RESERVED = Set.of("fid", "geom");

  public Layer {
    if (!name.matches("[a-z][a-z0-9_]*")) {
      throw new IllegalArgumentException(
          "a layer name is lower case ASCII letters, digits or _, was '" + name + "'");
    }
    fields = List.copyOf(fields);
    Set<String> seen = new HashSet<>(RESERVED);
    for (Field field : fields) {
      if (!seen.add(field.name())) {
        throw new IllegalArgumentException(
            "layer " + name + ": the field name " + field.name() + " is reserved or used twice");
      }
    }
  }

  public boolean isTable() {
    return kind == GeometryKind.NONE;
  }

  /** Place of a field in every row; -1 when the layer has no such field. */
  public int indexOf(String field) {
    for (int i = 0; i < fields.size(); i++) {
      if (fields.get(i).name().equals(field)) {
        return i;
      }
    }
    return -1;
  }

  /**
   * A row from values by field name. A field that is not named is nothing recorded and an empty
   * geometry is none; a name that is no field of the layer, a value of the wrong class and a
   * geometry of the wrong kind are refused.
   */
  public FeatureRow row(Geometry geometry, Map<String, ?> values) {
    if (!kind.holds(geometry)) {
      throw new IllegalArgumentException(
          "layer " + name + " holds " + kind + ", was given " + geometry.getGeometryType());
    }
    List<Object> kept = new ArrayList<>(fields.size());
    int found = 0;
    for (Field field : fields) {
      kept.add(field.keep(values.get(field.name())));
      found += values.containsKey(field.name()) ? 1 : 0;
    }
    if (found < values.size()) {
      Set<String> unknown = new TreeSet<>(values.keySet());
      fields.forEach(f -> unknown.remove(f.name()));
      throw new IllegalArgumentException("layer " + name + " has no field " + unknown);
    }
    return new FeatureRow(geometry == null || geometry.isEmpty() ? null : geometry, kept);
  }

  /** A row of a table. */
  public FeatureRow row(Map<String, ?> values) {
    return row(null, values);
  }
}
