package org.mottle.engine.likelihood;

import org.mottle.engine.interval.Interval;

/**
 * The interval of a parameter from its profile: where the log likelihood is within half of the
 * chi-squared quantile with one degree of freedom of its greatest value (Wilks 1938); with several
 * peaks, from the lowest to the highest value so near. Between nodes the profile is taken as linear
 * in the logarithm of the parameter, at the top as a parabola.
 */
final class Profile {
  /** Half of the 0.90 quantile of chi-squared with one degree of freedom. */
  static final double DROP = 1.3528;

  private Profile() {}

  static Interval interval(double[] axis, double[] profile) {
    int top = 0;
    for (int i = 1; i < axis.length; i++) {
      top = profile[i] > profile[top] ? i : top;
    }
    double limit = profile[top] - DROP;
    int low = 0;
    while (profile[low] < limit) {
      low++;
    }
    int high = axis.length - 1;
    while (profile[high] < limit) {
      high--;
    }
    double from = low == 0 ? axis[0] : crossing(axis, profile, low - 1, low, limit);
    double to =
        high == axis.length - 1 ? axis[high] : crossing(axis, profile, high + 1, high, limit);
    return new Interval(from, Math.max(from, Math.min(best(axis, profile, top), to)), to);
  }

  /**
   * Greatest value, between nodes where a parabola through the highest and its neighbours rises.
   */
  static double height(double[] profile) {
    int top = 0;
    for (int i = 1; i < profile.length; i++) {
      top = profile[i] > profile[top] ? i : top;
    }
    if (top == 0 || top == profile.length - 1) {
      return profile[top];
    }
    double before = profile[top - 1] - profile[top];
    double after = profile[top + 1] - profile[top];
    double bend = before + after;
    return bend == 0
        ? profile[top]
        : profile[top] - (before - after) * (before - after) / (8 * bend);
  }

  private static double crossing(
      double[] axis, double[] profile, int outside, int inside, double limit) {
    double t = (limit - profile[outside]) / (profile[inside] - profile[outside]);
    return axis[outside] * Math.pow(axis[inside] / axis[outside], t);
  }

  private static double best(double[] axis, double[] profile, int top) {
    if (top == 0 || top == axis.length - 1) {
      return axis[top];
    }
    double before = profile[top - 1] - profile[top];
    double after = profile[top + 1] - profile[top];
    double shift = before + after == 0 ? 0 : 0.5 * (before - after) / (before + after);
    return axis[top] * Math.pow(axis[top + 1] / axis[top], shift);
  }
}
