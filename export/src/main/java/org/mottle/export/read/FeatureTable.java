package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.mottle.export.crs.Crs;

/**
 * What every format is read into: columns, rows, a reference system if the file names one.
 *
 * @param origin where it comes from
 * @param columns headings as they stand in the file
 * @param rows in the order of the file
 * @param crs of the geometries; empty when the file names none and none was given
 * @param notes what was detected or decided on the way, one line each, to be told to the user
 */
public record FeatureTable(
    Origin origin, List<String> columns, List<Row> rows, Optional<Crs> crs, List<String> notes) {

  /**
   * @param name of the file (and layer) for messages
   * @param unit what its rows are called: "row" in tables, "feature" in GIS files
   * @param decimalComma whether numbers in text carry a comma
   */
  public record Origin(String name, String unit, boolean decimalComma) {}

  /**
   * @param number line of the file from 1, or number of the feature
   * @param geometry null where the file has none
   * @param values in the order of the columns: text, numbers, booleans, null
   */
  public record Row(int number, Geometry geometry, List<Object> values) {
    public Row {
      values = Collections.unmodifiableList(new ArrayList<>(values));
    }
  }

  public FeatureTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    notes = List.copyOf(notes);
  }

  public String name() {
    return origin.name();
  }

  /** "readings.csv, row 14". */
  public String at(Row row) {
    return origin.name() + ", " + origin.unit() + " " + row.number();
  }

  /** "row", or "rows" for more than one. */
  public String unit(int count) {
    return count == 1 ? origin.unit() : origin.unit() + "s";
  }

  FeatureTable withCrs(Crs wanted, List<String> newNotes) {
    return new FeatureTable(origin, columns, rows, Optional.of(wanted), newNotes);
  }
}
