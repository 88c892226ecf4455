package org.mottle.engine.review;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.plan.AreaPoints;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/** Whether the stations speak for the green: their spread, their number, those at the edge. */
final class PlaceChecks {
  /** Side of the pieces of ground that are looked at, m. */
  private static final double PIECE_M = 1;

  /** Of the ground may lie farther than a spacing from all stations. */
  private static final double FAR_SHARE = 0.15;

  /** Spacings from the nearest station at which ground is empty. */
  private static final double EMPTY_SPACINGS = 1.5;

  /** Partners of a close pair are nearer than this and count as one, m. */
  private static final double PAIR_M = 1;

  private final ReviewSettings settings;
  private final Map<Green, Ground> grounds = new HashMap<>();

  PlaceChecks(ReviewSettings settings) {
    this.settings = settings;
  }

  /** What is asked of an outline again and again. */
  private record Ground(
      AreaPoints pieces, IndexedFacetDistance edge, IndexedPointInAreaLocator inside) {
    static Ground of(Green green) {
      Geometry outline = green.outline();
      return new Ground(
          AreaPoints.of(outline, PIECE_M),
          new IndexedFacetDistance(outline.getBoundary()),
          new IndexedPointInAreaLocator(outline));
    }
  }

  void check(Sheet sheet) {
    int[] rows = sheet.counting();
    if (rows.length == 0) {
      return;
    }
    Ground ground = grounds.computeIfAbsent(sheet.visit.green(), Ground::of);
    int n = places(sheet, rows);
    if (n < settings.fewest()) {
      sheet.find(
          Rule.FEW,
          Severity.WARN,
          "%d place%s read: a summary, not a map".formatted(n, n == 1 ? "" : "s"),
          "read %d or more, %d for a map that is more than indicative"
              .formatted(settings.fewest(), settings.indicative()));
    }
    chosen(sheet, rows);
    spread(sheet, rows, n, ground);
    edge(sheet, rows, ground);
  }

  /** Places read, partners of close pairs and further insertions not counted. */
  static int places(Sheet sheet, int[] rows) {
    int n = 0;
    for (int a = 0; a < rows.length; a++) {
      boolean first = true;
      for (int b = 0; b < a && first; b++) {
        first = distance(sheet.reading(rows[a]), sheet.reading(rows[b])) >= PAIR_M;
      }
      n += first ? 1 : 0;
    }
    return n;
  }

  private static double distance(Reading a, Reading b) {
    return Math.hypot(a.x() - b.x(), a.y() - b.y());
  }

  private static void chosen(Sheet sheet, int[] rows) {
    long poi =
        Arrays.stream(rows)
            .filter(i -> sheet.reading(i).role() == Reading.Role.POINT_OF_INTEREST)
            .count();
    if (poi == rows.length) {
      sheet.find(
          Rule.CHOSEN,
          Severity.WARN,
          "every station was chosen for what is seen there: the green's mean cannot be told",
          "add stations by a plan (coverage, or stratified for the mean)");
    }
  }

  private static void spread(Sheet sheet, int[] rows, int n, Ground ground) {
    AreaPoints pieces = ground.pieces();
    double spacing = Math.sqrt(sheet.visit.green().areaM2() / n);
    double farthest = 0;
    double farArea = 0;
    double area = 0;
    for (int p = 0; p < pieces.size(); p++) {
      double nearest = Double.POSITIVE_INFINITY;
      for (int i : rows) {
        Reading r = sheet.reading(i);
        double dx = r.x() - pieces.positions().x(p);
        double dy = r.y() - pieces.positions().y(p);
        nearest = Math.min(nearest, dx * dx + dy * dy);
      }
      nearest = Math.sqrt(nearest);
      farthest = Math.max(farthest, nearest);
      area += pieces.areaM2(p);
      farArea += nearest > spacing ? pieces.areaM2(p) : 0;
    }
    if (farthest > EMPTY_SPACINGS * spacing || farArea > FAR_SHARE * area) {
      sheet.find(
          Rule.SPREAD,
          Severity.WARN,
          String.format(
              Locale.ROOT,
              "%.0f %% of the green is farther than %.1f m from every station, the farthest ground"
                  + " %.1f m",
              100 * farArea / area,
              spacing,
              farthest),
          "read stations there; what a map says of that ground is a guess");
    }
  }

  private void edge(Sheet sheet, int[] rows, Ground ground) {
    for (int i : rows) {
      Reading r = sheet.reading(i);
      Optional<PlannedStation> planned = sheet.visit.planned(r);
      double x = planned.map(PlannedStation::x).orElse(r.x());
      double y = planned.map(PlannedStation::y).orElse(r.y());
      Coordinate at = new Coordinate(x, y);
      Point point = sheet.visit.green().outline().getFactory().createPoint(at);
      double distance = ground.edge().distance(point);
      boolean outside = ground.inside().locate(at) == Location.EXTERIOR;
      if (!outside && distance >= settings.edgeM()) {
        continue;
      }
      // a position that may itself be off says little of half a metre
      boolean sure = planned.isPresent() || sd(r) <= settings.edgeM() / 2;
      sheet.find(
          Rule.EDGE,
          sure ? Severity.WARN : Severity.NOTE,
          new int[] {i},
          String.format(
              Locale.ROOT,
              "%s lies %.1f m %s the outline",
              sheet.name(i),
              distance,
              outside ? "outside" : "inside"),
          "collar and bunker lips dry differently: keep stations 1 m from the edge");
    }
  }

  /** Standard error per axis of a position: recorded, else usual for its source; NaN unknown. */
  static double sd(Reading reading) {
    double recorded = reading.position().sdM();
    return Double.isNaN(recorded)
        ? PositionSource.named(reading.position().source())
            .map(PositionSource::jitterM)
            .orElse(Double.NaN)
        : recorded;
  }
}
