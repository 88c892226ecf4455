package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;

/**
 * Stations of a regular grid with a random start, its rows along the long side of the ground: side
 * √(A/n) for squares, √(2A/(√3 n)) for triangles. A grid of that side rarely has exactly n points
 * on the ground, so for a start the side is stretched or shrunk by steps of 0.2 % until it has; of
 * up to 60 starts the first within 3 % is taken, else the one that is stretched least, by at most
 * 25 %. Empty if there is none. O(n) a trial.
 */
final class Lattice {
  private static final int STARTS = 60;
  private static final double STEP = 0.002;
  private static final int LITTLE = 15;
  private static final int MOST = 125;

  private final Ground ground;
  private final int n;
  private final double side;
  private final double rowShare;
  private final double shift;

  private Lattice(Ground ground, int n, double side, double rowShare, double shift) {
    this.ground = ground;
    this.n = n;
    this.side = side;
    this.rowShare = rowShare;
    this.shift = shift;
  }

  static Lattice square(Ground ground, int n) {
    return new Lattice(ground, n, Math.sqrt(ground.areaM2() / n), 1, 0);
  }

  static Lattice triangular(Ground ground, int n) {
    double side = Math.sqrt(2 * ground.areaM2() / (Math.sqrt(3) * n));
    return new Lattice(ground, n, side, Math.sqrt(3) / 2, 0.5);
  }

  List<Coordinate> places(RandomGenerator random) {
    List<Coordinate> best = List.of();
    int least = MOST + 1;
    for (int start = 0; start < STARTS && least > LITTLE; start++) {
      double u = random.nextDouble();
      double v = random.nextDouble();
      for (int stretch = 0; stretch < least; stretch++) {
        List<Coordinate> exact = exact(u, v, stretch);
        if (!exact.isEmpty()) {
          best = exact;
          least = stretch;
        }
      }
    }
    return best;
  }

  private List<Coordinate> exact(double u, double v, int stretch) {
    List<Coordinate> wider = points(u, v, side * (1 + stretch * STEP));
    if (wider.size() == n) {
      return wider;
    }
    List<Coordinate> closer = points(u, v, side * (1 - stretch * STEP));
    return closer.size() == n ? closer : List.of();
  }

  private List<Coordinate> points(double u, double v, double step) {
    Frame frame = ground.frame();
    int columns = (int) Math.ceil(frame.halfLong() / step) + 2;
    int rows = (int) Math.ceil(frame.halfShort() / (step * rowShare)) + 2;
    List<Coordinate> points = new ArrayList<>();
    for (int row = -rows; row <= rows; row++) {
      double odd = Math.floorMod(row, 2) * shift;
      for (int column = -columns; column <= columns; column++) {
        Coordinate c = frame.at((column + u + odd) * step, (row + v) * step * rowShare);
        if (ground.holds(c)) {
          points.add(c);
        }
      }
    }
    return points;
  }
}
