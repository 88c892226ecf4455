package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;

/**
 * Stations round a spot: a patch too small to outline is seen at one station, and its size is not
 * known until it is read round it. Four stations a quarter turn apart, {@value #RADIUS} m from the
 * spot, the first to the north and on clockwise. Where the outline or a hole is in the way the
 * cross is turned, by 15° at a time, to the first bearing that keeps the most stations inside; a
 * station that would still lie outside is left out. Stateless.
 */
public final class SpotRing {
  /** Distance of the stations from the spot, m. */
  public static final double RADIUS = 1;

  private static final int STATIONS = 4;
  private static final double TURN_DEGREES = 15;

  private SpotRing() {}

  /**
   * @param outline polygon or multipolygon, holes allowed, m
   * @return at most four stations, fewer only where the ground is too narrow for four
   */
  public static Positions around(Geometry outline, double x, double y) {
    StationSites inside = new StationSites(outline, 0);
    List<double[]> best = List.of();
    for (double turn = 0; turn < 360.0 / STATIONS && best.size() < STATIONS; turn += TURN_DEGREES) {
      List<double[]> ring = ring(inside, x, y, turn);
      best = ring.size() > best.size() ? ring : best;
    }
    return Positions.of(
        best.stream().mapToDouble(p -> p[0]).toArray(),
        best.stream().mapToDouble(p -> p[1]).toArray());
  }

  private static List<double[]> ring(StationSites inside, double x, double y, double turn) {
    List<double[]> ring = new ArrayList<>();
    for (int i = 0; i < STATIONS; i++) {
      double azimuth = Math.toRadians(turn + i * 360.0 / STATIONS);
      double east = x + RADIUS * Math.sin(azimuth);
      double north = y + RADIUS * Math.cos(azimuth);
      if (inside.allows(east, north)) {
        ring.add(new double[] {east, north});
      }
    }
    return ring;
  }
}
