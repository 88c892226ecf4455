package org.mottle.engine.track;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * What it costs to suppose a reading at a moment of the track: the squared move within some 16 s
 * over the third quartile of such moves on the track, at most 1; more by up to 1 with the squared
 * distance from the green of the reading; and 2.5 where there is no track. The quartile makes the
 * cost know the jitter of the receiver. Tabulated by the second.
 */
final class StopCosts {
  private static final double OUTSIDE = 2.5;

  private final double[] seconds;
  private final int[] outlineOf;
  private final long start;
  private final int reach;
  private final float[] move;
  private final List<float[]> far;

  private StopCosts(
      double[] seconds, int[] outlineOf, long start, int reach, float[] move, List<float[]> far) {
    this.seconds = seconds;
    this.outlineOf = outlineOf;
    this.start = start;
    this.reach = reach;
    this.move = move;
    this.far = far;
  }

  static StopCosts of(
      List<Track> tracks,
      double[] readingSeconds,
      List<Geometry> outlines,
      ClockSettings settings) {
    List<TrackWalk> walks = tracks.stream().map(TrackWalk::new).toList();
    long start = (long) walks.stream().mapToDouble(TrackWalk::start).min().orElseThrow();
    double end = walks.stream().mapToDouble(TrackWalk::end).max().orElseThrow();
    float[] move = new float[(int) Math.min(1 << 24, (long) Math.ceil(end) - start + 1)];
    Arrays.fill(move, (float) OUTSIDE);
    double limit = moves(walks, start, settings.standS() / 2, move);
    for (int t = 0; t < move.length; t++) {
      move[t] = move[t] < 0 ? (float) Math.min(1, -(move[t] + 1) / limit) : move[t];
    }
    double[] times = new double[readingSeconds.length];
    int[] outlineOf = new int[times.length];
    Map<Geometry, Integer> known = new HashMap<>();
    List<float[]> far = new ArrayList<>();
    int n = 0;
    for (int k = 0; k < readingSeconds.length; k++) {
      if (!Double.isFinite(readingSeconds[k])) {
        continue;
      }
      Geometry outline = outlines.isEmpty() ? null : outlines.get(k);
      if (outline != null && !known.containsKey(outline)) {
        known.put(outline, far.size());
        far.add(distances(tracks, outline, start, move.length, settings.outlineM()));
      }
      outlineOf[n] = outline == null ? -1 : known.get(outline);
      times[n++] = readingSeconds[k];
    }
    return new StopCosts(
        Arrays.copyOf(times, n), outlineOf, start, (int) Math.round(settings.searchS()), move, far);
  }

  /** Writes -1 - squared move for every second within a track; the third quartile of all. */
  private static double moves(List<TrackWalk> walks, long start, double half, float[] move) {
    double[] all = new double[move.length];
    int n = 0;
    for (TrackWalk walk : walks) {
      int from = (int) Math.ceil(walk.start() - start);
      int to = (int) Math.min(move.length - 1L, (long) Math.floor(walk.end()) - start);
      for (int t = from; t <= to; t++) {
        double squared = walk.squaredMove((double) start + t, half);
        move[t] = (float) (-1 - squared);
        all[n++] = squared;
      }
    }
    double[] sorted = Arrays.copyOf(all, n);
    Arrays.sort(sorted);
    return n == 0 ? 1 : Math.max(1, sorted[3 * n / 4]);
  }

  private static float[] distances(
      List<Track> tracks, Geometry outline, long start, int length, double outlineM) {
    float[] far = new float[length];
    for (Track track : tracks) {
      double[] x = track.x();
      double[] y = track.y();
      double[] away = new double[track.size()];
      for (int i = 0; i < away.length; i++) {
        away[i] =
            outline.distance(outline.getFactory().createPoint(new Coordinate(x[i], y[i])))
                / outlineM;
      }
      TrackWalk walk = new TrackWalk(track);
      int from = (int) Math.ceil(walk.start() - start);
      int to = (int) Math.min(length - 1L, (long) Math.floor(walk.end()) - start);
      for (int t = from; t <= to; t++) {
        double a = walk.at(away, (double) start + t);
        far[t] = (float) Math.min(1, a * a);
      }
    }
    return far;
  }

  /** [offset][reading] for offsets one second apart. */
  double[][] byOffset() {
    double[][] cost = new double[2 * reach + 1][seconds.length];
    for (int o = 0; o < cost.length; o++) {
      for (int k = 0; k < seconds.length; k++) {
        int t = moment(o, k);
        int outline = outlineOf[k];
        boolean within = t >= 0 && t < move.length;
        cost[o][k] = !within ? OUTSIDE : move[t] + (outline < 0 ? 0 : far.get(outline)[t]);
      }
    }
    return cost;
  }

  int offset(int o) {
    return o - reach;
  }

  /** How many readings fall into the track. */
  int met(int o) {
    int met = 0;
    for (int k = 0; k < seconds.length; k++) {
      int t = moment(o, k);
      met += t >= 0 && t < move.length && move[t] < OUTSIDE ? 1 : 0;
    }
    return met;
  }

  int mostMet() {
    int most = 0;
    for (int o = 0; o <= 2 * reach; o++) {
      most = Math.max(most, met(o));
    }
    return most;
  }

  private int moment(int o, int k) {
    double t = Math.rint(seconds[k] - offset(o) - start);
    return (int) Math.max(-1, Math.min(Integer.MAX_VALUE, t));
  }
}
