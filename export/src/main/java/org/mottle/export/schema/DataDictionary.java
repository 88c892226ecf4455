package org.mottle.export.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The data dictionary in its forms: a structure for files, Markdown for the pages. */
public final class DataDictionary {
  private DataDictionary() {}

  /** Unit (where there is one) and meaning of every field, by name, in order. */
  public static Map<String, Object> fields(Layer layer) {
    Map<String, Object> fields = new LinkedHashMap<>();
    for (Field field : layer.fields()) {
      Map<String, Object> entry = new LinkedHashMap<>();
      if (!field.unit().isEmpty()) {
        entry.put("unit", field.unit());
      }
      entry.put("meaning", field.meaning());
      fields.put(field.name(), entry);
    }
    return fields;
  }

  /** A heading and a table a layer. */
  public static String markdown(List<Layer> layers) {
    StringBuilder page = new StringBuilder();
    for (Layer layer : layers) {
      page.append("## ").append(layer.name()).append("\n\n");
      page.append(sentence(layer))
          .append("\n\n| field | type | unit | meaning |\n|---|---|---|---|\n");
      for (Field field : layer.fields()) {
        page.append("| `").append(field.name()).append("` | ").append(type(field));
        page.append(" | ").append(field.unit()).append(" | ");
        page.append(field.meaning().replace("|", "\\|")).append(" |\n");
      }
      page.append('\n');
    }
    return page.toString();
  }

  /** What {@link #table} is called. */
  public static final String TABLE = "name_dict";

  /** A table of every field of some layers. */
  private static final Layer NAMES =
      Fields.layer(
          TABLE,
          "what every field of every layer and table means",
          GeometryKind.NONE,
          Field.text("layer", 64, "layer or table"),
          Field.text("field", 16, "field, the same in every format"),
          Field.text("type", 16, "text, whole number, number or date"),
          Field.text("unit", 24, "unit; empty when the value has none"),
          Field.text("meaning", 254, "what it is"));

  /** A row for every field of the layers, in their order. */
  public static LayerData table(List<Layer> layers) {
    List<FeatureRow> rows = new ArrayList<>();
    for (Layer layer : layers) {
      for (Field field : layer.fields()) {
        rows.add(
            NAMES.row(
                Map.of(
                    "layer", layer.name(),
                    "field", field.name(),
                    "type", plainType(field),
                    "unit", field.unit(),
                    "meaning", field.meaning())));
      }
    }
    return new LayerData(NAMES, rows);
  }

  /** The same as comma-separated text with a header, texts in quotes. */
  public static String csv(List<Layer> layers) {
    StringBuilder csv = new StringBuilder("layer,field,type,unit,meaning\n");
    for (FeatureRow row : table(layers).rows()) {
      csv.append(
          row.values().stream()
              .map(value -> value == null ? "" : quoted((String) value))
              .collect(Collectors.joining(",", "", "\n")));
    }
    return csv.toString();
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  private static String plainType(Field field) {
    return switch (field.type()) {
      case TEXT -> "text";
      case INTEGER -> "whole number";
      case REAL -> "number";
      case DATE -> "date";
    };
  }

  private static String sentence(Layer layer) {
    String kind =
        switch (layer.kind()) {
          case NONE -> "Table";
          case POINT -> "Points";
          case LINE -> "Lines";
          case AREA -> "Areas";
        };
    return kind + ": " + layer.meaning() + ".";
  }

  private static String type(Field field) {
    return switch (field.type()) {
      case TEXT -> "text, " + field.width() + " bytes in a shapefile";
      case INTEGER -> "whole number";
      case REAL -> "number, " + field.decimals() + " decimals";
      case DATE -> "date";
    };
  }
}
