package org.mottle.export.read;

import java.util.Set;
import java.util.regex.Pattern;

/** Cells of a table as numbers, whole numbers, text. */
final class Cells {
  private static final Set<String> MISSING = Set.of("", "na", "n/a", "nan", "null", "none", "-");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][-+]?\\d+)?");

  private Cells() {}

  static boolean isMissing(Object cell) {
    if (cell == null) {
      return true;
    }
    if (cell instanceof Number n) {
      return !Double.isFinite(n.doubleValue());
    }
    return cell instanceof String s
        && MISSING.contains(s.strip().toLowerCase(java.util.Locale.ROOT));
  }

  /** Whether the cell is a number or missing. */
  static boolean isNumber(Object cell, boolean decimalComma) {
    return isMissing(cell)
        || cell instanceof Number
        || cell instanceof String s && NUMBER.matcher(point(s, decimalComma)).matches();
  }

  /** NaN where missing; the cell must be a number otherwise. */
  static double number(Object cell, boolean decimalComma) {
    if (isMissing(cell)) {
      return Double.NaN;
    }
    return cell instanceof Number n
        ? n.doubleValue()
        : Double.parseDouble(point((String) cell, decimalComma));
  }

  private static String point(String text, boolean decimalComma) {
    String plain = text.strip();
    return decimalComma ? plain.replace(',', '.') : plain;
  }

  /** Text for labels: a whole number in a number column is written without ".0". */
  static String text(Object cell) {
    if (cell == null) {
      return "";
    }
    if (cell instanceof Number n
        && n.doubleValue() == Math.rint(n.doubleValue())
        && Math.abs(n.doubleValue()) < 1e15) {
      return Long.toString(n.longValue());
    }
    return cell.toString().strip();
  }
}
