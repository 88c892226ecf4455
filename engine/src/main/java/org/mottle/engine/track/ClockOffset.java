package org.mottle.engine.track;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.survey.Refusal;

/**
 * By how much the clock of the readings was ahead of that of the track: the offset at which the
 * readings fall where the walker stood. Each reading costs how far the walker moved within 16 s
 * round it ({@link StopCosts}); the least mean cost over all offsets within two hours is sought in
 * steps of 1 s, smoothed over 5.
 *
 * <p>The standard error is the jackknife's over blocks of readings, and 2 s more in squares since
 * the value may be taken early or late while the walker stands. Refused where too few readings fall
 * into the track, or where an offset more than 30 s away explains the readings about as well. Cost:
 * offsets times readings, 2 million look-ups for a day. Stateless.
 */
public final class ClockOffset {
  private static final int HOUR_S = 3600;
  private static final int LEAST_READINGS = 5;
  private static final int SMOOTH_S = 2;
  private static final int APART_S = 30;
  private static final int BLOCKS = 10;
  private static final double MOMENT_SD_S = 2;
  private static final double CLEAR_SDS = 2;

  private ClockOffset() {}

  /**
   * @param tracks one or more stretches of the receiver
   * @param readingSeconds times of readings on their own clock, s since 1970-01-01T00:00Z
   */
  public static ClockOutcome search(
      List<Track> tracks, double[] readingSeconds, ClockSettings settings) {
    return search(tracks, readingSeconds, List.of(), settings);
  }

  /**
   * @param outlines the green of each reading, null where not known; or an empty list
   */
  public static ClockOutcome search(
      List<Track> tracks,
      double[] readingSeconds,
      List<Geometry> outlines,
      ClockSettings settings) {
    if (!outlines.isEmpty() && outlines.size() != readingSeconds.length) {
      throw new IllegalArgumentException(
          "outlines must be none or one a reading, were %d for %d readings"
              .formatted(outlines.size(), readingSeconds.length));
    }
    int timed = (int) Arrays.stream(readingSeconds).filter(Double::isFinite).count();
    if (tracks.isEmpty() || timed < LEAST_READINGS) {
      return refuse(
          "%d tracks and %d readings with a time cannot be compared"
              .formatted(tracks.size(), timed),
          "give the track of the day, and the times of at least " + LEAST_READINGS + " readings");
    }
    StopCosts costs = StopCosts.of(tracks, readingSeconds, outlines, settings);
    double[][] cost = costs.byOffset();
    double[] mean = smoothedMeans(cost);
    int best = least(mean, 0, mean.length, -1);
    int met = costs.met(best);
    if (met < Math.ceil(settings.leastMet() * timed)) {
      return refuse(
          String.format(
              Locale.ROOT,
              "the track never meets the readings: with any clock offset within %.1f h at most %d"
                  + " of %d fall into it",
              settings.searchS() / HOUR_S,
              costs.mostMet(),
              timed),
          "check the date and the time zone of both, or give the track of that day");
    }
    int rival = least(mean, 0, mean.length, best);
    if (rival >= 0 && !clear(cost[best], cost[rival])) {
      return refuse(
          "clock offsets of %d s and %d s explain the readings about as well"
              .formatted(costs.offset(best), costs.offset(rival)),
          "add readings of other greens of the day, or name the offset");
    }
    double error = Math.hypot(jackknife(cost, best), MOMENT_SD_S);
    return found(costs.offset(best) + vertex(mean, best), error, met, timed, settings);
  }

  private static ClockOutcome found(
      double searched, double error, int met, int timed, ClockSettings settings) {
    double near = HOUR_S * (double) Math.round(searched / HOUR_S);
    boolean snapped = Math.abs(searched - near) <= Math.max(settings.snapS(), 2 * error);
    double offset = snapped ? near : searched;
    int hours = snapped ? (int) Math.round(near / HOUR_S) : 0;
    String side = offset > 0 ? "ahead of" : "behind";
    String note = "";
    if (hours != 0) {
      note =
          "the clock of the readings was %d h %s that of the track, as with summer time: corrected"
              .formatted(Math.abs(hours), side);
    } else if (!snapped) {
      note =
          String.format(
              Locale.ROOT,
              "the clock of the readings was %.0f s %s that of the track: corrected",
              Math.abs(offset),
              side);
    }
    return new ClockOutcome.Found(offset, searched, error, hours, met, timed, note);
  }

  private static double[] smoothedMeans(double[][] cost) {
    double[] mean = new double[cost.length];
    for (int o = 0; o < cost.length; o++) {
      for (double c : cost[o]) {
        mean[o] += c / cost[o].length;
      }
    }
    double[] smooth = new double[mean.length];
    for (int o = 0; o < mean.length; o++) {
      int n = 0;
      for (int i = Math.max(0, o - SMOOTH_S); i <= Math.min(mean.length - 1, o + SMOOTH_S); i++) {
        smooth[o] += mean[i];
        n++;
      }
      smooth[o] /= n;
    }
    return smooth;
  }

  /** Where the least is, apart from the neighbourhood of one place; -1 when nothing is left. */
  private static int least(double[] mean, int from, int to, int apartFrom) {
    int least = -1;
    for (int o = from; o < to; o++) {
      boolean allowed = apartFrom < 0 || Math.abs(o - apartFrom) > APART_S;
      if (allowed && (least < 0 || mean[o] < mean[least])) {
        least = o;
      }
    }
    return least;
  }

  /** Whether the readings agree that one offset is better, by their differences. */
  private static boolean clear(double[] best, double[] rival) {
    double sum = 0;
    double squares = 0;
    int n = best.length;
    for (int k = 0; k < n; k++) {
      double d = rival[k] - best[k];
      sum += d;
      squares += d * d;
    }
    double mean = sum / n;
    double variance = Math.max(0, squares / n - mean * mean) / (n - 1);
    return mean > 0 && mean > CLEAR_SDS * Math.sqrt(variance);
  }

  private static double vertex(double[] mean, int best) {
    if (best == 0 || best == mean.length - 1) {
      return 0;
    }
    double bend = mean[best - 1] - 2 * mean[best] + mean[best + 1];
    double shift = bend > 0 ? (mean[best - 1] - mean[best + 1]) / (2 * bend) : 0;
    return Math.max(-0.5, Math.min(0.5, shift));
  }

  private static double jackknife(double[][] cost, int best) {
    int from = Math.max(0, best - APART_S);
    int to = Math.min(cost.length, best + APART_S + 1);
    int n = cost[0].length;
    int blocks = Math.min(BLOCKS, n);
    double[] at = new double[blocks];
    for (int b = 0; b < blocks; b++) {
      double[][] left = new double[to - from][];
      int low = b * n / blocks;
      int high = (b + 1) * n / blocks;
      for (int o = from; o < to; o++) {
        left[o - from] = cost[o].clone();
        Arrays.fill(left[o - from], low, high, 0);
      }
      at[b] = least(smoothedMeans(left), 0, to - from, -1);
    }
    double mean = Arrays.stream(at).average().orElse(0);
    double squares = Arrays.stream(at).map(v -> (v - mean) * (v - mean)).sum();
    return Math.sqrt(squares * (blocks - 1) / blocks);
  }

  private static ClockOutcome refuse(String reason, String remedy) {
    return new ClockOutcome.NotFound(new Refusal(reason, remedy));
  }
}
