package org.mottle.engine.likelihood;

import java.util.Arrays;
import org.mottle.engine.observation.Observations;

/**
 * How far the stations of a sample lie apart.
 *
 * @param along standard deviation along the main axis, m
 * @param across standard deviation across it, m
 * @param diagonal of the bounding box, m
 * @param nearest median distance of a station to the nearest other, m
 */
record Spread(double along, double across, double diagonal, double nearest) {

  static Spread of(Observations o) {
    int n = o.size();
    double mx = Arrays.stream(o.xs()).average().orElse(0);
    double my = Arrays.stream(o.ys()).average().orElse(0);
    double xx = 0;
    double yy = 0;
    double xy = 0;
    double[] nearest = new double[n];
    Arrays.fill(nearest, Double.POSITIVE_INFINITY);
    for (int i = 0; i < n; i++) {
      double dx = o.x(i) - mx;
      double dy = o.y(i) - my;
      xx += dx * dx / n;
      yy += dy * dy / n;
      xy += dx * dy / n;
      for (int j = 0; j < i; j++) {
        double lag = Math.hypot(o.x(i) - o.x(j), o.y(i) - o.y(j));
        nearest[i] = Math.min(nearest[i], lag);
        nearest[j] = Math.min(nearest[j], lag);
      }
    }
    double half = (xx + yy) / 2;
    double root = Math.hypot((xx - yy) / 2, xy);
    Arrays.sort(nearest);
    return new Spread(
        Math.sqrt(half + root),
        Math.sqrt(Math.max(0, half - root)),
        Math.hypot(range(o.xs()), range(o.ys())),
        n == 0 ? 0 : nearest[n / 2]);
  }

  private static double range(double[] v) {
    return Arrays.stream(v).max().orElse(0) - Arrays.stream(v).min().orElse(0);
  }
}
