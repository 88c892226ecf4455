package org.mottle.export.read;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads readings into the working CRS and puts each to its green. A reading that names its green
 * stays with it while it lies within reach of the outline: two standard errors of its position and
 * of a shift usual for its source, 5 m where that is not recorded. A reading that names none
 * belongs to the green it lies in. All others are handed over apart, with their distance.
 */
public final class ReadingsReader {
  /** Layer taken from a GeoPackage that holds several. */
  private static final String LAYER = "reading";

  /** A control station may lie on the collar or beside it, m. */
  private static final double CONTROL_REACH_M = 30;

  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final Greens greens;
  private final GreenFinder finder;
  private final Problems problems = new Problems();
  private final ReadingColumns columns;
  private final boolean keepUnplaced;

  private ReadingsReader(
      FeatureTable table, InputOptions options, Greens greens, boolean keepUnplaced) {
    this.keepUnplaced = keepUnplaced;
    this.table = table;
    this.greens = greens;
    this.finder = new GreenFinder(greens.greens());
    this.columns = new ReadingColumns(table, options, problems);
  }

  /** All rows, of whatever survey. */
  public static Readings read(String file, InputOptions options, Greens greens) {
    return read(file, options, greens, Optional.empty());
  }

  /**
   * @param greens already read, in the working CRS
   * @param survey the only survey whose rows are examined; empty: all rows
   * @throws InputRefused with every problem of these rows
   */
  public static Readings read(
      String file, InputOptions options, Greens greens, Optional<String> survey) {
    return read(file, options, greens, survey, false);
  }

  /**
   * As above; readings that name their green and have no position are kept apart, to be placed by
   * plan, order or track. A file in which no reading has one needs no CRS and no columns for it.
   *
   * @throws InputRefused with every problem of these rows: a reading that has neither position nor
   *     green among them
   */
  public static Readings readWithUnplaced(
      String file, InputOptions options, Greens greens, Optional<String> survey) {
    return read(file, options, greens, survey, true);
  }

  private static Readings read(
      String file,
      InputOptions options,
      Greens greens,
      Optional<String> survey,
      boolean keepUnplaced) {
    Positions positions = keepUnplaced ? Positions.OPTIONAL : Positions.NEEDED;
    FeatureTable all = FeatureFile.read(file, options, LAYER, positions);
    FeatureTable table = survey.map(id -> SurveyFilter.of(all, options, id)).orElse(all);
    return new ReadingsReader(table, options, greens, keepUnplaced).read();
  }

  private Readings read() {
    List<String> notes = new ArrayList<>(table.notes());
    Coordinate[] places = places(notes);
    requireKnownGreens();
    problems.throwIfAny();
    List<Reading> inside = new ArrayList<>();
    List<Readings.Outside> outside = new ArrayList<>();
    List<Reading> unplaced = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      Coordinate c = places[i];
      String named = columns.green[i];
      if (c == null) {
        unplaced.add(columns.reading(i, Double.NaN, Double.NaN, Double.NaN, named));
        continue;
      }
      Optional<String> home = home(i, c);
      Reading reading = columns.reading(i, c.x, c.y, c.getZ(), home.orElse(named));
      if (home.isPresent()) {
        inside.add(reading);
      } else {
        outside.add(outside(reading, table.rows().get(i)));
      }
    }
    if (unplaced.isEmpty()) {
      requireSomeInside(inside, outside);
    }
    return new Readings(inside, outside, unplaced, table.name(), notes);
  }

  private Optional<String> home(int i, Coordinate c) {
    String named = columns.green[i];
    if (!named.isEmpty()
        && columns.role[i] == Reading.Role.CONTROL
        && finder.distance(named, c.x, c.y) <= CONTROL_REACH_M) {
      return Optional.of(named);
    }
    Optional<String> round = finder.round(c.x, c.y);
    if (named.isEmpty()) {
      return round;
    }
    if (finder.isIn(named, c.x, c.y)) {
      return Optional.of(named);
    }
    double reach = GreenFinder.reachM(columns.positionSd[i], columns.positionSource[i]);
    return round.isEmpty() && finder.distance(named, c.x, c.y) <= reach
        ? Optional.of(named)
        : Optional.empty();
  }

  private Readings.Outside outside(Reading reading, FeatureTable.Row row) {
    String named = reading.label().greenId();
    String nearest =
        finder
            .round(reading.x(), reading.y())
            .orElseGet(() -> named.isEmpty() ? finder.nearest(reading.x(), reading.y()) : named);
    double distance = finder.distance(nearest, reading.x(), reading.y());
    return new Readings.Outside(reading, nearest, distance, table.at(row));
  }

  private void requireSomeInside(List<Reading> inside, List<Readings.Outside> outside) {
    if (!inside.isEmpty()) {
      return;
    }
    Readings.Outside nearest = outside.get(0);
    for (Readings.Outside o : outside) {
      nearest = o.distanceM() < nearest.distanceM() ? o : nearest;
    }
    problems.add(
        String.format(
            Locale.ROOT,
            "%s: none of its %d readings lies in a green of %s; the nearest, %s %d, is %.1f m from green %s: check the CRS (--crs) of both files",
            table.name(),
            outside.size(),
            greens.source(),
            table.origin().unit(),
            nearest.reading().label().row(),
            nearest.distanceM(),
            nearest.nearestGreen()));
    problems.throwIfAny();
  }

  private void requireKnownGreens() {
    Map<String, List<Integer>> unknown = new LinkedHashMap<>();
    for (int i = 0; i < columns.green.length; i++) {
      String id = columns.green[i];
      if (!id.isEmpty() && !finder.has(id)) {
        unknown.computeIfAbsent(id, k -> new ArrayList<>()).add(table.rows().get(i).number());
      }
    }
    List<String> known = greens.greens().stream().map(g -> g.id()).toList();
    unknown.forEach(
        (id, rows) ->
            problems.add(
                "%s: green %s (%s %s) is not in %s, whose greens are %s; correct the name or leave the rows out",
                table.name(),
                id,
                table.unit(rows.size()),
                Problems.listed(rows, SHOWN),
                greens.source(),
                Problems.listed(known)));
  }

  private Coordinate[] places(List<String> notes) {
    List<Integer> nowhere = new ArrayList<>();
    Coordinate[] places =
        table.rows().stream().noneMatch(ReadingsReader::hasPlace)
            ? nonePlaced(nowhere)
            : placed(nowhere, notes);
    problems.require(
        nowhere.isEmpty(),
        keepUnplaced
            ? "%s: neither position nor green_id in %s %s; give one or leave them out"
            : "%s: no position in %s %s; give one or leave them out",
        table.name(),
        table.unit(nowhere.size()),
        Problems.listed(nowhere));
    return places;
  }

  /** Without a position there is nothing that a CRS could be about. */
  private Coordinate[] nonePlaced(List<Integer> nowhere) {
    for (int i = 0; i < table.rows().size(); i++) {
      noteNowhere(i, nowhere);
    }
    return new Coordinate[table.rows().size()];
  }

  private void noteNowhere(int i, List<Integer> nowhere) {
    if (!keepUnplaced || columns.green[i].isEmpty()) {
      nowhere.add(table.rows().get(i).number());
    }
  }

  private Coordinate[] placed(List<Integer> nowhere, List<String> notes) {
    CrsTransform transform =
        CrsTransform.between(
            table.crs().orElseThrow(() -> GivenCrs.missing(table.name(), "names no CRS")),
            greens.working());
    Coordinate[] places = new Coordinate[table.rows().size()];
    Map<String, List<Integer>> refused = new LinkedHashMap<>();
    for (int i = 0; i < places.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      Optional<Coordinate> own = place(row);
      if (own.isEmpty()) {
        noteNowhere(i, nowhere);
        continue;
      }
      try {
        places[i] = transform.apply(own.get());
      } catch (InputRefused e) {
        refused.computeIfAbsent(withoutPlace(e), k -> new ArrayList<>()).add(i);
      }
    }
    refused.values().forEach(rows -> addRefused(transform, rows));
    if (transform.accuracyM() > 0) {
      notes.add(
          "%s: from %s to %s is good to about %s m"
              .formatted(table.name(), transform.from(), transform.to(), transform.accuracyM()));
    }
    return places;
  }

  /** What is wrong without the coordinates, which differ from row to row. */
  private static String withoutPlace(InputRefused e) {
    return e.getMessage().replaceFirst("^x \\S+, y \\S+ ", "");
  }

  private void addRefused(CrsTransform transform, List<Integer> rows) {
    FeatureTable.Row first = table.rows().get(rows.get(0));
    Coordinate c = place(first).orElseThrow();
    String others =
        rows.size() == 1
            ? ""
            : " (and %d more %s)".formatted(rows.size() - 1, table.unit(rows.size() - 1));
    problems.add("%s: %s%s", table.at(first), transform.problemAt(c.x, c.y).orElseThrow(), others);
  }

  private static boolean hasPlace(FeatureTable.Row row) {
    Geometry g = row.geometry();
    return g != null && !g.isEmpty() && !Double.isNaN(g.getCoordinate().x);
  }

  /** The position of a row; empty where there is none; anything but a single point is a problem. */
  private Optional<Coordinate> place(FeatureTable.Row row) {
    if (!hasPlace(row)) {
      return Optional.empty();
    }
    Geometry g = row.geometry();
    if (g.getNumGeometries() == 1 && g.getGeometryN(0) instanceof Point) {
      return Optional.of(g.getCoordinate());
    }
    problems.add(
        "%s: a reading must be a single point, not a %s", table.at(row), g.getGeometryType());
    return Optional.of(g.getCoordinate());
  }
}
