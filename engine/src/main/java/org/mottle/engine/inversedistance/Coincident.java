package org.mottle.engine.inversedistance;

import org.mottle.engine.observation.Observations;

/** The mean of the observations nearest to a place that lies on, or all but on, one of them. */
final class Coincident {

  private Coincident() {}

  static double value(Observations observations, double x, double y) {
    double closest = Double.POSITIVE_INFINITY;
    double sum = 0;
    int count = 0;
    for (int i = 0; i < observations.size(); i++) {
      double dx = observations.x(i) - x;
      double dy = observations.y(i) - y;
      double square = dx * dx + dy * dy;
      if (square < closest) {
        closest = square;
        sum = 0;
        count = 0;
      }
      if (square == closest) {
        sum += observations.value(i);
        count++;
      }
    }
    return sum / count;
  }
}
