package org.mottle.export.verify;

import java.util.List;

/**
 * What one file holds of one layer.
 *
 * @param layer name
 * @param rows features or rows
 * @param placed features with a geometry
 * @param measure sum of the areas, m², or of the lengths, m; 0 for points and tables
 * @param fields names, in order
 */
record Reread(String layer, long rows, long placed, double measure, List<String> fields) {
  Reread {
    fields = List.copyOf(fields);
  }
}
