package org.mottle.engine.kriging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * A table of the validation resources; who computed it stands in README-kriging.txt beside them.
 * Missing numbers (NA) are NaN.
 */
public final class ValidationTable {
  private final List<String> header;
  private final List<String[]> rows;

  private ValidationTable(List<String> header, List<String[]> rows) {
    this.header = header;
    this.rows = rows;
  }

  public static ValidationTable read(String name) {
    try (InputStream in = ValidationTable.class.getResourceAsStream("/validation/" + name)) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(l -> !l.isBlank())
              .toList();
      return new ValidationTable(
          Arrays.asList(lines.get(0).split(",")),
          lines.stream().skip(1).map(l -> l.split(",")).toList());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  public int size() {
    return rows.size();
  }

  public String text(String column, int row) {
    int c = header.indexOf(column);
    if (c < 0) {
      throw new IllegalArgumentException("no column " + column + " among " + header);
    }
    return rows.get(row)[c];
  }

  public double number(String column, int row) {
    String text = text(column, row);
    return text.equals("NA") || text.equals("NaN") ? Double.NaN : Double.parseDouble(text);
  }

  public double[] column(String column) {
    double[] values = new double[size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = number(column, i);
    }
    return values;
  }
}
