package org.mottle.engine.inversedistance;

import java.util.Arrays;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;

/**
 * Weights all observations for panels of targets: one observation at a time over the whole panel,
 * in the order of their rows. A weight that is infinite, at an observation or within a hair of it,
 * leaves a sum that is not finite; such targets are done again one by one.
 */
final class AllObservations implements Panels.Work {
  private final Observations observations;
  private final double power;
  private final Targets targets;
  private final double[] value;
  private final double[] x;
  private final double[] y;
  private final double[] weight;
  private final double[] weights;
  private final double[] sums;

  AllObservations(
      Observations observations, double power, Targets targets, int width, double[] value) {
    this.observations = observations;
    this.power = power;
    this.targets = targets;
    this.value = value;
    this.x = new double[width];
    this.y = new double[width];
    this.weight = new double[width];
    this.weights = new double[width];
    this.sums = new double[width];
  }

  @Override
  public void panel(int from, int to) {
    int count = to - from;
    for (int j = 0; j < count; j++) {
      x[j] = targets.x(from + j);
      y[j] = targets.y(from + j);
    }
    Arrays.fill(weights, 0);
    Arrays.fill(sums, 0);
    double reference = observations.value(0);
    for (int i = 0; i < observations.size(); i++) {
      squares(observations.x(i), observations.y(i), count);
      DistanceWeight.ofSquares(power, weight, count);
      add(observations.value(i) - reference, count);
    }
    for (int j = 0; j < count; j++) {
      double mean = reference + sums[j] / weights[j];
      value[from + j] = Double.isFinite(mean) ? mean : Coincident.value(observations, x[j], y[j]);
    }
  }

  private void squares(double ox, double oy, int count) {
    for (int j = 0; j < count; j++) {
      double dx = x[j] - ox;
      double dy = y[j] - oy;
      weight[j] = dx * dx + dy * dy;
    }
  }

  private void add(double difference, int count) {
    for (int j = 0; j < count; j++) {
      weights[j] += weight[j];
      sums[j] += weight[j] * difference;
    }
  }
}
