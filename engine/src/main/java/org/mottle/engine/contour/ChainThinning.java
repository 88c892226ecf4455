package org.mottle.engine.contour;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;

/**
 * Puts a traced line on the lattice of {@link Frame#grain()}: points that lie within {@link
 * Frame#thinning()} of the line without them are left out (Douglas and Peucker 1973), the others
 * rounded to the lattice, repeated points and there-and-back spikes removed. No point of the line
 * moves by more than the thinning and a grain, and no segment is shorter than a grain.
 */
final class ChainThinning {
  private ChainThinning() {}

  /** The thinned line, or null when nothing but a point is left. Open ends stay where they are. */
  static Chain thin(Chain chain, double grain, double tolerance) {
    BitSet kept = keep(chain, tolerance);
    int last = chain.size() - 1;
    Chain.Builder points = new Chain.Builder();
    for (int i = kept.nextSetBit(0); i >= 0; i = kept.nextSetBit(i + 1)) {
      boolean end = !chain.closed() && (i == 0 || i == last);
      double step = end ? Frame.UNIT : grain;
      append(points, Frame.round(chain.x()[i], step), Frame.round(chain.y()[i], step));
    }
    if (chain.closed()) {
      dropSpikesAtJoin(points);
    } else {
      dropNearEnds(points, grain);
    }
    int least = chain.closed() ? 3 : 2;
    return points.size() < least ? null : points.build(chain.closed());
  }

  /** Keeps the ends, which are off the lattice, a grain apart from what follows. */
  private static void dropNearEnds(Chain.Builder points, double grain) {
    while (points.size() > 2 && near(points, 0, 1, grain)) {
      points.remove(1);
    }
    while (points.size() > 2 && near(points, points.size() - 1, points.size() - 2, grain)) {
      points.remove(points.size() - 2);
    }
  }

  private static boolean near(Chain.Builder points, int i, int j, double distance) {
    return Math.hypot(points.x(i) - points.x(j), points.y(i) - points.y(j)) < distance;
  }

  private static void append(Chain.Builder points, double x, double y) {
    int n = points.size();
    if (n > 0 && points.x(n - 1) == x && points.y(n - 1) == y) {
      return;
    }
    if (n > 1 && points.x(n - 2) == x && points.y(n - 2) == y) {
      points.remove(points.size() - 1);
      return;
    }
    points.add(x, y);
  }

  private static void dropSpikesAtJoin(Chain.Builder points) {
    while (points.size() > 1) {
      int n = points.size();
      if (same(points, 0, n - 1)) {
        points.remove(points.size() - 1);
      } else if (n > 2 && same(points, 0, n - 2)) {
        points.remove(n - 1);
        points.remove(n - 2);
      } else if (n > 2 && same(points, 1, n - 1)) {
        points.remove(0);
        points.remove(points.size() - 1);
      } else {
        return;
      }
    }
  }

  private static boolean same(Chain.Builder points, int i, int j) {
    return points.x(i) == points.x(j) && points.y(i) == points.y(j);
  }

  private static BitSet keep(Chain chain, double tolerance) {
    int n = chain.size();
    BitSet kept = new BitSet(n);
    Deque<int[]> open = new ArrayDeque<>();
    kept.set(0);
    if (chain.closed()) {
      int far = farthest(chain);
      kept.set(far);
      open.push(new int[] {far, n});
      open.push(new int[] {0, far});
    } else {
      kept.set(n - 1);
      open.push(new int[] {0, n - 1});
    }
    while (!open.isEmpty()) {
      int[] span = open.pop();
      int worst = worst(chain, span[0], span[1], tolerance);
      if (worst >= 0) {
        kept.set(worst);
        open.push(new int[] {worst, span[1]});
        open.push(new int[] {span[0], worst});
      }
    }
    return kept;
  }

  private static int farthest(Chain chain) {
    int far = 0;
    double most = -1;
    for (int i = 0; i < chain.size(); i++) {
      double d = Math.hypot(chain.x()[i] - chain.x()[0], chain.y()[i] - chain.y()[0]);
      if (d > most) {
        most = d;
        far = i;
      }
    }
    return far;
  }

  /** The point farthest from the chord, or -1 when all lie within the tolerance. */
  private static int worst(Chain chain, int from, int to, double tolerance) {
    double[] x = chain.x();
    double[] y = chain.y();
    int end = to % chain.size();
    double most = tolerance * tolerance;
    int worst = -1;
    for (int i = from + 1; i < to; i++) {
      double d = Segments.distanceSquared(x[i], y[i], x[from], y[from], x[end], y[end]);
      if (d > most) {
        most = d;
        worst = i;
      }
    }
    return worst;
  }
}
