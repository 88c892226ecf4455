package org.mottle.engine.track;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.mottle.engine.check.Check;
import org.mottle.engine.survey.Refusal;

/**
 * Places of readings by their times: linear between the points of the track on either side.
 *
 * <p>The standard error per axis is sqrt(s² + (v t)²), s of the receiver, t of the clock and v the
 * speed at the moment, 0 while standing. A reading up to 30 s before the start or after the end of
 * a track is put to that end, and where the track breaks off for up to a minute it is interpolated;
 * either with what the walker could have covered added to the error. Further insertions at a
 * station, numbered 2 and more and within a minute, share the mean of their places. Cost: a binary
 * search a reading and track. Stateless.
 */
public final class TrackPositions {
  /** A reading further than this outside the track is not placed, s. */
  public static final double OUTSIDE_S = 30;

  /** Below this speed a walker stands, m/s (common practice, no source). */
  public static final double STANDING_M_S = 0.3;

  private static final double PACE_M_S = 1.2;

  /** Half the stretch over which the speed is taken, s; longer than a usual step of the track. */
  private static final double HALF_STRETCH_S = 5;

  private static final double SAME_STATION_S = 60;

  private TrackPositions() {}

  /**
   * @param tracks of any number, not overlapping
   * @param seconds [n] times of readings on the clock of the tracks, s
   * @param gnssSdM standard error of the receiver per axis, m
   * @param clockSdS standard error of the times, s
   * @return [n], in the order given
   */
  public static List<TrackPlace> at(
      List<Track> tracks, double[] seconds, double gnssSdM, double clockSdS) {
    int[] first = new int[seconds.length];
    Arrays.fill(first, 1);
    return at(tracks, seconds, first, gnssSdM, clockSdS);
  }

  /**
   * @param replicates [n] 1 for the first insertion at a station, more for further ones
   */
  public static List<TrackPlace> at(
      List<Track> tracks, double[] seconds, int[] replicates, double gnssSdM, double clockSdS) {
    Check.atLeast("standard error of the receiver", gnssSdM, 0, "m");
    Check.atLeast("standard error of the times", clockSdS, 0, "s");
    if (replicates.length != seconds.length) {
      throw new IllegalArgumentException(
          "as many replicate numbers as times are needed, were %d and %d"
              .formatted(replicates.length, seconds.length));
    }
    TrackPlace[] places = new TrackPlace[seconds.length];
    for (int i = 0; i < places.length; i++) {
      places[i] = place(tracks, seconds[i], gnssSdM, clockSdS);
    }
    share(places, seconds, replicates);
    return List.of(places);
  }

  private static TrackPlace place(
      List<Track> tracks, double second, double gnssSdM, double clockSdS) {
    if (!Double.isFinite(second)) {
      return new TrackPlace.NotPlaced(
          new Refusal("the reading has no time", "give its time, or its position"));
    }
    TrackWalk nearest = null;
    double off = Double.POSITIVE_INFINITY;
    for (Track track : tracks) {
      TrackWalk walk = new TrackWalk(track);
      double outside = walk.secondsToPoint(second);
      if (outside < off) {
        off = outside;
        nearest = walk;
      }
    }
    if (nearest == null || off > OUTSIDE_S) {
      return new TrackPlace.NotPlaced(
          new Refusal(
              nearest == null
                  ? "there is no track"
                  : String.format(
                      Locale.ROOT, "the nearest point of the track is %.0f s away in time", off),
              "give the position of the reading, or the track of that time"));
    }
    double v = nearest.speed(second, HALF_STRETCH_S);
    double moved = (v < STANDING_M_S ? 0 : v) * clockSdS;
    double unseen = PACE_M_S * nearest.unseenSeconds(second, 2 * HALF_STRETCH_S);
    double sd = Math.sqrt(gnssSdM * gnssSdM + moved * moved + unseen * unseen);
    return new TrackPlace.At(nearest.x(second), nearest.y(second), sd);
  }

  /** Further insertions and the first one before them get the mean of their places. */
  private static void share(TrackPlace[] places, double[] seconds, int[] replicates) {
    int from = 0;
    for (int i = 1; i <= places.length; i++) {
      boolean same =
          i < places.length
              && replicates[i] > 1
              && Math.abs(seconds[i] - seconds[i - 1]) <= SAME_STATION_S;
      if (!same) {
        average(places, from, i);
        from = i;
      }
    }
  }

  private static void average(TrackPlace[] places, int from, int to) {
    double x = 0;
    double y = 0;
    double worst = 0;
    int n = 0;
    for (int i = from; i < to; i++) {
      if (places[i] instanceof TrackPlace.At at) {
        x += at.x();
        y += at.y();
        worst = Math.max(worst, at.sdM());
        n++;
      }
    }
    if (n < 2) {
      return;
    }
    for (int i = from; i < to; i++) {
      if (places[i] instanceof TrackPlace.At) {
        places[i] = new TrackPlace.At(x / n, y / n, worst);
      }
    }
  }
}
