package org.mottle.export.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.irrigation.Head;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads sprinkler heads: points with {@code head_id} and {@code rad_m}; {@code green_id}, {@code
 * stn}, {@code arc_from}, {@code arc_to} (degrees clockwise from grid north), {@code rate_mmh},
 * {@code kpa} and {@code state} may be missing. A head without an arc is a full circle, one that
 * names no green belongs to the nearest.
 */
public final class HeadsReader {
  private static final String LAYER = "head";

  /** No sprinkler of a golf course throws farther, m. */
  private static final double FARTHEST_M = 60;

  private final FeatureTable table;
  private final Problems problems = new Problems();
  private final Columns columns;
  private final CellChecks checks;
  private final List<String> notes;

  private HeadsReader(String file, InputOptions options) {
    this.table = FeatureFile.read(file, options, LAYER);
    this.columns = new Columns(table, options, problems);
    this.checks = new CellChecks(table, problems);
    this.notes = new ArrayList<>(table.notes());
  }

  /**
   * @param greens already read, in the working CRS
   * @throws InputRefused with every problem of the file
   */
  public static Heads read(String file, InputOptions options, Greens greens) {
    return new HeadsReader(file, options).read(greens.working(), Optional.of(greens));
  }

  /**
   * Heads by themselves; a head that names no green keeps none.
   *
   * @param asked CRS to work in; empty: that of the file, else its UTM zone
   * @throws InputRefused with every problem of the file
   */
  public static Heads read(String file, InputOptions options, Optional<Crs> asked) {
    HeadsReader reader = new HeadsReader(file, options);
    Crs working =
        asked
            .or(() -> WorkingCrs.of(reader.table))
            .orElseThrow(
                () ->
                    new InputRefused(
                        "%s: no head has a place; give every head its point"
                            .formatted(reader.table.name())));
    return reader.read(working, Optional.empty());
  }

  private Heads read(Crs working, Optional<Greens> greens) {
    for (String needed : List.of("head_id", "rad_m")) {
      problems.require(
          columns.find(needed).isPresent(),
          "%s has no column %s; its columns are %s",
          table.name(),
          needed,
          columns.named());
    }
    columns.requireMapped(FieldNames.ownOf(FieldNames.HEAD));
    problems.throwIfAny();
    Coordinate[] places = PointPlaces.of(table, working, problems);
    String[] id = columns.texts("head_id");
    String[] green = columns.texts("green_id");
    double[] radius = columns.numbers("rad_m");
    double[] rate = columns.numbers("rate_mmh");
    double[] pressure = columns.numbers("kpa");
    double[][] arc = arcs();
    requireIds(id);
    requireRadius(radius);
    checks.numbers("rate_mmh", rate, v -> v >= 0 && v < 1000, "0 mm/h or more");
    checks.numbers("kpa", pressure, v -> v > 0 && v < 5000, "above 0 kPa");
    greens.ifPresent(g -> GreenNames.requireKnown(table, green, g, problems));
    problems.throwIfAny();
    greens.ifPresent(g -> home(green, places, g));
    String[] station = columns.texts("stn");
    String[] state = columns.texts("state");
    List<Head> heads = new ArrayList<>();
    Map<String, String> states = new LinkedHashMap<>();
    for (int i = 0; i < id.length; i++) {
      heads.add(
          new Head(
              id[i],
              green[i],
              station[i],
              places[i].x,
              places[i].y,
              radius[i],
              arc[i][0],
              arc[i][1],
              rate[i],
              pressure[i]));
      if (!state[i].isEmpty()) {
        states.put(id[i], state[i]);
      }
    }
    greens.ifPresent(g -> tellOutOfReach(heads, g));
    return new Heads(heads, states, working, table.name(), notes);
  }

  private void requireIds(String[] id) {
    List<Integer> without = checks.rows(i -> id[i].isEmpty());
    problems.require(
        without.isEmpty(),
        "%s: head_id is empty in %s %s; name every head",
        table.name(),
        table.unit(without.size()),
        Problems.listed(without));
    List<List<String>> keys = new ArrayList<>();
    for (int i = 0; i < id.length; i++) {
      // those without a name have been told
      keys.add(List.of(id[i].isEmpty() ? "row " + i : id[i]));
    }
    checks.once(keys, "head", "give every head of the course an id of its own");
  }

  private void requireRadius(double[] radius) {
    List<Integer> without = checks.rows(i -> Double.isNaN(radius[i]));
    problems.require(
        without.isEmpty(),
        "%s: rad_m is empty in %s %s; give the reach of every head in metres",
        table.name(),
        table.unit(without.size()),
        Problems.listed(without));
    checks.numbers("rad_m", radius, v -> v > 0 && v <= FARTHEST_M, "above 0 to 60 m");
  }

  private double[][] arcs() {
    double[] from = columns.numbers("arc_from");
    double[] to = columns.numbers("arc_to");
    checks.numbers("arc_from", from, v -> v >= 0 && v <= 360, "from 0 to 360 degrees");
    checks.numbers("arc_to", to, v -> v >= 0 && v <= 360, "from 0 to 360 degrees");
    List<Integer> half = checks.rows(i -> Double.isNaN(from[i]) != Double.isNaN(to[i]));
    problems.require(
        half.isEmpty(),
        "%s: only one of arc_from and arc_to in %s %s; give both, or neither for a full circle",
        table.name(),
        table.unit(half.size()),
        Problems.listed(half));
    List<Integer> full = checks.rows(i -> Double.isNaN(from[i]) && Double.isNaN(to[i]));
    if (!full.isEmpty()) {
      notes.add(
          "%s: no arc in %s %s, taken for full circles"
              .formatted(table.name(), table.unit(full.size()), Problems.listed(full)));
    }
    double[][] arcs = new double[from.length][2];
    for (int i = 0; i < from.length; i++) {
      arcs[i][0] = Double.isNaN(from[i]) ? 0 : from[i];
      arcs[i][1] = Double.isNaN(to[i]) ? 360 : to[i];
    }
    return arcs;
  }

  private void home(String[] green, Coordinate[] places, Greens greens) {
    GreenFinder finder = new GreenFinder(greens.greens());
    List<Integer> unnamed = checks.rows(i -> green[i].isEmpty());
    for (int i = 0; i < green.length; i++) {
      if (green[i].isEmpty()) {
        green[i] = finder.nearest(places[i].x, places[i].y);
      }
    }
    if (!unnamed.isEmpty()) {
      notes.add(
          "%s: no green_id in %s %s; put to the nearest green"
              .formatted(table.name(), table.unit(unnamed.size()), Problems.listed(unnamed)));
    }
  }

  private void tellOutOfReach(List<Head> heads, Greens greens) {
    GreenFinder finder = new GreenFinder(greens.greens());
    List<String> far =
        heads.stream()
            .filter(h -> finder.distance(h.greenId(), h.x(), h.y()) > h.radiusM())
            .map(h -> h.id() + " (" + h.greenId() + ")")
            .toList();
    if (!far.isEmpty()) {
      notes.add(
          "%s: farther from their green than they throw: %s; check place, radius and green_id"
              .formatted(table.name(), Problems.listed(far)));
    }
  }
}
