package org.mottle.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import org.locationtech.jts.geom.Coordinate;

/**
 * The local pivotal method (Grafström, Lundström and Schelin 2012, Biometrics 68, 514, second
 * variant): of many places drawn at random each starts with the same probability; one drawn at
 * random and its nearest undecided neighbour settle their two between them, until all are taken or
 * left. Every place stays as likely as any other, and neighbours are seldom both taken. O(m²) for m
 * = 60 n places.
 */
final class Pivotal {
  private static final int CANDIDATES = 60;
  private static final double ROUNDING = 1e-9;

  private Pivotal() {}

  static List<Coordinate> places(Ground ground, int n, RandomGenerator random) {
    List<Coordinate> all = ground.random(CANDIDATES * n, random);
    double[] p = new double[all.size()];
    java.util.Arrays.fill(p, 1.0 / CANDIDATES);
    int[] open = IntStream.range(0, p.length).toArray();
    int count = open.length;
    while (count > 1) {
      int at = random.nextInt(count);
      int other = nearest(all, open, count, at);
      settle(p, open[at], open[other], random);
      for (int k : new int[] {Math.max(at, other), Math.min(at, other)}) {
        if (p[open[k]] < ROUNDING || p[open[k]] > 1 - ROUNDING) {
          open[k] = open[--count];
        }
      }
    }
    List<Coordinate> taken = new ArrayList<>();
    for (int i = 0; i < p.length; i++) {
      if (p[i] > 0.5) {
        taken.add(all.get(i));
      }
    }
    return taken;
  }

  /** Where in {@code open} the nearest neighbour stands. */
  private static int nearest(List<Coordinate> all, int[] open, int count, int at) {
    Coordinate c = all.get(open[at]);
    int nearest = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < count; k++) {
      Coordinate o = all.get(open[k]);
      double squared = (o.x - c.x) * (o.x - c.x) + (o.y - c.y) * (o.y - c.y);
      if (k != at && squared < least) {
        least = squared;
        nearest = k;
      }
    }
    return nearest;
  }

  private static void settle(double[] p, int i, int j, RandomGenerator random) {
    double sum = p[i] + p[j];
    if (sum < 1) {
      boolean first = random.nextDouble() * sum < p[i];
      p[i] = first ? sum : 0;
      p[j] = first ? 0 : sum;
    } else {
      boolean first = random.nextDouble() * (2 - sum) < 1 - p[j];
      p[i] = first ? 1 : sum - 1;
      p[j] = first ? sum - 1 : 1;
    }
  }
}
