package org.mottle.export.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Predicate;

/** A table of numbers as text: a resource of {@code cli/}, or what the program printed. */
final class NumberTable {
  private final List<String> header;
  private final List<List<String>> rows;

  private NumberTable(List<String> header, List<List<String>> rows) {
    this.header = header;
    this.rows = rows;
  }

  static NumberTable of(String text) {
    List<List<String>> lines =
        text.lines().filter(l -> !l.isBlank()).map(l -> List.of(l.split(",", -1))).toList();
    return new NumberTable(lines.get(0), lines.subList(1, lines.size()));
  }

  static NumberTable resource(String name) {
    try {
      return of(Files.readString(path(name)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Where a resource of {@code cli/} lies, to be named on the command line. */
  static Path path(String name) {
    try {
      return Path.of(
          Objects.requireNonNull(NumberTable.class.getResource("/cli/" + name), name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(name, e);
    }
  }

  List<String> header() {
    return header;
  }

  int size() {
    return rows.size();
  }

  String text(int row, String column) {
    int at = header.indexOf(column);
    if (at < 0) {
      throw new IllegalArgumentException("no column " + column + " among " + header);
    }
    return rows.get(row).get(at);
  }

  /** NaN where the field is empty or NA. */
  double number(int row, String column) {
    String text = text(row, column);
    return text.isEmpty() || text.equals("NA") ? Double.NaN : Double.parseDouble(text);
  }

  /** The only row whose column holds this text. */
  int rowOf(String column, String text) {
    List<Integer> found = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      if (text(i, column).equals(text)) {
        found.add(i);
      }
    }
    if (found.size() != 1) {
      throw new IllegalArgumentException(found + " rows with " + column + " " + text);
    }
    return found.get(0);
  }

  NumberTable where(String column, Predicate<String> wanted) {
    int at = header.indexOf(column);
    return new NumberTable(header, rows.stream().filter(r -> wanted.test(r.get(at))).toList());
  }

  /** The same table with one more column. */
  NumberTable with(String column, List<String> values) {
    List<String> names = new ArrayList<>(header);
    names.add(column);
    List<List<String>> wider = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      List<String> row = new ArrayList<>(rows.get(i));
      row.add(values.get(i));
      wider.add(row);
    }
    return new NumberTable(names, wider);
  }

  String csv() {
    StringBuilder text = new StringBuilder(String.join(",", header)).append('\n');
    rows.forEach(row -> text.append(String.join(",", row)).append('\n'));
    return text.toString();
  }
}
