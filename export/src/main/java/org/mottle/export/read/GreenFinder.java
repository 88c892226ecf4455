package org.mottle.export.read;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Green;

/** Which green a place lies in, and how far it is from one. The edge belongs to the green. */
public final class GreenFinder {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** Two standard errors of a hand-held receiver in the open, m. */
  private static final double REACH_M = 5;

  private final List<Green> greens;
  private final Map<String, Green> byId = new HashMap<>();
  private final Map<String, IndexedPointInAreaLocator> locators = new HashMap<>();
  private final Map<String, IndexedFacetDistance> edges = new HashMap<>();

  public GreenFinder(List<Green> greens) {
    this.greens = greens;
    for (Green green : greens) {
      byId.put(green.id(), green);
    }
  }

  /**
   * How far outside its green a reading may lie by its error of position, m: two standard errors,
   * of its own position and of a shift usual for its source; {@value #REACH_M} m where none is
   * recorded.
   */
  public static double reachM(double sdM, String source) {
    double shift = PositionSource.named(source).map(PositionSource::shiftM).orElse(0.0);
    return Double.isNaN(sdM) ? REACH_M : 2 * Math.hypot(sdM, shift);
  }

  boolean has(String id) {
    return byId.containsKey(id);
  }

  /** The first green of the file round the place. */
  public Optional<String> round(double x, double y) {
    return greens.stream()
        .filter(g -> g.outline().getEnvelopeInternal().contains(x, y))
        .map(Green::id)
        .filter(id -> isIn(id, x, y))
        .findFirst();
  }

  public boolean isIn(String id, double x, double y) {
    IndexedPointInAreaLocator locator =
        locators.computeIfAbsent(id, k -> new IndexedPointInAreaLocator(byId.get(k).outline()));
    return locator.locate(new Coordinate(x, y)) != Location.EXTERIOR;
  }

  /** From the outline of a green, m; 0 inside. */
  public double distance(String id, double x, double y) {
    if (isIn(id, x, y)) {
      return 0;
    }
    IndexedFacetDistance edge =
        edges.computeIfAbsent(id, k -> new IndexedFacetDistance(byId.get(k).outline()));
    return edge.distance(FACTORY.createPoint(new Coordinate(x, y)));
  }

  public String nearest(double x, double y) {
    String best = greens.get(0).id();
    double least = Double.POSITIVE_INFINITY;
    for (Green green : greens) {
      double distance = distance(green.id(), x, y);
      if (distance < least) {
        least = distance;
        best = green.id();
      }
    }
    return best;
  }
}
