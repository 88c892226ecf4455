package org.mottle.engine.reference;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** A table of published or independently computed numbers, read from the test resources. */
public final class ReferenceTable {
  private final String name;
  private final List<String> header;
  private final List<List<String>> rows;

  private ReferenceTable(String name, List<String> header, List<List<String>> rows) {
    this.name = name;
    this.header = header;
    this.rows = rows;
  }

  /** Reads {@code validation/<name>.csv}. */
  public static ReferenceTable of(String name) {
    String path = "/validation/" + name + ".csv";
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(ReferenceTable.class.getResourceAsStream(path), path),
                StandardCharsets.UTF_8))) {
      List<List<String>> lines =
          in.lines().filter(line -> !line.isBlank()).map(l -> List.of(l.split(",", -1))).toList();
      return new ReferenceTable(name, lines.get(0), lines.subList(1, lines.size()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public int rows() {
    return rows.size();
  }

  public String text(int row, String column) {
    int index = header.indexOf(column);
    if (index < 0) {
      throw new IllegalArgumentException(name + " has no column " + column + ", has " + header);
    }
    return rows.get(row).get(index);
  }

  public double number(int row, String column) {
    return Double.parseDouble(text(row, column));
  }

  public double[] numbers(String column) {
    double[] numbers = new double[rows()];
    for (int i = 0; i < numbers.length; i++) {
      numbers[i] = number(i, column);
    }
    return numbers;
  }

  /** The row whose column holds this text. */
  public int rowOf(String column, String value) {
    for (int i = 0; i < rows(); i++) {
      if (text(i, column).equals(value)) {
        return i;
      }
    }
    throw new IllegalArgumentException(name + " has no row with " + column + " " + value);
  }
}
