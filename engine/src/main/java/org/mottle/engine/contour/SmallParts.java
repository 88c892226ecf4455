package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Gives connected parts of a class that are too small to draw to the neighbour with which they
 * share most of their edge: the smallest first, since what joins may make a part large enough.
 * Parts are a union-find forest over the faces; cost n log n in the edges, whatever the ground.
 */
final class SmallParts {
  private static final int NONE = -1;

  private final PlanarMap map;
  private final FaceClasses faces;
  private final int[] classes;
  private final List<List<Integer>> halves = new ArrayList<>();
  private final int[] parent;
  private final double[] areaM2;
  private final double[] shared;

  /** A part as it was when it was noted; one that has grown since is noted again. */
  private record Part(int root, double areaM2) {}

  /**
   * @param classes of the faces; changed by {@link #merge}
   */
  SmallParts(PlanarMap map, FaceClasses faces, int[] classes) {
    this.map = map;
    this.faces = faces;
    this.classes = classes;
    this.parent = new int[classes.length];
    this.areaM2 = new double[classes.length];
    this.shared = new double[Math.max(0, Arrays.stream(classes).max().orElse(0)) + 1];
    for (int f = 0; f < classes.length; f++) {
      halves.add(new ArrayList<>());
      parent[f] = f;
      areaM2[f] = faces.area(f);
    }
    for (int half = 0; half < 2 * map.edgeCount(); half++) {
      if (map.has(half >> 1) && faces.face(half) != Faces.UNBOUNDED) {
        halves.get(faces.face(half)).add(half);
      }
    }
  }

  /** Merges until no part that has a neighbour is smaller than {@code leastM2}. */
  void merge(double leastM2) {
    for (int e = 0; e < map.edgeCount(); e++) {
      joinAlike(e);
    }
    PriorityQueue<Part> small =
        new PriorityQueue<>(Comparator.comparingDouble(Part::areaM2).thenComparingInt(Part::root));
    for (int f = 0; f < classes.length; f++) {
      if (parent[f] == f && classes[f] >= 0 && areaM2[f] < leastM2) {
        small.add(new Part(f, areaM2[f]));
      }
    }
    int[] given = classes.clone();
    while (!small.isEmpty()) {
      Part part = small.poll();
      int root = part.root;
      boolean asNoted = parent[root] == root && areaM2[root] == part.areaM2;
      int taker = asNoted ? neighbour(root, given) : NONE;
      if (taker != NONE) {
        given[root] = taker;
        int joined = joinNeighbours(root, given);
        if (areaM2[joined] < leastM2) {
          small.add(new Part(joined, areaM2[joined]));
        }
      }
    }
    for (int f = 0; f < classes.length; f++) {
      classes[f] = given[root(f)];
    }
  }

  /** Joins the faces on the two sides of an edge when they are of one class. */
  private void joinAlike(int edge) {
    int left = map.has(edge) ? faces.face(2 * edge) : Faces.UNBOUNDED;
    int right = map.has(edge) ? faces.face(2 * edge + 1) : Faces.UNBOUNDED;
    boolean bounded = left != Faces.UNBOUNDED && right != Faces.UNBOUNDED;
    if (bounded && classes[left] >= 0 && classes[left] == classes[right]) {
      join(root(left), root(right));
    }
  }

  /** Joins a part with those of its class round it; its root after. */
  private int joinNeighbours(int root, int[] given) {
    int whole = root;
    for (int half : List.copyOf(halves.get(root))) {
      int other = faces.face(half ^ 1);
      if (other != Faces.UNBOUNDED && given[root(other)] == given[root]) {
        whole = join(whole, root(other));
      }
    }
    return whole;
  }

  private int join(int one, int other) {
    if (one == other) {
      return one;
    }
    int large = halves.get(one).size() >= halves.get(other).size() ? one : other;
    int small = large == one ? other : one;
    parent[small] = large;
    areaM2[large] += areaM2[small];
    halves.get(large).addAll(halves.get(small));
    halves.get(small).clear();
    return large;
  }

  private int root(int face) {
    int at = face;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** The class with a value along most of the edge of a part, or NONE. */
  private int neighbour(int root, int[] given) {
    int best = NONE;
    Arrays.fill(shared, 0);
    for (int half : halves.get(root)) {
      int other = faces.face(half ^ 1);
      int cls = other == Faces.UNBOUNDED ? NONE : given[root(other)];
      if (cls >= 0 && root(other) != root) {
        shared[cls] += faces.length(half >> 1);
        best = best == NONE || shared[cls] > shared[best] ? cls : best;
      }
    }
    return best;
  }
}
