package org.mottle.engine.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

/** A bean-shaped green of about 500 m² and fields of known covariance over it. */
final class InventedGreen {
  static final NestedModel MODEL = NestedModel.of(0, new Exponential(4, 6));
  static final double NUGGET = 1;
  static final double MEAN = 22;

  private InventedGreen() {}

  static Geometry outline() {
    Coordinate[] ring = new Coordinate[73];
    for (int i = 0; i < 72; i++) {
      double t = Math.toRadians(5 * i);
      double r = 12.6 + 2.2 * Math.cos(2 * t) + 0.9 * Math.cos(3 * t + 1);
      ring[i] = new Coordinate(400 + r * Math.cos(t), 700 + r * Math.sin(t));
    }
    ring[72] = ring[0];
    return new GeometryFactory().createPolygon(ring);
  }

  static Geometry rectangle(double width, double height) {
    Geometry unit =
        new GeometryFactory().toGeometry(new org.locationtech.jts.geom.Envelope(0, 1, 0, 1));
    return AffineTransformation.scaleInstance(width, height).transform(unit);
  }

  /** Places drawn one after the other, each {@code clear} m or more from those before. */
  static Positions randomPlaces(
      Random random, Positions among, Positions clearOf, double clear, int count) {
    List<double[]> found = new ArrayList<>();
    while (found.size() < count) {
      int i = random.nextInt(among.size());
      double x = among.x(i);
      double y = among.y(i);
      boolean free =
          clearOf.nearest(x, y) >= clear
              && found.stream().allMatch(p -> Math.hypot(p[0] - x, p[1] - y) >= clear);
      if (free) {
        found.add(new double[] {x, y});
      }
    }
    return Positions.of(
        found.stream().mapToDouble(p -> p[0]).toArray(),
        found.stream().mapToDouble(p -> p[1]).toArray());
  }

  static Positions joined(Positions a, Positions b) {
    double[] x = java.util.Arrays.copyOf(a.xs(), a.size() + b.size());
    double[] y = java.util.Arrays.copyOf(a.ys(), x.length);
    System.arraycopy(b.xs(), 0, x, a.size(), b.size());
    System.arraycopy(b.ys(), 0, y, a.size(), b.size());
    return Positions.of(x, y);
  }

  static Observations observed(Positions places, double[] value, double readingVariance) {
    double[] variance = new double[places.size()];
    java.util.Arrays.fill(variance, readingVariance);
    return Observations.of(places.xs(), places.ys(), value).withMeasurementVariance(variance);
  }

  static ModelDraw draw(NestedModel model, Observations observations, double readingVariance) {
    return new ModelDraw(Kriging.ordinary(model).system(observations), readingVariance);
  }

  /** Readings with seeded values at seeded places of the green. */
  static Observations survey(Geometry outline, long seed, int readings) {
    Random random = new Random(seed);
    Positions places =
        randomPlaces(random, AreaPoints.of(outline, 1).positions(), Positions.NONE, 1.5, readings);
    double[] value = new FieldDraws(MODEL, places).draw(random);
    for (int i = 0; i < value.length; i++) {
      value[i] += Math.sqrt(NUGGET) * random.nextGaussian();
    }
    return observed(places, value, NUGGET);
  }

  static Positions places(Observations observations) {
    return Positions.of(observations.xs(), observations.ys());
  }

  /** Gaussian fields at fixed places by the Cholesky factor of their covariance. */
  static final class FieldDraws {
    private final double[][] lower;

    FieldDraws(NestedModel model, Positions places) {
      int n = places.size();
      this.lower = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          double sum =
              model.sill()
                  - model.semivariance(places.x(i) - places.x(j), places.y(i) - places.y(j));
          for (int k = 0; k < j; k++) {
            sum -= lower[i][k] * lower[j][k];
          }
          lower[i][j] = i == j ? Math.sqrt(sum) : sum / lower[j][j];
        }
      }
    }

    double[] draw(Random random) {
      int n = lower.length;
      double[] unit =
          java.util.stream.DoubleStream.generate(random::nextGaussian).limit(n).toArray();
      double[] field = new double[n];
      for (int i = 0; i < n; i++) {
        field[i] = MEAN;
        for (int k = 0; k <= i; k++) {
          field[i] += lower[i][k] * unit[k];
        }
      }
      return field;
    }
  }
}
