package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.mottle.export.problem.Problems;

/**
 * Finds the columns of a table by the names used here: through the mapping the user gave, or by the
 * heading itself, capitals and blanks aside. Collects what is wrong with cells: rows are gathered
 * by column, so that a column of text costs one line.
 */
final class Columns {
  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final InputOptions options;
  private final Problems problems;

  Columns(FeatureTable table, InputOptions options, Problems problems) {
    this.table = table;
    this.options = options;
    this.problems = problems;
  }

  /** The column of a name: the heading it is mapped to, else the heading of that name. */
  OptionalInt find(String name) {
    int mapped = options.columns().containsKey(name) ? indexOf(options.columns().get(name)) : -1;
    int at = mapped >= 0 ? mapped : indexOf(name);
    return at < 0 ? OptionalInt.empty() : OptionalInt.of(at);
  }

  /**
   * A mapping to a heading that is not there is a problem, if it is one of these names. A name that
   * several files have may be mapped for another one: then its own heading will do.
   */
  void requireMapped(List<String> names) {
    for (String name : names) {
      String heading = options.columns().get(name);
      problems.require(
          heading == null
              || indexOf(heading) >= 0
              || FieldNames.isShared(name) && indexOf(name) >= 0,
          "%s has no column '%s' (mapped to %s); its columns are %s",
          table.name(),
          heading,
          name,
          named());
    }
  }

  /** The first of several names that is there. */
  OptionalInt findAny(List<String> names) {
    for (String name : names) {
      OptionalInt found = find(name);
      if (found.isPresent()) {
        return found;
      }
    }
    return OptionalInt.empty();
  }

  /** "a, b, c". */
  String named() {
    return table.columns().isEmpty() ? "none" : Problems.listed(table.columns(), SHOWN * 2);
  }

  boolean isMapped(String name) {
    return options.columns().containsKey(name);
  }

  private int indexOf(String heading) {
    int exact = table.columns().indexOf(heading);
    if (exact >= 0) {
      return exact;
    }
    String plain = plain(heading);
    for (int i = 0; i < table.columns().size(); i++) {
      if (plain(table.columns().get(i)).equals(plain)) {
        return i;
      }
    }
    return -1;
  }

  private static String plain(String heading) {
    return heading.strip().toLowerCase(Locale.ROOT);
  }

  /** Text of a column; empty where the column or the value is missing. */
  String[] texts(String name) {
    OptionalInt column = find(name);
    return table.rows().stream()
        .map(r -> column.isEmpty() ? "" : Cells.text(r.values().get(column.getAsInt())))
        .toArray(String[]::new);
  }

  /** Numbers of a column, NaN where missing; text in it is a problem. */
  double[] numbers(String name) {
    OptionalInt column = find(name);
    return column.isEmpty() ? missing() : numbers(column.getAsInt());
  }

  double[] numbers(int column) {
    double[] values = missing();
    List<String> wrong = new ArrayList<>();
    boolean comma = table.origin().decimalComma();
    for (int i = 0; i < values.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      Object cell = row.values().get(column);
      if (Cells.isNumber(cell, comma)) {
        values[i] = Cells.number(cell, comma);
      } else {
        wrong.add("%d ('%s')".formatted(row.number(), cell));
      }
    }
    problems.require(
        wrong.isEmpty(),
        "%s: %s is not a number in %s %s",
        table.name(),
        table.columns().get(column),
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
    return values;
  }

  /** Whole numbers of a column, a fallback where missing. */
  int[] wholes(String name, int fallback) {
    double[] values = numbers(name);
    int[] wholes = new int[values.length];
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      boolean whole = values[i] == Math.rint(values[i]) && Math.abs(values[i]) < 1e9;
      if (!Double.isNaN(values[i]) && !whole) {
        wrong.add("%d (%s)".formatted(table.rows().get(i).number(), values[i]));
      }
      wholes[i] = whole ? (int) values[i] : fallback;
    }
    problems.require(
        wrong.isEmpty(),
        "%s: %s is not a whole number in %s %s",
        table.name(),
        name,
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
    return wholes;
  }

  private double[] missing() {
    double[] values = new double[table.rows().size()];
    java.util.Arrays.fill(values, Double.NaN);
    return values;
  }
}
