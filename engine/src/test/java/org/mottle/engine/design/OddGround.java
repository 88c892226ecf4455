package org.mottle.engine.design;

import java.util.Random;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Green;

/** Greens with lobes and a bunker in them, some with a neck or in two parts. */
final class OddGround {
  static final GeometryFactory FACTORY = new GeometryFactory();

  private OddGround() {}

  static Green green(long seed) {
    Random random = new Random(seed);
    double a = 11 + 5 * random.nextDouble();
    double b = 8 + 4 * random.nextDouble();
    double lobe = 0.3 * random.nextDouble();
    double phase = 6 * random.nextDouble();
    Coordinate[] ring = new Coordinate[73];
    for (int i = 0; i < 72; i++) {
      double t = i * Math.PI / 36;
      double r = a * b / Math.hypot(b * Math.cos(t), a * Math.sin(t));
      r *= 1 + lobe * Math.cos(3 * t + phase);
      ring[i] = new Coordinate(1000 + r * Math.cos(t), 2000 + r * Math.sin(t));
    }
    ring[72] = ring[0].copy();
    Geometry outline = FACTORY.createPolygon(ring);
    Geometry bunker = disc(1000 + 4 * random.nextDouble(), 2000 + 3 * random.nextDouble(), 2);
    outline = outline.difference(bunker);
    if (seed % 3 == 0) {
      outline = outline.union(disc(1000 + 1.6 * a, 2000, 4));
    }
    return Green.of("odd " + seed, outline);
  }

  static Geometry disc(double x, double y, double radius) {
    return FACTORY.createPoint(new Coordinate(x, y)).buffer(radius);
  }
}
