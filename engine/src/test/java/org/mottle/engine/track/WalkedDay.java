package org.mottle.engine.track;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A morning on several greens: legs of 2 to 9 m at 1.2 m/s, 20 s an insertion with the value after
 * 12 s, a stretch of track a green, with a jitter that forgets itself over 30 s.
 */
record WalkedDay(List<Track> tracks, double[] seconds, double[] x, double[] y) {

  static WalkedDay of(long seed, int greens, int step, double jitterM, boolean onePiece) {
    Random random = new Random(seed);
    List<Track> tracks = new ArrayList<>();
    List<double[]> read = new ArrayList<>();
    List<double[]> path = new ArrayList<>();
    double clock = 1_750_000_000.0 + random.nextInt(1000);
    for (int g = 0; g < greens; g++) {
      double px = 200 * g;
      double py = 0;
      if (!onePiece || g == 0) {
        path.clear();
      }
      path.add(new double[] {clock, px, py});
      for (int s = 0; s < 18; s++) {
        double leg = 2 + 7 * random.nextDouble();
        double turn = 2 * Math.PI * random.nextDouble();
        px += leg * Math.cos(turn);
        py += leg * Math.sin(turn);
        clock = Math.ceil(clock + leg / 1.2);
        path.add(new double[] {clock, px, py});
        read.add(new double[] {clock + 12, px, py});
        clock += 20;
        path.add(new double[] {clock, px, py});
      }
      if (!onePiece || g == greens - 1) {
        tracks.add(track(path, step, jitterM, random));
      }
      clock += onePiece ? 160 : 120 + random.nextInt(600);
    }
    return new WalkedDay(tracks, column(read, 0), column(read, 1), column(read, 2));
  }

  private static Track track(List<double[]> path, int step, double jitterM, Random random) {
    TrackWalk walk = new TrackWalk(new Track(column(path, 0), column(path, 1), column(path, 2)));
    List<double[]> points = new ArrayList<>();
    double keep = Math.exp(-step / 30.0);
    double fresh = jitterM * Math.sqrt(1 - keep * keep);
    double wx = jitterM * random.nextGaussian();
    double wy = jitterM * random.nextGaussian();
    for (double t = walk.start() - step; t <= walk.end() + step; t += step) {
      points.add(new double[] {t, walk.x(t) + wx, walk.y(t) + wy});
      wx = keep * wx + fresh * random.nextGaussian();
      wy = keep * wy + fresh * random.nextGaussian();
    }
    return new Track(column(points, 0), column(points, 1), column(points, 2));
  }

  private static double[] column(List<double[]> rows, int column) {
    return rows.stream().mapToDouble(r -> r[column]).toArray();
  }

  /** Times as a clock shows them that is so many seconds ahead. */
  double[] ahead(double offset) {
    return java.util.Arrays.stream(seconds).map(s -> s + offset).toArray();
  }
}
