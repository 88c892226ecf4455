package org.mottle.engine.inversedistance;

import java.util.function.Supplier;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.neighbour.BucketGrid;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;

/** Weights the neighbours of one target at a time; scratch memory of one thread. */
final class NearObservations {
  private final Observations observations;
  private final double power;
  private final BucketGrid.Search search;
  private double[] weight = new double[32];

  private NearObservations(Observations observations, double power, BucketGrid.Search search) {
    this.observations = observations;
    this.power = power;
    this.search = search;
  }

  static Supplier<Panels.Work> onTargets(
      Observations observations, InverseDistance method, Targets targets, double[] value) {
    BucketGrid grid = new BucketGrid(observations.xs(), observations.ys());
    return () -> {
      NearObservations near =
          new NearObservations(observations, method.power(), grid.search(method.neighbourhood()));
      return (from, to) -> {
        for (int j = from; j < to; j++) {
          value[j] = near.value(targets.x(j), targets.y(j), -1);
        }
      };
    };
  }

  static Supplier<Panels.Work> withoutOne(
      Observations observations, InverseDistance method, double[] value) {
    BucketGrid grid = new BucketGrid(observations.xs(), observations.ys());
    return () -> {
      NearObservations near =
          new NearObservations(observations, method.power(), grid.search(method.neighbourhood()));
      return (from, to) -> {
        for (int j = from; j < to; j++) {
          value[j] = near.value(observations.x(j), observations.y(j), j);
        }
      };
    };
  }

  /** NaN where nothing is in reach. */
  private double value(double x, double y, int excluded) {
    int n = search.find(x, y, excluded);
    if (n == 0) {
      return Double.NaN;
    }
    if (n > weight.length) {
      weight = new double[Math.max(n, 2 * weight.length)];
    }
    for (int i = 0; i < n; i++) {
      weight[i] = search.squaredDistance(i);
    }
    DistanceWeight.ofSquares(power, weight, n);
    double reference = observations.value(search.row(0));
    double weights = 0;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      weights += weight[i];
      sum += weight[i] * (observations.value(search.row(i)) - reference);
    }
    double mean = reference + sum / weights;
    return Double.isFinite(mean) ? mean : closest(n);
  }

  /** On, or all but on, an observation: the mean of the closest. */
  private double closest(int n) {
    double closest = Double.POSITIVE_INFINITY;
    double sum = 0;
    int count = 0;
    for (int i = 0; i < n; i++) {
      double square = search.squaredDistance(i);
      if (square < closest) {
        closest = square;
        sum = 0;
        count = 0;
      }
      if (square == closest) {
        sum += observations.value(search.row(i));
        count++;
      }
    }
    return sum / count;
  }
}
