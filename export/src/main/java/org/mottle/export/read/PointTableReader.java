package org.mottle.export.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Nearest;
import org.mottle.export.problem.Problems;

/**
 * Reads columns of numbers by their headings, with coordinates in metres. Coordinates come from the
 * two columns named or, in a GIS file without them, from its points. A table of text needs no CRS
 * here: nothing is projected; degrees are refused where they show.
 */
public final class PointTableReader {
  /** What becomes of rows in which a value is missing. */
  public enum Missing {
    /** Left out, and told in a note. */
    LEAVE_OUT,
    /** Kept, with NaN. */
    KEEP
  }

  private final FeatureTable table;
  private final Problems problems = new Problems();
  private final Columns columns;

  private PointTableReader(FeatureTable table) {
    this.table = table;
    this.columns = new Columns(table, InputOptions.NONE, problems);
  }

  /**
   * @param x heading of the eastings
   * @param y heading of the northings
   * @param wanted headings of the other columns
   * @throws InputRefused with every problem of the file
   */
  public static PointTable read(
      String file, String x, String y, List<String> wanted, Missing missing) {
    return new PointTableReader(table(file)).read(x, y, wanted, missing);
  }

  private static FeatureTable table(String file) {
    String lower = file.toLowerCase(Locale.ROOT);
    boolean text = lower.endsWith(".csv") || lower.endsWith(".tsv") || lower.endsWith(".txt");
    if (!text || !Files.isRegularFile(Path.of(file))) {
      return FeatureFile.read(file, InputOptions.NONE);
    }
    try {
      if (Files.size(Path.of(file)) == 0) {
        throw new InputRefused("%s is empty".formatted(Path.of(file).getFileName()));
      }
      return new CsvReader(Path.of(file), InputOptions.NONE).readCells();
    } catch (IOException e) {
      throw new InputRefused("%s cannot be read: %s".formatted(file, e.getMessage()));
    }
  }

  private PointTable read(String x, String y, List<String> wanted, Missing missing) {
    double[] east = coordinate(x, true);
    double[] north = coordinate(y, false);
    Map<String, double[]> values = new LinkedHashMap<>();
    for (String name : wanted) {
      OptionalInt column = columns.find(name);
      problems.require(
          column.isPresent(),
          "%s has no column '%s'%s; its columns are %s",
          table.name(),
          name,
          nearest(name),
          columns.named());
      column.ifPresent(c -> values.put(name, columns.numbers(c)));
    }
    requirePlaces(east, north);
    problems.throwIfAny();
    List<String> notes = new ArrayList<>(table.notes());
    int[] kept = kept(values, missing, notes);
    problems.throwIfAny();
    Map<String, double[]> chosen = new LinkedHashMap<>();
    values.forEach((name, all) -> chosen.put(name, pick(all, kept)));
    int[] rows = IntStream.of(kept).map(i -> table.rows().get(i).number()).toArray();
    return new PointTable(table.name(), rows, pick(east, kept), pick(north, kept), chosen, notes);
  }

  /** The heading that was probably meant, as a half sentence; empty when none is near. */
  private String nearest(String name) {
    return Nearest.to(name, table.columns()).map(n -> ", did you mean '" + n + "'?").orElse("");
  }

  private double[] coordinate(String name, boolean east) {
    OptionalInt column = columns.find(name);
    if (column.isPresent()) {
      return columns.numbers(column.getAsInt());
    }
    if (table.crs().isEmpty()) {
      problems.add(
          "%s has no column '%s'%s; its columns are %s: name the coordinates with --x and --y",
          table.name(), name, nearest(name), columns.named());
    }
    table.crs().filter(c -> !c.isProjected()).ifPresent(c -> refuseDegrees(c, east));
    double[] values = new double[table.rows().size()];
    for (int i = 0; i < values.length; i++) {
      var g = table.rows().get(i).geometry();
      boolean known = g != null && !g.isEmpty();
      values[i] = !known ? Double.NaN : east ? g.getCoordinate().x : g.getCoordinate().y;
    }
    return values;
  }

  private void refuseDegrees(Crs crs, boolean once) {
    problems.require(!once, "%s is in degrees (%s); project it to metres first", table.name(), crs);
  }

  private void requirePlaces(double[] x, double[] y) {
    if (!problems.isEmpty()) {
      return;
    }
    List<Integer> nowhere = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
        nowhere.add(table.rows().get(i).number());
      }
    }
    problems.require(
        nowhere.isEmpty(),
        "%s: no coordinates in %s %s; give them or leave the rows out",
        table.name(),
        table.unit(nowhere.size()),
        Problems.listed(nowhere));
  }

  private int[] kept(Map<String, double[]> values, Missing missing, List<String> notes) {
    int n = table.rows().size();
    if (missing == Missing.KEEP) {
      return IntStream.range(0, n).toArray();
    }
    values.forEach(
        (name, all) -> {
          List<Integer> without =
              IntStream.range(0, n)
                  .filter(i -> Double.isNaN(all[i]))
                  .mapToObj(i -> table.rows().get(i).number())
                  .toList();
          if (without.size() == n) {
            problems.add("%s: the column %s holds no value", table.name(), name);
          } else if (!without.isEmpty()) {
            notes.add(
                "%s: no value of %s in %s %s, left out"
                    .formatted(
                        table.name(), name, table.unit(without.size()), Problems.listed(without)));
          }
        });
    return IntStream.range(0, n)
        .filter(i -> values.values().stream().noneMatch(all -> Double.isNaN(all[i])))
        .toArray();
  }

  private static double[] pick(double[] all, int[] kept) {
    return IntStream.of(kept).mapToDouble(i -> all[i]).toArray();
  }
}
