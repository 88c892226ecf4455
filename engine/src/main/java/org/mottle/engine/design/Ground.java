package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.plan.AreaPoints;

/**
 * Ground on which stations may stand: a green less its inset, and the cells that stand for it. A
 * cell is 0.5 m, or larger where more than 20,000 would be needed. Not thread-safe: the locator
 * builds its index at the first question.
 */
final class Ground {
  private static final double CELL_M = 0.5;
  private static final int MOST_CELLS = 20_000;

  private final Geometry shape;
  private final IndexedPointInAreaLocator locator;
  private final Frame frame;
  private final double[] x;
  private final double[] y;
  private final double[] area;

  Ground(Geometry shape) {
    this.shape = shape;
    this.locator = new IndexedPointInAreaLocator(shape);
    this.frame = Frame.round(shape);
    double cell = Math.max(CELL_M, Math.sqrt(shape.getArea() / MOST_CELLS));
    AreaPoints points = AreaPoints.of(shape, cell);
    this.x = points.positions().xs();
    this.y = points.positions().ys();
    this.area = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      area[i] = points.areaM2(i);
    }
  }

  Geometry shape() {
    return shape;
  }

  Frame frame() {
    return frame;
  }

  double areaM2() {
    return shape.getArea();
  }

  int cells() {
    return x.length;
  }

  double x(int cell) {
    return x[cell];
  }

  double y(int cell) {
    return y[cell];
  }

  double areaM2(int cell) {
    return area[cell];
  }

  boolean holds(Coordinate c) {
    return locator.locate(c) != Location.EXTERIOR;
  }

  /** The point itself if it lies on this ground, else the nearest middle of a cell that does. */
  Coordinate nearest(Coordinate c) {
    if (holds(c)) {
      return c;
    }
    Coordinate nearest = shape.getInteriorPoint().getCoordinate();
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < x.length; i++) {
      Coordinate middle = new Coordinate(x[i], y[i]);
      double distance = middle.distance(c);
      if (distance < least && holds(middle)) {
        least = distance;
        nearest = middle;
      }
    }
    return nearest;
  }

  /** A place at random, each as likely as any other. */
  Coordinate random(RandomGenerator random) {
    Envelope box = shape.getEnvelopeInternal();
    Coordinate c;
    do {
      c =
          new Coordinate(
              box.getMinX() + random.nextDouble() * box.getWidth(),
              box.getMinY() + random.nextDouble() * box.getHeight());
    } while (!holds(c));
    return c;
  }

  List<Coordinate> random(int count, RandomGenerator random) {
    List<Coordinate> places = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      places.add(random(random));
    }
    return places;
  }
}
