package org.mottle.engine.design;

import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;

/**
 * Compact strata of equal area: the places nearest to a middle, less a weight that grows for strata
 * that are too small (a power diagram, Aurenhammer 1987), the middles moved to the centroids in
 * turn. A cell that a border passes counts for both sides by the border's distance from its middle.
 * Equal to within 2 % of a stratum. O(cells × n) a pass, some 100 passes.
 */
final class Strata {
  private static final int MOVES = 8;
  private static final int PASSES = 8;
  private static final int LAST_PASSES = 400;
  private static final double EQUAL = 0.005;

  /** Area that a change of weight by 1 m² moves is about that of a square's four sides: 2 m². */
  private static final double STEP = 0.4;

  private final Ground ground;
  private final double[] middleX;
  private final double[] middleY;
  private final double[] weight;

  Strata(Ground ground, int n, RandomGenerator random) {
    this.ground = ground;
    List<Coordinate> middles = new Coverage(ground, List.of()).places(n, random);
    this.middleX = middles.stream().mapToDouble(c -> c.x).toArray();
    this.middleY = middles.stream().mapToDouble(c -> c.y).toArray();
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
      double power = power(j, x, y);
      if (power < least) {
        least = power;
        nearest = j;
      }
    }
    return nearest;
  }

  /** Area of each stratum, m². */
  double[] areasM2() {
    double[] areas = new double[weight.length];
    for (int i = 0; i < ground.cells(); i++) {
      addCell(i, areas);
    }
    return areas;
  }

  private void addCell(int cell, double[] areas) {
    double x = ground.x(cell);
    double y = ground.y(cell);
    int first = 0;
    int second = -1;
    double least = Double.POSITIVE_INFINITY;
    double next = Double.POSITIVE_INFINITY;
    for (int j = 0; j < weight.length; j++) {
      double power = power(j, x, y);
      if (power < least) {
        second = least < Double.POSITIVE_INFINITY ? first : -1;
        next = least;
        first = j;
        least = power;
      } else if (power < next) {
        second = j;
        next = power;
      }
    }
    double area = ground.areaM2(cell);
    double share = second < 0 ? 1 : share(first, second, next - least, Math.sqrt(area));
    areas[first] += share * area;
    if (share < 1) {
      areas[second] += (1 - share) * area;
    }
  }

  /** How much of a cell of this side lies on the side of the nearer middle. */
  private double share(int first, int second, double difference, double side) {
    double apart = Math.hypot(middleX[first] - middleX[second], middleY[first] - middleY[second]);
    return Math.min(1, 0.5 + difference / (2 * apart * side));
  }

  private double power(int stratum, double x, double y) {
    double dx = x - middleX[stratum];
    double dy = y - middleY[stratum];
    return dx * dx + dy * dy - weight[stratum];
  }

  /** Raises the weights of the small ones. */
  private void level(int passes) {
    double target = ground.areaM2() / weight.length;
    for (int pass = 0; pass < passes; pass++) {
      double[] areas = areasM2();
      double worst = 0;
      for (int j = 0; j < weight.length; j++) {
        worst = Math.max(worst, Math.abs(target - areas[j]) / target);
        weight[j] += STEP * (target - areas[j]);
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
        middleX[j] = sum[j][1] / sum[j][0];
        middleY[j] = sum[j][2] / sum[j][0];
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
