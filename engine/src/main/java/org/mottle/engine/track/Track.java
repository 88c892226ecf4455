package org.mottle.engine.track;

import org.mottle.engine.check.Check;

/**
 * Where a receiver was at what time: one stretch without a break. Immutable; arrays are copied in
 * and out.
 *
 * @param seconds [n] time, s since 1970-01-01T00:00Z, never falling
 * @param x [n] east, m
 * @param y [n] north, m
 */
public record Track(double[] seconds, double[] x, double[] y) {
  public Track {
    if (seconds.length == 0 || seconds.length != x.length || seconds.length != y.length) {
      throw new IllegalArgumentException(
          "a track needs as many times as places, at least one; were %d times, %d x and %d y"
              .formatted(seconds.length, x.length, y.length));
    }
    for (int i = 0; i < seconds.length; i++) {
      Check.finite("time of track point " + (i + 1), seconds[i], "s");
      Check.finite("x of track point " + (i + 1), x[i], "m");
      Check.finite("y of track point " + (i + 1), y[i], "m");
      if (i > 0 && seconds[i] < seconds[i - 1]) {
        throw new IllegalArgumentException(
            "the times of a track must not fall, point %d is %s s before the one before it"
                .formatted(i + 1, seconds[i - 1] - seconds[i]));
      }
    }
    seconds = seconds.clone();
    x = x.clone();
    y = y.clone();
  }

  @Override
  public double[] seconds() {
    return seconds.clone();
  }

  @Override
  public double[] x() {
    return x.clone();
  }

  @Override
  public double[] y() {
    return y.clone();
  }

  public int size() {
    return seconds.length;
  }
}
