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
  private static final double MOST_LEVELS = 10_000;

  private IsoLines() {}

  /**
   * Lines at whole multiples of a step.
   *
   * @param outline valid polygon or multipolygon, m
   * @param surface values at cell centres
   * @param step between levels, above 0
   * @param limits of the bands drawn beside the lines; may be empty
   */
  public static List<IsoLine> of(Geometry outline, Raster surface, double step, double[] limits) {
    Check.above("step", step, 0, "");
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < surface.grid().size(); i++) {
      if (surface.has(i)) {
        least = Math.min(least, surface.value(i));
        most = Math.max(most, surface.value(i));
      }
    }
    if ((most - least) / step > MOST_LEVELS) {
      throw new IllegalArgumentException(
          "a step of " + step + " between " + least + " and " + most + " gives too many levels");
    }
    List<Double> levels = new ArrayList<>();
    for (double k = Math.ceil(least / step - ROUNDING); k * step <= most; k++) {
      levels.add(multiple(k, step));
    }
    return at(outline, surface, levels.stream().mapToDouble(d -> d).toArray(), limits);
  }

  /** Lines at whole multiples of a step. */
  public static List<IsoLine> of(Geometry outline, Raster surface, double step) {
    return of(outline, surface, step, new double[0]);
  }

  /** Lines at given levels; those the surface does not reach inside the outline are left out. */
  public static List<IsoLine> at(
      Geometry outline, Raster surface, double[] levels, double[] limits) {
    Level[] limitLevels = Level.ofLimits(limits);
    ContourLines lines = new ContourLines(outline, surface);
    List<IsoLine> found = new ArrayList<>();
    for (double value : levels) {
      Level level = new Level(value, true);
      for (Level limit : limitLevels) {
        if (Math.abs(limit.value() - value) <= ROUNDING * Math.max(1, Math.abs(value))) {
          level = limit;
        }
      }
      LineString[] parts =
          lines.at(level).stream()
              .map(part -> line(part, lines.frame(), outline.getFactory()))
              .toArray(LineString[]::new);
      if (parts.length > 0) {
        found.add(new IsoLine(value, outline.getFactory().createMultiLineString(parts)));
      }
    }
    return found;
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
