package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads catch cans: {@code ml} is needed; {@code can_id}, {@code green_id}, {@code date} (of the
 * run), {@code mouth_cm2}, {@code min_run}, {@code wind_ms} and the place may be missing. A can
 * without {@code ml} (spilt, lost) is left out and told. A can that names no green stands on the
 * one round it, else on the nearest. {@code mm_h} is compared with what the others give, not used.
 */
public final class CansReader {
  private static final String LAYER = "catch";

  /** Rates in files are rounded; more than that is another mouth or another run. */
  private static final double RATE_TOLERANCE = 0.05;

  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final Optional<Greens> greens;
  private final Problems problems = new Problems();
  private final Columns columns;
  private final CellChecks checks;
  private final List<String> notes;

  private CansReader(FeatureTable table, InputOptions options, Optional<Greens> greens) {
    this.table = table;
    this.greens = greens;
    this.columns = new Columns(table, options, problems);
    this.checks = new CellChecks(table, problems);
    this.notes = new ArrayList<>(table.notes());
  }

  /**
   * @param greens already read; empty: places are kept where the file says in which CRS they are,
   *     and are not needed
   * @param asked CRS to work in without greens; empty: that of the file, else its UTM zone
   * @throws InputRefused with every problem of the file
   */
  public static Cans read(
      String file, InputOptions options, Optional<Greens> greens, Optional<Crs> asked) {
    FeatureTable table = table(file, options, greens.isPresent());
    CansReader reader = new CansReader(table, options, greens);
    return reader.read(greens.map(Greens::working).or(() -> asked));
  }

  /** Without greens nobody needs to know in which CRS x and y are. */
  private static FeatureTable table(String file, InputOptions options, boolean placed) {
    String lower = file.toLowerCase(Locale.ROOT);
    boolean text = lower.endsWith(".csv") || lower.endsWith(".tsv") || lower.endsWith(".txt");
    if (placed || !text || options.crs().isPresent()) {
      return FeatureFile.read(file, options, LAYER, Positions.OPTIONAL);
    }
    FeatureTable cells = FeatureFile.readCells(file, options);
    Columns columns = new Columns(cells, options, new Problems());
    if (columns.findAny(FieldNames.LON).isPresent()
        && columns.findAny(FieldNames.LAT).isPresent()) {
      return FeatureFile.read(file, options, LAYER, Positions.OPTIONAL);
    }
    OptionalInt x = columns.findAny(FieldNames.X);
    if (x.isEmpty()
        || cells.rows().stream().allMatch(r -> Cells.isMissing(r.values().get(x.getAsInt())))) {
      return cells;
    }
    List<String> notes = new ArrayList<>(cells.notes());
    notes.add(
        "%s: the places of the cans are not used, since neither greens nor a CRS are given"
            .formatted(cells.name()));
    return new FeatureTable(cells.origin(), cells.columns(), cells.rows(), cells.crs(), notes);
  }

  private Cans read(Optional<Crs> asked) {
    problems.require(
        columns.find("ml").isPresent(),
        "%s has no column ml; its columns are %s: map the one with the catch in the settings, like"
            + " columns: {ml: Catch}",
        table.name(),
        columns.named());
    columns.requireMapped(FieldNames.ownOf(FieldNames.CAN));
    problems.throwIfAny();
    Optional<Crs> working = asked.or(() -> WorkingCrs.of(table));
    Coordinate[] places =
        working
            .map(crs -> PointPlaces.whereKnown(table, crs, problems))
            .orElseGet(() -> new Coordinate[table.rows().size()]);
    String[] id = ids();
    String[] green = columns.texts("green_id");
    String[] run = columns.texts("date");
    double[] ml = columns.numbers("ml");
    double[] mouth = columns.numbers("mouth_cm2");
    double[] minutes = columns.numbers("min_run");
    double[] wind = columns.numbers("wind_ms");
    checks.numbers("ml", ml, v -> v >= 0 && v < 1e5, "0 or more");
    checks.numbers("mouth_cm2", mouth, v -> v > 0 && v < 1e5, "above 0 cm²");
    checks.numbers("min_run", minutes, v -> v > 0 && v < 1e4, "above 0 min");
    checks.numbers("wind_ms", wind, v -> v >= 0 && v < 100, "0 m/s or more");
    requireKnownGreens(green);
    problems.throwIfAny();
    home(green, places);
    requireOnce(id, green, run);
    List<Integer> lost = checks.rows(i -> Double.isNaN(ml[i]));
    if (!lost.isEmpty()) {
      notes.add(
          "%s: no ml in %s %s, left out as spilt or lost"
              .formatted(table.name(), table.unit(lost.size()), Problems.listed(lost)));
    }
    problems.require(
        lost.size() < id.length, "%s: no can has a catch in the column ml", table.name());
    problems.throwIfAny();
    List<CatchCan> cans = new ArrayList<>();
    for (int i = 0; i < id.length; i++) {
      if (!Double.isNaN(ml[i])) {
        Coordinate at = places[i];
        cans.add(
            new CatchCan(
                id[i],
                green[i],
                run[i],
                at == null ? Double.NaN : at.x,
                at == null ? Double.NaN : at.y,
                new CatchCan.Measure(ml[i], mouth[i], minutes[i]),
                wind[i]));
      }
    }
    compareRates(ml, mouth, minutes);
    return new Cans(cans, working, table.name(), notes);
  }

  private String[] ids() {
    String[] ids = columns.texts("can_id");
    List<Integer> without = checks.rows(i -> ids[i].isEmpty());
    for (int i = 0; i < ids.length; i++) {
      ids[i] = ids[i].isEmpty() ? "row " + table.rows().get(i).number() : ids[i];
    }
    if (!without.isEmpty()) {
      notes.add(
          "%s: %d cans have no can_id and are called by their rows"
              .formatted(table.name(), without.size()));
    }
    return ids;
  }

  private void requireKnownGreens(String[] green) {
    greens.ifPresent(g -> GreenNames.requireKnown(table, green, g, problems));
  }

  private void home(String[] green, Coordinate[] places) {
    List<Integer> unnamed = new ArrayList<>();
    List<Integer> nowhere = new ArrayList<>();
    Optional<GreenFinder> finder = greens.map(g -> new GreenFinder(g.greens()));
    for (int i = 0; i < green.length; i++) {
      Coordinate at = places[i];
      if (!green[i].isEmpty() || finder.isEmpty()) {
        continue;
      }
      int row = table.rows().get(i).number();
      (at == null ? nowhere : unnamed).add(row);
      if (at != null) {
        green[i] = finder.get().round(at.x, at.y).orElseGet(() -> finder.get().nearest(at.x, at.y));
      }
    }
    if (!unnamed.isEmpty()) {
      notes.add(
          "%s: no green_id in %s %s; put to the green round the can, else the nearest"
              .formatted(table.name(), table.unit(unnamed.size()), Problems.listed(unnamed)));
    }
    if (!nowhere.isEmpty()) {
      notes.add(
          "%s: neither green_id nor place in %s %s; audited as ground of its own"
              .formatted(table.name(), table.unit(nowhere.size()), Problems.listed(nowhere)));
    }
  }

  private void requireOnce(String[] id, String[] green, String[] run) {
    List<List<String>> keys = new ArrayList<>();
    for (int i = 0; i < id.length; i++) {
      keys.add(Stream.of(id[i], green[i], run[i]).toList());
    }
    checks.once(keys, "can", "give every can of a green and date an id of its own");
  }

  private void compareRates(double[] ml, double[] mouth, double[] minutes) {
    double[] given = columns.numbers("mm_h");
    List<String> other = new ArrayList<>();
    for (int i = 0; i < ml.length; i++) {
      double own = 600 * ml[i] / mouth[i] / minutes[i];
      if (Math.abs(given[i] - own) > RATE_TOLERANCE * own + 0.05) {
        other.add(
            String.format(
                Locale.ROOT, "%d (%.1f, not %.1f)", table.rows().get(i).number(), given[i], own));
      }
    }
    if (!other.isEmpty()) {
      notes.add(
          "%s: mm_h is not 600 ml / (mouth_cm2 min_run) in %s %s; it is not used, check them"
              .formatted(table.name(), table.unit(other.size()), Problems.listed(other, SHOWN)));
    }
  }
}
