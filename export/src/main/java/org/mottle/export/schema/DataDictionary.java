package org.mottle.export.schema;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
