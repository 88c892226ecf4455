package org.mottle.engine.terrain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.triangulate.DelaunayTriangulationBuilder;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.CellGrid;

/**
 * Heights measured at points, put on a grid by the Delaunay triangles between them: linear in each
 * triangle, exact at the points, never above the highest or below the lowest, and nothing beyond
 * the hull. Triangles with a side longer than allowed stay void, so that a gap in the survey does
 * not become a plane. Points within 10 mm are one place with their mean height.
 *
 * <p>Refused when the points cannot carry a surface: fewer than 12 places, all in a line, or wider
 * apart than allowed. O(n log n) and the cells.
 */
public final class SurveyedPoints {
  private static final int LEAST_PLACES = 12;
  private static final double SAME_PLACE_M = 0.01;

  private SurveyedPoints() {}

  /** What came of it. */
  public sealed interface Outcome permits Gridded, NotGridded {}

  /**
   * @param model heights; voids outside the hull and in gaps
   * @param places different places used
   * @param merged points that shared a place with another
   * @param spacingM typical distance between places, m
   */
  public record Gridded(ElevationModel model, int places, int merged, double spacingM)
      implements Outcome {}

  /**
   * @param reason what stands in the way, with the value
   * @param remedy what would change it
   */
  public record NotGridded(String reason, String remedy) implements Outcome {}

  /**
   * @param x of the points, m
   * @param y of the points, m
   * @param z heights, m
   * @param cellM side of a cell, m
   * @param widestM longest side of a triangle that is filled; the typical spacing may be half of it
   */
  public static Outcome grid(double[] x, double[] y, double[] z, double cellM, double widestM) {
    Check.above("cellM", cellM, 0, "m");
    Check.above("widestM", widestM, 0, "m");
    if (x.length != y.length || x.length != z.length) {
      throw new IllegalArgumentException(
          "each point needs x, y and a height, were %d, %d and %d"
              .formatted(x.length, y.length, z.length));
    }
    List<Coordinate> places = places(x, y, z);
    if (places.size() < LEAST_PLACES) {
      return new NotGridded(
          "%d different places with a height are too few for a surface".formatted(places.size()),
          "survey at least %d, better one every 2 m".formatted(LEAST_PLACES));
    }
    GeometryFactory factory = new GeometryFactory();
    Coordinate[] all = places.toArray(new Coordinate[0]);
    double hullM2 = factory.createMultiPointFromCoords(all).convexHull().getArea();
    double spacing = Math.sqrt(hullM2 / all.length);
    if (!(spacing > SAME_PLACE_M)) {
      return new NotGridded(
          "the %d places with a height lie in one line".formatted(all.length),
          "survey points on both sides of it");
    }
    if (spacing > widestM / 2) {
      return new NotGridded(
          String.format(
              Locale.ROOT,
              "the points lie %.1f m apart, wider than the %.1f m that a surface here may have",
              spacing,
              widestM / 2),
          "survey more densely, or use an elevation model");
    }
    CellGrid grid = CellGrid.covering(new Envelope(box(all)), cellM);
    double[] heights = new double[grid.size()];
    Arrays.fill(heights, Double.NaN);
    if (!fill(all, factory, widestM, grid, heights)) {
      return new NotGridded(
          "no cell centre lies in a triangle of points with sides of %s m or less"
              .formatted(widestM),
          "use a smaller cell or survey more densely");
    }
    ElevationModel model = ElevationModel.owning(grid, heights);
    return new Gridded(model, all.length, x.length - all.length, spacing);
  }

  /** A place to 10 mm. */
  private record Place(long x, long y) {}

  private static List<Coordinate> places(double[] x, double[] y, double[] z) {
    Map<Place, double[]> sums = new HashMap<>();
    List<double[]> inOrder = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i]) || !Double.isFinite(z[i])) {
        throw new IllegalArgumentException(
            "point %d must have finite x, y and height, was %s, %s, %s"
                .formatted(i + 1, x[i], y[i], z[i]));
      }
      Place key = new Place(Math.round(x[i] / SAME_PLACE_M), Math.round(y[i] / SAME_PLACE_M));
      double[] sum = sums.get(key);
      if (sum == null) {
        sum = new double[4];
        sums.put(key, sum);
        inOrder.add(sum);
      }
      sum[0] += x[i];
      sum[1] += y[i];
      sum[2] += z[i];
      sum[3]++;
    }
    List<Coordinate> places = new ArrayList<>();
    for (double[] sum : inOrder) {
      places.add(new Coordinate(sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3]));
    }
    return places;
  }

  private static Envelope box(Coordinate[] all) {
    Envelope box = new Envelope();
    for (Coordinate c : all) {
      box.expandToInclude(c);
    }
    return box;
  }

  private static boolean fill(
      Coordinate[] all, GeometryFactory factory, double widestM, CellGrid grid, double[] heights) {
    DelaunayTriangulationBuilder builder = new DelaunayTriangulationBuilder();
    builder.setSites(Arrays.asList(all));
    Geometry triangles = builder.getTriangles(factory);
    boolean any = false;
    for (int i = 0; i < triangles.getNumGeometries(); i++) {
      Coordinate[] corners = triangles.getGeometryN(i).getCoordinates();
      boolean small =
          corners[0].distance(corners[1]) <= widestM
              && corners[1].distance(corners[2]) <= widestM
              && corners[2].distance(corners[0]) <= widestM;
      any |= small && fill(corners[0], corners[1], corners[2], grid, heights);
    }
    return any;
  }

  private static boolean fill(
      Coordinate a, Coordinate b, Coordinate c, CellGrid grid, double[] heights) {
    double twice = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
    if (twice == 0) {
      return false;
    }
    double left = Math.min(a.x, Math.min(b.x, c.x));
    double right = Math.max(a.x, Math.max(b.x, c.x));
    double low = Math.min(a.y, Math.min(b.y, c.y));
    double high = Math.max(a.y, Math.max(b.y, c.y));
    int firstRow = (int) Math.max(0, Math.floor((grid.north() - high) / grid.cell() - 0.5));
    int firstColumn = (int) Math.max(0, Math.floor((left - grid.west()) / grid.cell() - 0.5));
    boolean any = false;
    for (int row = firstRow; row < grid.rows() && grid.y(row) >= low; row++) {
      for (int col = firstColumn; col < grid.columns() && grid.x(col) <= right; col++) {
        double px = grid.x(col);
        double py = grid.y(row);
        double ofB = ((px - a.x) * (c.y - a.y) - (c.x - a.x) * (py - a.y)) / twice;
        double ofC = ((b.x - a.x) * (py - a.y) - (px - a.x) * (b.y - a.y)) / twice;
        // a centre on a shared side must not fall between two triangles by rounding
        if (ofB >= -1e-9 && ofC >= -1e-9 && ofB + ofC <= 1 + 1e-9) {
          heights[grid.index(row, col)] = a.z + ofB * (b.z - a.z) + ofC * (c.z - a.z);
          any = true;
        }
      }
    }
    return any;
  }
}
