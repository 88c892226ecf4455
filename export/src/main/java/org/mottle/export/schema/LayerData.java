package org.mottle.export.schema;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A layer with its rows, in the order in which every format writes them.
 *
 * @param layer what the rows hold
 * @param rows may be empty
 */
public record LayerData(Layer layer, List<FeatureRow> rows) {
  public LayerData {
    rows = List.copyOf(rows);
    for (FeatureRow row : rows) {
      if (row.values().size() != layer.fields().size()) {
        throw new IllegalArgumentException(
            "a row of layer "
                + layer.name()
                + " has "
                + layer.fields().size()
                + " values, was given "
                + row.values().size());
      }
    }
  }

  /** The same rows with one value in every row for each of the named fields the layer has. */
  public LayerData stamped(Map<String, ?> stamps) {
    List<FeatureRow> stamped = new ArrayList<>(rows.size());
    for (FeatureRow row : rows) {
      List<Object> values = new ArrayList<>(row.values());
      stamps.forEach(
          (field, value) -> {
            int index = layer.indexOf(field);
            if (index >= 0) {
              values.set(index, layer.fields().get(index).keep(value));
            }
          });
      stamped.add(new FeatureRow(row.geometry(), values));
    }
    return new LayerData(layer, stamped);
  }
}
