package org.mottle.samples.picture;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.mottle.export.read.FeatureFile;
import org.mottle.export.read.FeatureTable;
import org.mottle.export.read.InputOptions;

/** One layer of a delivered GeoPackage, with its values by name. */
record DeliveredLayer(FeatureTable table) {

  static DeliveredLayer of(Path delivered, String layer) {
    String file = delivered.resolve("mottle.gpkg") + "#" + layer;
    return new DeliveredLayer(FeatureFile.read(file, InputOptions.NONE));
  }

  /** The rows of one green in one survey, in the order of the file. */
  List<FeatureTable.Row> rows(String green, String survey) {
    return table.rows().stream()
        .filter(row -> text(row, "green_id").equals(green))
        .filter(row -> !table.columns().contains("surv_id") || text(row, "surv_id").equals(survey))
        .toList();
  }

  /** Text of a field; empty where the row has none. */
  String text(FeatureTable.Row row, String field) {
    return Objects.toString(row.values().get(table.columns().indexOf(field)), "");
  }

  /** Number of a field; NaN where the row has none. */
  double number(FeatureTable.Row row, String field) {
    Object value = row.values().get(table.columns().indexOf(field));
    return value instanceof Number number ? number.doubleValue() : Double.NaN;
  }
}
