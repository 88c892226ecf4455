package org.mottle.export.schema;

import java.util.regex.Pattern;

/**
 * One field of a layer, the same in every format.
 *
 * @param name at most 10 characters, lower case ASCII, so that the shapefile need not rename it
 * @param type what it holds
 * @param width longest text the shapefile keeps, bytes of UTF-8, at most 254; 0 for other types
 * @param decimals digits behind the point in text formats (GeoJSON, shapefile); 0 for other types
 * @param unit as printed; empty when the value has none
 * @param meaning one sentence for the data dictionary
 */
public record Field(
    String name, FieldType type, int width, int decimals, String unit, String meaning) {

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]{0,9}");
  private static final int WIDEST_TEXT = 254;
  private static final int MOST_DECIMALS = 9;

  public Field {
    if (!NAME.matcher(name).matches()) {
      throw new IllegalArgumentException(
          "a field name is 1 to 10 lower case ASCII letters, digits or _, was '" + name + "'");
    }
    int widest = type == FieldType.TEXT ? WIDEST_TEXT : 0;
    if (width < Math.min(1, widest) || width > widest) {
      throw new IllegalArgumentException(
          "field " + name + ": a " + type + " has a width up to " + widest + ", was " + width);
    }
    int most = type == FieldType.REAL ? MOST_DECIMALS : 0;
    if (decimals < 0 || decimals > most) {
      throw new IllegalArgumentException(
          "field " + name + ": a " + type + " has up to " + most + " decimals, was " + decimals);
    }
    if (meaning.isBlank()) {
      throw new IllegalArgumentException("field " + name + " has no meaning");
    }
  }

  public static Field text(String name, int width, String meaning) {
    return new Field(name, FieldType.TEXT, width, 0, "", meaning);
  }

  public static Field whole(String name, String unit, String meaning) {
    return new Field(name, FieldType.INTEGER, 0, 0, unit, meaning);
  }

  public static Field real(String name, int decimals, String unit, String meaning) {
    return new Field(name, FieldType.REAL, 0, decimals, unit, meaning);
  }

  public static Field date(String name, String meaning) {
    return new Field(name, FieldType.DATE, 0, 0, "", meaning);
  }

  /**
   * The value as the field keeps it: any {@code Number} as the field's own class, empty text and
   * NaN as {@code null}, an enum constant or a boolean refused.
   */
  Object keep(Object value) {
    Object kept =
        value instanceof Number number ? keepNumber(number) : "".equals(value) ? null : value;
    if (kept != null && !type.valueClass().isInstance(kept)) {
      throw new IllegalArgumentException(
          "field "
              + name
              + " holds "
              + type
              + ", was given "
              + value.getClass().getSimpleName()
              + " '"
              + value
              + "'");
    }
    return kept;
  }

  private Object keepNumber(Number number) {
    boolean whole = number instanceof Long || number instanceof Integer || number instanceof Short;
    if (type == FieldType.INTEGER && whole) {
      return number.longValue();
    }
    if (type == FieldType.REAL) {
      double value = number.doubleValue();
      // adding zero turns -0.0 into 0.0, which text formats would print as "-0"
      return Double.isFinite(value) ? (Object) (value + 0.0) : null;
    }
    return number;
  }
}
