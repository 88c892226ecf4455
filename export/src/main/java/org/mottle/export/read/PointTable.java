package org.mottle.export.read;

import java.util.List;
import java.util.Map;

/**
 * Points with numbers, for commands that know nothing of greens.
 *
 * @param source name of the file, for messages
 * @param rows line of the file (or number of the feature) of each point
 * @param x east
 * @param y north
 * @param values one array a column, by the names asked for; NaN where missing values are kept
 * @param notes what was detected or left out, one line each, to be told to the user
 */
public record PointTable(
    String source,
    int[] rows,
    double[] x,
    double[] y,
    Map<String, double[]> values,
    List<String> notes) {
  public PointTable {
    rows = rows.clone();
    x = x.clone();
    y = y.clone();
    values = Map.copyOf(values);
    notes = List.copyOf(notes);
  }

  public int size() {
    return x.length;
  }
}
