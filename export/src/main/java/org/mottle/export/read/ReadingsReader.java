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
 * stays with it while it lies within reach of the outline: two standard errors of its position, 5 m
 * where that is not recorded. A reading that names none belongs to the green it lies in. All others
 * are handed over apart, with their distance.
 */
public final class ReadingsReader {
  /** Layer taken from a GeoPackage that holds several. */
  private static final String LAYER = "reading";

  /** Two standard errors of a hand-held receiver in the open, m. */
  private static final double REACH_M = 5;

  private static final int SHOWN = 8;

  private final FeatureTable table;
  private final Greens greens;
  private final GreenFinder finder;
  private final Problems problems = new Problems();
  private final ReadingColumns columns;

  private ReadingsReader(FeatureTable table, InputOptions options, Greens greens) {
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
    FeatureTable all = FeatureFile.read(file, options, LAYER);
    FeatureTable table = survey.map(id -> SurveyFilter.of(all, options, id)).orElse(all);
    return new ReadingsReader(table, options, greens).read();
  }

  private Readings read() {
    List<String> notes = new ArrayList<>(table.notes());
    Coordinate[] places = places(notes);
    requireKnownGreens();
    problems.throwIfAny();
    List<Reading> inside = new ArrayList<>();
    List<Readings.Outside> outside = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      Coordinate c = places[i];
      String named = columns.green[i];
      Optional<String> home = home(named, c, columns.positionSd[i]);
      Reading reading = columns.reading(i, c.x, c.y, c.getZ(), home.orElse(named));
      if (home.isPresent()) {
        inside.add(reading);
      } else {
        outside.add(outside(reading, table.rows().get(i)));
      }
    }
    requireSomeInside(inside, outside);
    return new Readings(inside, outside, table.name(), notes);
  }

  private Optional<String> home(String named, Coordinate c, double sdM) {
    Optional<String> round = finder.round(c.x, c.y);
    if (named.isEmpty()) {
      return round;
    }
    if (finder.isIn(named, c.x, c.y)) {
      return Optional.of(named);
    }
    double reach = Double.isNaN(sdM) ? REACH_M : 2 * sdM;
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
    CrsTransform transform =
        CrsTransform.between(
            table.crs().orElseThrow(() -> GivenCrs.missing(table.name(), "names no CRS")),
            greens.working());
    Coordinate[] places = new Coordinate[table.rows().size()];
    List<Integer> nowhere = new ArrayList<>();
    Map<String, List<Integer>> refused = new LinkedHashMap<>();
    for (int i = 0; i < places.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      Optional<Coordinate> own = place(row);
      if (own.isEmpty()) {
        nowhere.add(row.number());
        continue;
      }
      try {
        places[i] = transform.apply(own.get());
      } catch (InputRefused e) {
        refused.computeIfAbsent(withoutPlace(e), k -> new ArrayList<>()).add(i);
      }
    }
    problems.require(
        nowhere.isEmpty(),
        "%s: no position in %s %s; give one or leave them out",
        table.name(),
        table.unit(nowhere.size()),
        Problems.listed(nowhere));
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

  /** The position of a row; empty where there is none; anything but a single point is a problem. */
  private Optional<Coordinate> place(FeatureTable.Row row) {
    Geometry g = row.geometry();
    if (g == null || g.isEmpty() || Double.isNaN(g.getCoordinate().x)) {
      return Optional.empty();
    }
    if (g.getNumGeometries() == 1 && g.getGeometryN(0) instanceof Point) {
      return Optional.of(g.getCoordinate());
    }
    problems.add(
        "%s: a reading must be a single point, not a %s", table.at(row), g.getGeometryType());
    return Optional.of(g.getCoordinate());
  }
}
