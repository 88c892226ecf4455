package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;

/**
 * Compact strata of equal area: the places nearest to a middle, less a weight that grows for strata
 * that are too small (a power diagram, Aurenhammer 1987), the middles moved to the centroids in
 * turn. Equal to within 2 % of a stratum or one cell, whichever is more. O(cells × n) a pass, 400
 * passes.
 */
final class Strata {
  private static final int MOVES = 20;
  private static final int PASSES = 20;
  private static final int LAST_PASSES = 400;
  private static final double EQUAL = 0.005;

  private final Ground ground;
  private final List<Coordinate> middles;
  private final double[] weight;

  Strata(Ground ground, int n, RandomGenerator random) {
    this.ground = ground;
    this.middles = new ArrayList<>(new Coverage(ground, List.of()).places(n, random));
    this.weight = new double[n];
    for (int move = 0; move < MOVES; move++) {
      level(PASSES);
      moveToCentroids();
    }
    level(LAST_PASSES);
  }

  int count() {
    return weight.length;
  }

  /** Which stratum a place belongs to. */
  int of(double x, double y) {
    int nearest = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int j = 0; j < weight.length; j++) {
      double dx = x - middles.get(j).x;
      double dy = y - middles.get(j).y;
      double power = dx * dx + dy * dy - weight[j];
      if (power < least) {
        least = power;
        nearest = j;
      }
    }
    return nearest;
  }

  /** Area of each stratum from the cells, m². */
  double[] areasM2() {
    double[] areas = new double[weight.length];
    for (int i = 0; i < ground.cells(); i++) {
      areas[of(ground.x(i), ground.y(i))] += ground.areaM2(i);
    }
    return areas;
  }

  /** Raises the weights of the small ones; ever less, so that single cells do not swing. */
  private void level(int passes) {
    double target = ground.areaM2() / weight.length;
    for (int pass = 0; pass < passes; pass++) {
      double[] areas = areasM2();
      double worst = 0;
      for (int j = 0; j < weight.length; j++) {
        double lacking = (target - areas[j]) / target;
        worst = Math.max(worst, Math.abs(lacking));
        weight[j] += 0.25 * target * lacking / (1 + pass / 40.0);
      }
      if (worst < EQUAL) {
        return;
      }
    }
  }

  private void moveToCentroids() {
    double[][] sum = new double[weight.length][3];
    for (int i = 0; i < ground.cells(); i++) {
      double[] s = sum[of(ground.x(i), ground.y(i))];
      s[0] += ground.areaM2(i);
      s[1] += ground.areaM2(i) * ground.x(i);
      s[2] += ground.areaM2(i) * ground.y(i);
    }
    for (int j = 0; j < sum.length; j++) {
      if (sum[j][0] > 0) {
        middles.set(j, new Coordinate(sum[j][1] / sum[j][0], sum[j][2] / sum[j][0]));
      }
    }
  }

  /** One place at random in each. */
  List<Coordinate> places(RandomGenerator random) {
    Coordinate[] places = new Coordinate[weight.length];
    for (int left = places.length; left > 0; ) {
      Coordinate c = ground.random(random);
      int stratum = of(c.x, c.y);
      if (places[stratum] == null) {
        places[stratum] = c;
        left--;
      }
    }
    return List.of(places);
  }
}
