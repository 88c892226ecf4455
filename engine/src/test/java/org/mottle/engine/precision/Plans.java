package org.mottle.engine.precision;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.NestedModel;

/** Round greens with square grids of stations. */
final class Plans {
  private static final int STARTS = 8;

  private Plans() {}

  static Geometry round(double areaM2) {
    return new GeometryFactory()
        .createPoint(new Coordinate(0, 0))
        .buffer(Math.sqrt(areaM2 / Math.PI), 32);
  }

  /** A square grid of spacing sqrt(area / n), its start such that it has n stations or nearly. */
  static Prediction grid(Geometry green, int n, NestedModel model, double jitterM) {
    double spacing = Math.sqrt(green.getArea() / n);
    List<Coordinate> best = List.of();
    for (int k = 0; k < STARTS * STARTS; k++) {
      List<Coordinate> some =
          lattice(green, spacing, k % STARTS * spacing / STARTS, k / STARTS * spacing / STARTS);
      if (Math.abs(some.size() - n) < Math.abs(best.size() - n)) {
        best = some;
      }
    }
    return at(green, best, model, jitterM);
  }

  private static List<Coordinate> lattice(Geometry green, double spacing, double x, double y) {
    List<Coordinate> inside = new ArrayList<>();
    for (int i = -10; i <= 10; i++) {
      for (int j = -10; j <= 10; j++) {
        Coordinate c = new Coordinate(x + i * spacing, y + j * spacing);
        if (green.contains(green.getFactory().createPoint(c))) {
          inside.add(c);
        }
      }
    }
    return inside;
  }

  /** Stations read once each. */
  static Prediction at(Geometry green, List<Coordinate> at, NestedModel model, double jitterM) {
    double[] insertions = new double[at.size()];
    Arrays.fill(insertions, 1);
    double[] jitter = new double[at.size()];
    Arrays.fill(jitter, jitterM);
    return Prediction.of(
        green,
        at.stream().mapToDouble(Coordinate::getX).toArray(),
        at.stream().mapToDouble(Coordinate::getY).toArray(),
        insertions,
        model,
        new PositionError(jitter, 0));
  }
}
