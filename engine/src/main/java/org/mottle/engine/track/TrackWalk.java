package org.mottle.engine.track;

import java.util.Arrays;

/** A track as a function of time: straight lines between its points, still beyond its ends. */
final class TrackWalk {
  private final double[] seconds;
  private final double[] x;
  private final double[] y;

  TrackWalk(Track track) {
    this.seconds = track.seconds();
    this.x = track.x();
    this.y = track.y();
  }

  double start() {
    return seconds[0];
  }

  double end() {
    return seconds[seconds.length - 1];
  }

  double x(double second) {
    return at(x, second);
  }

  double y(double second) {
    return at(y, second);
  }

  /** Any value given at the points, between them. */
  double at(double[] value, double second) {
    int after = after(second);
    if (after == 0) {
      return value[0];
    }
    if (after == seconds.length) {
      return value[after - 1];
    }
    double span = seconds[after] - seconds[after - 1];
    double share = (second - seconds[after - 1]) / span;
    return value[after - 1] + share * (value[after] - value[after - 1]);
  }

  /** Squared distance between the places {@code half} seconds before and after, m². */
  double squaredMove(double second, double half) {
    double dx = x(second + half) - x(second - half);
    double dy = y(second + half) - y(second - half);
    return dx * dx + dy * dy;
  }

  /** Mean speed along the straight line of the stretch round a moment, m/s. */
  double speed(double second, double half) {
    double from = Math.max(start(), second - half);
    double to = Math.min(end(), second + half);
    return to > from ? Math.hypot(x(to) - x(from), y(to) - y(from)) / (to - from) : 0;
  }

  /** Time to the nearest point of the track, s. */
  double secondsToPoint(double second) {
    int after = after(second);
    double before = after == 0 ? Double.POSITIVE_INFINITY : second - seconds[after - 1];
    double until = after == seconds.length ? Double.POSITIVE_INFINITY : seconds[after] - second;
    return Math.min(before, until);
  }

  /** How much of the time to the nearest point is beyond what a usual step explains, s. */
  double unseenSeconds(double second, double usual) {
    double away = secondsToPoint(second);
    boolean within = second >= start() && second <= end();
    return within ? Math.max(0, away - usual) : away;
  }

  /** Index of the first point later than this; points of equal time count as one. */
  private int after(double second) {
    int found = Arrays.binarySearch(seconds, second);
    int after = found >= 0 ? found + 1 : -found - 1;
    while (after < seconds.length && seconds[after] <= second) {
      after++;
    }
    return after;
  }
}
