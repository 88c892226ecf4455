package org.mottle.engine.population;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;

/** Stations on invented greens of 25 m by 20 m, and values on them; seeded. */
final class InventedGreens {
  static final double WIDTH = 25;
  static final double HEIGHT = 20;

  private final Random random;

  InventedGreens(long seed) {
    random = new Random(seed);
  }

  /** [2][n] places that keep off one another: each the farthest of twenty tries. */
  double[][] places(int n) {
    double[][] place = new double[2][n];
    for (int i = 0; i < n; i++) {
      double farthest = -1;
      for (int t = 0; t < 20; t++) {
        double x = WIDTH * random.nextDouble();
        double y = HEIGHT * random.nextDouble();
        double gap = Double.MAX_VALUE;
        for (int j = 0; j < i; j++) {
          gap = Math.min(gap, Math.hypot(x - place[0][j], y - place[1][j]));
        }
        if (gap > farthest) {
          farthest = gap;
          place[0][i] = x;
          place[1][i] = y;
        }
      }
    }
    return place;
  }

  double[] normal(int n, double mean, double sd) {
    return random.doubles(n).map(u -> mean + sd * random.nextGaussian()).toArray();
  }

  /** The first {@code low} of n values are lower by {@code depth}. */
  double[] two(int n, int low, double depth, double sd) {
    double[] value = normal(n, 20, sd);
    for (int i = 0; i < low; i++) {
      value[i] -= depth;
    }
    return value;
  }

  /** The places, those nearest to a random centre first. */
  double[][] patchFirst(double[][] place) {
    double x = WIDTH * random.nextDouble();
    double y = HEIGHT * random.nextDouble();
    return sorted(place, i -> Math.hypot(place[0][i] - x, place[1][i] - y));
  }

  /** The places in random order. */
  double[][] shuffled(double[][] place) {
    double[] key = random.doubles(place[0].length).toArray();
    return sorted(place, i -> key[i]);
  }

  private static double[][] sorted(double[][] place, java.util.function.IntToDoubleFunction key) {
    Integer[] order = new Integer[place[0].length];
    Arrays.setAll(order, i -> i);
    Arrays.sort(order, Comparator.comparingDouble(key::applyAsDouble));
    double[][] sorted = new double[2][order.length];
    for (int i = 0; i < order.length; i++) {
      sorted[0][i] = place[0][order[i]];
      sorted[1][i] = place[1][order[i]];
    }
    return sorted;
  }

  /** Spherical field of range 12 m and sill 3 with a nugget of 1.5, mean 20. */
  double[] field(double[][] place) {
    int n = place[0].length;
    double[][] lower = new double[n][n];
    double[] value = new double[n];
    double[] normal = normal(n, 0, 1);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double h = Math.hypot(place[0][i] - place[0][j], place[1][i] - place[1][j]) / 12;
        double c = h < 1 ? 3 * (1 - h * (1.5 - h * h / 2)) : 0;
        c += i == j ? 1.5 : 0;
        for (int k = 0; k < j; k++) {
          c -= lower[i][k] * lower[j][k];
        }
        lower[i][j] = i == j ? Math.sqrt(c) : c / lower[j][j];
        value[i] += lower[i][j] * normal[j];
      }
      value[i] += 20;
    }
    return value;
  }

  static StationValues planned(double[] value, double[][] place) {
    return StationValues.of("", value, place[0], place[1], new boolean[value.length]);
  }

  /** Values without places of interest: a row of stations, 5 m apart. */
  static StationValues inRow(double[] value) {
    double[] x = new double[value.length];
    Arrays.setAll(x, i -> 5.0 * i);
    return planned(value, new double[][] {x, new double[value.length]});
  }

  static PopulationOutcome test(double[]... surveys) {
    return TwoPopulations.test(Arrays.stream(surveys).map(InventedGreens::inRow).toList());
  }

  static TwoFound found(StationValues... surveys) {
    return (TwoFound) TwoPopulations.test(List.of(surveys));
  }
}
