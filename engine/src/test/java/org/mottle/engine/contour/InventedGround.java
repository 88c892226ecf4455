package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.grid.Raster;

/** Outlines and surfaces for tests, from a seed. */
public final class InventedGround {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private InventedGround() {}

  /** A closed curve r(t) = radius (1 + waves), star-shaped, hence simple. */
  public static LinearRing wobbly(
      Random random, double x, double y, double radius, int points, double waves) {
    double[] amplitude = new double[6];
    double[] phase = new double[6];
    for (int k = 0; k < amplitude.length; k++) {
      amplitude[k] = waves * random.nextDouble() / (k + 1);
      phase[k] = 2 * Math.PI * random.nextDouble();
    }
    Coordinate[] ring = new Coordinate[points + 1];
    for (int i = 0; i < points; i++) {
      double t = 2 * Math.PI * i / points;
      double r = radius;
      for (int k = 0; k < amplitude.length; k++) {
        r += radius * amplitude[k] * Math.cos((k + 2) * t - phase[k]);
      }
      ring[i] = new Coordinate(x + r * Math.cos(t), y + r * Math.sin(t));
    }
    ring[points] = ring[0].copy();
    return FACTORY.createLinearRing(ring);
  }

  /** A green, with holes when asked for: one in the middle and one on the way to the edge. */
  public static Polygon green(
      Random random, double x, double y, double radius, int points, boolean holes) {
    LinearRing shell = wobbly(random, x, y, radius, points, 0.12);
    List<LinearRing> inner = new ArrayList<>();
    if (holes) {
      inner.add(wobbly(random, x - 0.2 * radius, y, 0.15 * radius, 24, 0.2));
      inner.add(wobbly(random, x + 0.3 * radius, y + 0.1 * radius, 0.1 * radius, 9, 0.2));
    }
    return FACTORY.createPolygon(shell, inner.toArray(LinearRing[]::new));
  }

  /** Two greens side by side as one outline. */
  public static Geometry pair(Random random, double x, double y, double radius) {
    return FACTORY.createMultiPolygon(
        new Polygon[] {
          green(random, x - 1.7 * radius, y, radius, 60, false),
          green(random, x + 1.7 * radius, y, 0.8 * radius, 41, true)
        });
  }

  /** A sum of waves about 18 with a standard deviation of about 3. */
  public static DoubleBinaryOperator smooth(Random random, double wavelength) {
    double[][] waves = new double[8][];
    for (int k = 0; k < waves.length; k++) {
      double bearing = 2 * Math.PI * random.nextDouble();
      double number = 2 * Math.PI / (wavelength * (0.5 + random.nextDouble()));
      waves[k] =
          new double[] {
            number * Math.cos(bearing),
            number * Math.sin(bearing),
            2 * Math.PI * random.nextDouble()
          };
    }
    return (x, y) -> {
      double sum = 18;
      for (double[] wave : waves) {
        sum += 1.5 * Math.cos(wave[0] * x + wave[1] * y + wave[2]);
      }
      return sum;
    };
  }

  /** The surface at the centres that an outline needs. */
  public static Raster raster(GreenCells cells, DoubleBinaryOperator value) {
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] values = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      values[i] = value.applyAsDouble(x[i], y[i]);
    }
    return cells.surface(values);
  }

  /** Two discs of radius 6 m joined by a straight neck 8 m long. */
  public static Polygon dumbbell(double x, double y, double neckWidth) {
    List<Coordinate> points = new ArrayList<>();
    double half = Math.asin(neckWidth / 12);
    for (int side = 0; side < 2; side++) {
      double middle = side == 0 ? Math.PI : 0;
      double centre = side == 0 ? x + 10 : x - 10;
      for (int i = 0; i <= 40; i++) {
        double t = middle + half + (2 * Math.PI - 2 * half) * i / 40;
        points.add(new Coordinate(centre + 6 * Math.cos(t), y + 6 * Math.sin(t)));
      }
    }
    points.add(points.get(0).copy());
    return FACTORY.createPolygon(points.toArray(Coordinate[]::new));
  }

  /** A rectangle by its corners. */
  public static Polygon rectangle(double west, double south, double east, double north) {
    return FACTORY.createPolygon(
        new Coordinate[] {
          new Coordinate(west, south),
          new Coordinate(east, south),
          new Coordinate(east, north),
          new Coordinate(west, north),
          new Coordinate(west, south)
        });
  }
}
