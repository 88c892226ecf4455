package org.mottle.export.schema;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * One feature of a layer or one row of a table. Made by {@link Layer#row}, which checks it.
 *
 * @param geometry in metres of the working CRS; {@code null} in a table and where there is none. It
 *     is shared with the caller, who leaves it as it is.
 * @param values in the order of the layer's fields; {@code null} where nothing is recorded
 */
public record FeatureRow(Geometry geometry, List<Object> values) {
  public FeatureRow {
    values = Collections.unmodifiableList(new ArrayList<>(values));
  }

  public Object value(int field) {
    return values.get(field);
  }
}
