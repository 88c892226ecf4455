package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.Problems;

/** Makes points of the coordinate columns of a table. */
final class CsvPositions {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final FeatureTable table;
  private final InputOptions options;
  private final Positions positions;
  private final Problems problems = new Problems();
  private final Columns columns;
  private final List<String> notes;

  CsvPositions(FeatureTable table, InputOptions options, Positions positions) {
    this.table = table;
    this.positions = positions;
    this.options = options;
    this.columns = new Columns(table, options, problems);
    this.notes = new ArrayList<>(table.notes());
  }

  FeatureTable apply() {
    OptionalInt x = columns.findAny(FieldNames.X);
    OptionalInt y = columns.findAny(FieldNames.Y);
    OptionalInt lon = columns.findAny(FieldNames.LON);
    OptionalInt lat = columns.findAny(FieldNames.LAT);
    boolean metres = x.isPresent() && y.isPresent();
    boolean degrees = lon.isPresent() && lat.isPresent();
    if (positions == Positions.OPTIONAL && allEmpty(x, y, lon, lat)) {
      return table;
    }
    problems.require(
        metres || degrees,
        "%s has no columns for the position; its columns are %s: name them x, y or lon, lat, or map them in the settings, like columns: {x: Easting, y: Northing}",
        table.name(),
        columns.named());
    problems.throwIfAny();
    boolean given = options.crs().isPresent();
    if (metres && (given || !degrees)) {
      if (!given) {
        throw GivenCrs.missing(table.name(), "does not say which CRS its x, y are in");
      }
      return points(x.getAsInt(), y.getAsInt(), options.crs().get());
    }
    boolean byName = options.crs().filter(c -> !c.isProjected()).isEmpty();
    Crs crs = byName ? Crs.wgs84() : options.crs().get();
    if (byName) {
      notes.add(
          "%s: %s, %s are read as WGS 84 (EPSG:4326), by the names of the columns"
              .formatted(
                  table.name(),
                  table.columns().get(lon.getAsInt()),
                  table.columns().get(lat.getAsInt())));
    }
    return points(lon.getAsInt(), lat.getAsInt(), crs);
  }

  private boolean allEmpty(OptionalInt... candidates) {
    int[] found = Arrays.stream(candidates).flatMapToInt(OptionalInt::stream).toArray();
    return table.rows().stream()
        .allMatch(row -> Arrays.stream(found).allMatch(c -> Cells.isMissing(row.values().get(c))));
  }

  /** Half a position is a slip of the pen, not a reading without one. */
  private void requireBothOrNone(double[] x, double[] y, int xColumn, int yColumn) {
    if (positions == Positions.NEEDED) {
      return;
    }
    List<Integer> half = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (Double.isNaN(x[i]) != Double.isNaN(y[i])) {
        half.add(table.rows().get(i).number());
      }
    }
    problems.require(
        half.isEmpty(),
        "%s: only one of %s and %s in %s %s; give both or leave both empty",
        table.name(),
        table.columns().get(xColumn),
        table.columns().get(yColumn),
        table.unit(half.size()),
        Problems.listed(half));
  }

  private FeatureTable points(int xColumn, int yColumn, Crs crs) {
    double[] x = columns.numbers(xColumn);
    double[] y = columns.numbers(yColumn);
    requireBothOrNone(x, y, xColumn, yColumn);
    problems.throwIfAny();
    List<FeatureTable.Row> rows = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      boolean known = Double.isFinite(x[i]) && Double.isFinite(y[i]);
      rows.add(
          new FeatureTable.Row(
              row.number(),
              known ? FACTORY.createPoint(new Coordinate(x[i], y[i])) : null,
              row.values()));
    }
    return new FeatureTable(table.origin(), table.columns(), rows, Optional.of(crs), notes);
  }
}
