package org.mottle.export.drawings;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.mottle.export.read.FeatureTable;

/** The shapes of a delivered layer. */
final class Shapes {
  private final FeatureTable table;
  private final String source;

  private Shapes(String source, FeatureTable table) {
    this.source = source;
    this.table = table;
  }

  static List<Shape> of(String source, FeatureTable table) {
    return new Shapes(source, table).all();
  }

  private List<Shape> all() {
    List<Shape> shapes = new ArrayList<>();
    Set<List<String>> seen = new HashSet<>();
    for (FeatureTable.Row row : table.rows()) {
      if (row.geometry() == null || row.geometry().isEmpty()) {
        continue;
      }
      String survey = text(row, "surv_id");
      String green = text(row, "green_id");
      // readings of one station are one point; each cause weighed for a place has its outline
      boolean first =
          switch (source) {
            case "reading" -> seen.add(List.of(green, survey, text(row, "st_id")));
            case "hypo" -> seen.add(List.of(green, text(row, "place_id")));
            default -> true;
          };
      if (first) {
        CadLayer layer = CadLayer.of(source, text(row, "kind"));
        String label = label(row);
        String description = words(layer.name(), green, survey, label.equals(green) ? "" : label);
        shapes.add(new Shape(layer, survey, row.geometry(), height(row), label, description));
      }
    }
    return shapes;
  }

  private String label(FeatureTable.Row row) {
    String green = text(row, "green_id");
    return switch (source) {
      case "green" -> words(green, text(row, "name"));
      case "patch", "core", "envel" -> text(row, "patch_id");
      case "spot" -> words(text(row, "kind"), text(row, "st_id"));
      case "iso" -> fixed(row, "level_pct", 1);
      case "reading", "station" -> text(row, "st_id");
      case "nextst" -> text(row, "rank");
      case "contour" -> fixed(row, "z_m", 2);
      case "depress" -> text(row, "dep_id");
      case "hypo" -> words(text(row, "place_id"), "check: " + text(row, "kind"));
      case "persist" -> text(row, "history");
      case "head" -> text(row, "head_id");
      case "catch" -> text(row, "can_id");
      default -> "";
    };
  }

  private double height(FeatureTable.Row row) {
    return switch (source) {
      case "reading", "contour" -> number(row, "z_m");
      case "depress" -> number(row, "spill_z");
      default -> Double.NaN;
    };
  }

  private Object value(FeatureTable.Row row, String field) {
    int at = table.columns().indexOf(field);
    return at < 0 ? null : row.values().get(at);
  }

  private double number(FeatureTable.Row row, String field) {
    return value(row, field) instanceof Number n ? n.doubleValue() : Double.NaN;
  }

  private String fixed(FeatureTable.Row row, String field, int decimals) {
    double value = number(row, field);
    return Double.isNaN(value) ? "" : String.format(Locale.ROOT, "%." + decimals + "f", value);
  }

  private String text(FeatureTable.Row row, String field) {
    Object value = value(row, field);
    return value == null ? "" : value.toString();
  }

  private static String words(String... words) {
    return String.join(" ", java.util.Arrays.stream(words).filter(w -> !w.isBlank()).toList());
  }
}
