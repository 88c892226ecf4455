package org.mottle.engine.patch;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellCoverage;

/**
 * The smallest patch that a survey could outline: it should hold four stations, so an area of 4
 * s&sup2;, and be wider than the 90 % interval of a position, 2 &times; 1.645 sd. The spacing s is
 * that of the square grid whose ground lies as far from its nearest station, in the mean square, as
 * that of the green: on such a grid the mean square is s&sup2; / 6. So stations in clusters count
 * as little as they see. Taken over a green it is what the survey could outline on average; over a
 * patch, what it could there.
 *
 * @param areaM2 m²
 * @param widthM m
 * @param spacingM m
 */
public record SmallestPatch(double areaM2, double widthM, double spacingM) {
  private static final double STATIONS = 4;
  private static final double Z_90 = 1.645;

  /**
   * @param green the ground that is judged: its cells and what is covered of them
   * @param stations at least one
   * @param positionSdM standard deviation of a position along an axis, m; 0 or above
   */
  static SmallestPatch of(CellCoverage green, List<Coordinate> stations, double positionSdM) {
    Check.atLeast("positionSdM", positionSdM, 0, "m");
    double spacing = Math.sqrt(6 * meanSquare(green, stations));
    return new SmallestPatch(STATIONS * spacing * spacing, 2 * Z_90 * positionSdM, spacing);
  }

  /** Mean over the ground of the squared distance to the nearest station, m². */
  private static double meanSquare(CellCoverage green, List<Coordinate> stations) {
    if (stations.isEmpty()) {
      throw new IllegalArgumentException("a spacing needs at least one station, was 0");
    }
    double cell = green.grid().cell();
    double sum = 0;
    double area = 0;
    for (int i = 0; i < green.size(); i++) {
      double nearest = Double.POSITIVE_INFINITY;
      for (Coordinate station : stations) {
        double dx = green.x(i) - station.x;
        double dy = green.y(i) - station.y;
        nearest = Math.min(nearest, dx * dx + dy * dy);
      }
      // the ground of a cell lies about its centroid, cell²/6 in the mean square
      sum += green.areaM2(i) * (nearest + green.areaM2(i) / 6);
      area += green.areaM2(i);
    }
    return area > 0 ? sum / area : cell * cell / 6;
  }

  /** Whether a part could have been outlined. */
  boolean reachedBy(Patch.Size size) {
    return size.areaM2() >= areaM2 && size.widthM() >= widthM;
  }
}
