package org.mottle.engine.plan;

import java.util.SplittableRandom;

/**
 * Shortens open walks over the nodes of a distance matrix. Node 0 is where the walk sets out; it
 * ends at whichever node comes last. Neighbourhoods: 2-opt, a stretch reversed (Croes 1958), and
 * Or-opt, up to three nodes moved elsewhere, either way round (Or 1976); the best move first, ties
 * to the lowest index. Walks that neither shortens are shaken by exchanging two neighbouring
 * stretches and shortened again; the search goes on from there unless it is more than 3 % longer
 * than the best (iterated local search; Lourenço, Martin and Stützle 2003). It begins with the
 * walks to the nearest node not yet visited, by way of each node first. Shakes come from a stream
 * whose seed is the number of nodes, so equal input gives equal walks.
 *
 * <p>O(n²) a pass. Used by one thread.
 */
final class WalkSearch {
  /** Shortenings below this are rounding, m. */
  static final double ROUNDING = 1e-9;

  private static final int LONGEST_MOVED = 3;
  private static final int MOST_SHAKES = 60;
  private static final double SLACK = 1.03;

  /** Pairs of nodes looked at by all starts, or by all shakes, in one pass. */
  private static final int PAIRS = 100_000;

  private final double[][] d;
  private final int last;

  /**
   * @param d [n + 1] x [n + 1] symmetric distances, node 0 the start, m
   */
  WalkSearch(double[][] d) {
    this.d = d;
    this.last = d.length - 1;
  }

  /** A short walk from node 0 over all others: the nodes in their order, 0 first. */
  int[] walk() {
    int[] best = shortened(nearestFirst(0));
    int starts = Math.min(last, PAIRS / Math.max(1, last * last));
    for (int i = 0; i < starts; i++) {
      int[] walk = shortened(nearestFirst(1 + (int) ((long) i * last / starts)));
      best = length(walk) < length(best) - ROUNDING ? walk : best;
    }
    return shaken(best);
  }

  double length(int[] walk) {
    double sum = 0;
    for (int i = 1; i < walk.length; i++) {
      sum += d[walk[i - 1]][walk[i]];
    }
    return sum;
  }

  /** The nearest node not yet visited, again and again; {@code first} right after the start. */
  private int[] nearestFirst(int first) {
    int[] walk = new int[last + 1];
    boolean[] visited = new boolean[last + 1];
    visited[0] = true;
    for (int step = 1; step <= last; step++) {
      int next = step == 1 && first > 0 ? first : nearest(walk[step - 1], visited);
      visited[next] = true;
      walk[step] = next;
    }
    return walk;
  }

  private int nearest(int node, boolean[] visited) {
    int nearest = -1;
    for (int i = 1; i <= last; i++) {
      if (!visited[i] && (nearest < 0 || d[node][i] < d[node][nearest])) {
        nearest = i;
      }
    }
    return nearest;
  }

  private int[] shaken(int[] start) {
    int[] best = start;
    int[] current = start;
    int shakes = last < 4 ? 0 : Math.min(MOST_SHAKES, PAIRS / (last * last));
    SplittableRandom random = new SplittableRandom(last);
    for (int i = 0; i < shakes; i++) {
      int[] walk = shortened(exchanged(current, random));
      double length = length(walk);
      if (length < length(best) - ROUNDING) {
        best = walk;
      }
      current = length < SLACK * length(best) ? walk : best;
    }
    return best;
  }

  private int[] exchanged(int[] walk, SplittableRandom random) {
    int from = 1 + random.nextInt(last - 1);
    int middle = from + 1 + random.nextInt(last - from);
    int to = middle + random.nextInt(last - middle + 1);
    int[] changed = walk.clone();
    System.arraycopy(walk, middle, changed, from, to - middle + 1);
    System.arraycopy(walk, from, changed, from + to - middle + 1, middle - from);
    return changed;
  }

  private int[] shortened(int[] start) {
    int[] walk = start.clone();
    while (reverseBest(walk) || moveBest(walk)) {
      continue;
    }
    return walk;
  }

  /** Reverses the stretch that saves most; false if none saves anything. */
  private boolean reverseBest(int[] walk) {
    double most = ROUNDING;
    int bestFrom = 0;
    int bestTo = 0;
    for (int from = 1; from < last; from++) {
      double[] before = d[walk[from - 1]];
      double leg = before[walk[from]];
      for (int to = from + 1; to <= last; to++) {
        double saving = leg - before[walk[to]];
        if (to < last) {
          saving += d[walk[to]][walk[to + 1]] - d[walk[from]][walk[to + 1]];
        }
        if (saving > most) {
          most = saving;
          bestFrom = from;
          bestTo = to;
        }
      }
    }
    reverse(walk, bestFrom, bestTo);
    return bestFrom > 0;
  }

  private static void reverse(int[] walk, int from, int to) {
    for (int i = from, j = to; i < j; i++, j--) {
      int swap = walk[i];
      walk[i] = walk[j];
      walk[j] = swap;
    }
  }

  /** A stretch to be moved behind another place of the walk. */
  private record Move(int from, int to, int behind, boolean turned, double saving) {}

  /** Moves the stretch that saves most; false if none saves anything. */
  private boolean moveBest(int[] walk) {
    Move best = new Move(0, 0, 0, false, ROUNDING);
    for (int from = 1; from <= last; from++) {
      for (int to = from; to <= last && to < from + LONGEST_MOVED; to++) {
        best = better(walk, from, to, best);
      }
    }
    if (best.from > 0) {
      move(walk, best);
    }
    return best.from > 0;
  }

  private Move better(int[] walk, int from, int to, Move sofar) {
    Move best = sofar;
    int a = walk[from];
    int b = walk[to];
    double freed = d[walk[from - 1]][a];
    if (to < last) {
      freed += d[b][walk[to + 1]] - d[walk[from - 1]][walk[to + 1]];
    }
    for (int k = 0; k <= last && freed > best.saving; k++) {
      if (k >= from - 1 && k <= to) {
        continue;
      }
      double[] behind = d[walk[k]];
      double there = behind[a];
      double turned = behind[b];
      if (k < last) {
        int next = walk[k + 1];
        there += d[b][next] - behind[next];
        turned += d[a][next] - behind[next];
      }
      double saving = freed - Math.min(there, turned);
      if (saving > best.saving) {
        best = new Move(from, to, k, turned < there, saving);
      }
    }
    return best;
  }

  private static void move(int[] walk, Move move) {
    int length = move.to - move.from + 1;
    int[] stretch = new int[length];
    System.arraycopy(walk, move.from, stretch, 0, length);
    int at;
    if (move.behind < move.from) {
      at = move.behind + 1;
      System.arraycopy(walk, at, walk, at + length, move.from - at);
    } else {
      at = move.behind - length + 1;
      System.arraycopy(walk, move.to + 1, walk, move.from, move.behind - move.to);
    }
    if (move.turned) {
      reverse(stretch, 0, length - 1);
    }
    System.arraycopy(stretch, 0, walk, at, length);
  }
}
