package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.mottle.engine.check.Check;
import org.mottle.engine.grid.Raster;

/**
 * Level lines of a surface inside an outline. They are made as the edges of {@link Bands} are, so a
 * line whose level is a limit of bands runs along the edge that the bands share, vertex for vertex,
 * unless lines of two limits come within a millimetre of each other. Levels the surface does not
 * reach have no line; where it is flat at a level the line runs along the lower edge of the flat
 * ground (the last of several limits: the upper edge, as for bands).
 */
public final class IsoLines {
  private static final double ROUNDING = 1e-9;
  private static final int MOST_LEVELS = 10_000;

  private IsoLines() {}

  /**
   * Lines at whole multiples of a step.
   *
   * @param outline valid polygon or multipolygon, m
   * @param surface values at cell centres
   * @param step between levels, above 0
   * @param limits of the bands drawn beside the lines; may be none
   */
  public static List<IsoLine> of(Geometry outline, Raster surface, double step, double... limits) {
    return Contours.of(outline, surface).isoLines(step, limits);
  }

  /** Lines at given levels; those the surface does not reach inside the outline are left out. */
  public static List<IsoLine> at(
      Geometry outline, Raster surface, double[] levels, double[] limits) {
    return at(Contours.of(outline, surface), levels, limits);
  }

  static List<IsoLine> at(Contours contours, double[] levels, double[] limits) {
    Level[] limitLevels = Level.ofLimits(limits);
    ContourLines lines = new ContourLines(contours);
    GeometryFactory factory = contours.factory();
    List<IsoLine> found = new ArrayList<>();
    for (double value : levels) {
      List<Chain> parts = lines.at(level(value, limitLevels));
      if (!parts.isEmpty()) {
        LineString[] drawn = new LineString[parts.size()];
        for (int i = 0; i < drawn.length; i++) {
          drawn[i] = line(parts.get(i), contours.frame(), factory);
        }
        found.add(new IsoLine(value, factory.createMultiLineString(drawn)));
      }
    }
    return found;
  }

  private static Level level(double value, Level[] limits) {
    for (Level limit : limits) {
      if (Math.abs(limit.value() - value) <= ROUNDING * Math.max(1, Math.abs(value))) {
        return limit;
      }
    }
    return new Level(value, true);
  }

  /** The multiples of a step between the least and the greatest value of a surface. */
  static double[] multiples(LinearSurface surface, double step) {
    Check.above("step", step, 0, "");
    double least = surface.least();
    double most = surface.most();
    double count = Math.floor(most / step) - Math.ceil(least / step) + 1;
    if (count > MOST_LEVELS) {
      throw new IllegalArgumentException(
          "a step of %s between %s and %s gives more than %s levels; use a larger step"
              .formatted(step, least, most, MOST_LEVELS));
    }
    double[] levels = new double[(int) Math.max(0, count)];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = multiple(Math.ceil(least / step) + i, step);
    }
    return levels;
  }

  /** k times the step, as the decimal a reader expects: 3 times 0.1 is 0.3. */
  private static double multiple(double k, double step) {
    double inverse = Math.rint(1 / step);
    return Math.abs(inverse * step - 1) < ROUNDING ? k / inverse : k * step;
  }

  private static LineString line(Chain part, Frame frame, GeometryFactory factory) {
    int n = part.size();
    Coordinate[] points = new Coordinate[part.closed() ? n + 1 : n];
    for (int i = 0; i < n; i++) {
      points[i] = frame.toMap(part.x()[i], part.y()[i]);
    }
    if (part.closed()) {
      points[n] = points[0].copy();
    }
    return factory.createLineString(points);
  }
}
