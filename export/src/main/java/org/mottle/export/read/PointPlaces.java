package org.mottle.export.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/** The points of a table in the working CRS, one a row. */
final class PointPlaces {
  private static final int SHOWN = 8;

  private PointPlaces() {}

  /** Rows without a point are a problem. */
  static Coordinate[] of(FeatureTable table, Crs working, Problems problems) {
    List<Integer> nowhere = new ArrayList<>();
    Coordinate[] places = places(table, working, nowhere, problems);
    problems.require(
        nowhere.isEmpty(),
        "%s: no single point in %s %s; give one or leave them out",
        table.name(),
        table.unit(nowhere.size()),
        Problems.listed(nowhere));
    return places;
  }

  /** Rows without a point are null; a table without any needs no CRS. */
  static Coordinate[] whereKnown(FeatureTable table, Crs working, Problems problems) {
    boolean any = table.rows().stream().anyMatch(r -> point(r.geometry()).isPresent());
    return any
        ? places(table, working, new ArrayList<>(), problems)
        : new Coordinate[table.rows().size()];
  }

  private static Coordinate[] places(
      FeatureTable table, Crs working, List<Integer> nowhere, Problems problems) {
    CrsTransform transform =
        CrsTransform.between(
            table.crs().orElseThrow(() -> GivenCrs.missing(table.name(), "names no CRS")), working);
    Coordinate[] places = new Coordinate[table.rows().size()];
    List<String> refused = new ArrayList<>();
    for (int i = 0; i < places.length; i++) {
      FeatureTable.Row row = table.rows().get(i);
      Optional<Coordinate> point = point(row.geometry());
      if (point.isEmpty()) {
        nowhere.add(row.number());
        continue;
      }
      try {
        places[i] = transform.apply(point.get());
      } catch (InputRefused e) {
        refused.add(table.at(row) + ": " + e.getMessage());
      }
    }
    // a wrong CRS costs a few lines, not one a row
    refused.stream().limit(SHOWN).forEach(line -> problems.add("%s", line));
    problems.require(
        refused.size() <= SHOWN,
        "%s: %d more %s cannot be carried over either",
        table.name(),
        refused.size() - SHOWN,
        table.unit(refused.size() - SHOWN));
    return places;
  }

  private static Optional<Coordinate> point(Geometry g) {
    return g == null
            || g.isEmpty()
            || g.getNumGeometries() != 1
            || !(g.getGeometryN(0) instanceof Point)
            || Double.isNaN(g.getCoordinate().x)
        ? Optional.empty()
        : Optional.of(g.getCoordinate());
  }
}
