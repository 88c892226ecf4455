package org.mottle.engine.contour;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * Gives connected parts of a class that are too small to draw to the neighbour with which they
 * share most of their edge: the smallest first, since what joins may make a part large enough.
 */
final class SmallParts {
  private static final int NONE = -1;

  private final PlanarMap map;
  private final FaceClasses faces;
  private final int[] classes;
  private final List<List<Integer>> halves = new ArrayList<>();

  /**
   * @param classes of the faces; changed by {@link #merge}
   */
  SmallParts(PlanarMap map, FaceClasses faces, int[] classes) {
    this.map = map;
    this.faces = faces;
    this.classes = classes;
    for (int f = 0; f < classes.length; f++) {
      halves.add(new ArrayList<>());
    }
    for (int half = 0; half < 2 * map.edgeCount(); half++) {
      if (map.has(half >> 1) && faces.face(half) != Faces.UNBOUNDED) {
        halves.get(faces.face(half)).add(half);
      }
    }
  }

  /** Merges until no part that has a neighbour is smaller than {@code leastM2}. */
  void merge(double leastM2) {
    while (mergeSmallest(leastM2)) {}
  }

  private boolean mergeSmallest(double leastM2) {
    boolean[] seen = new boolean[classes.length];
    List<Integer> smallest = List.of();
    int taker = NONE;
    double least = leastM2;
    for (int f = 0; f < classes.length; f++) {
      if (!seen[f] && classes[f] >= 0) {
        List<Integer> part = part(f, seen);
        double area = part.stream().mapToDouble(faces::area).sum();
        if (area < least) {
          int neighbour = neighbour(part);
          if (neighbour != NONE) {
            smallest = part;
            taker = neighbour;
            least = area;
          }
        }
      }
    }
    for (int f : smallest) {
      classes[f] = taker;
    }
    return taker != NONE;
  }

  /** The faces of the same class that hang together with a face by edges. */
  private List<Integer> part(int face, boolean[] seen) {
    List<Integer> part = new ArrayList<>();
    Deque<Integer> open = new ArrayDeque<>();
    open.push(face);
    seen[face] = true;
    while (!open.isEmpty()) {
      int f = open.pop();
      part.add(f);
      for (int half : halves.get(f)) {
        int other = faces.face(half ^ 1);
        if (other != Faces.UNBOUNDED && !seen[other] && classes[other] == classes[f]) {
          seen[other] = true;
          open.push(other);
        }
      }
    }
    return part;
  }

  /** The class with a value along most of the edge of a part, or NONE. */
  private int neighbour(List<Integer> part) {
    int own = classes[part.get(0)];
    double[] shared = new double[Arrays.stream(classes).max().orElse(0) + 1];
    int best = NONE;
    for (int f : part) {
      for (int half : halves.get(f)) {
        int other = faces.face(half ^ 1);
        int cls = other == Faces.UNBOUNDED ? NONE : classes[other];
        if (cls >= 0 && cls != own) {
          shared[cls] += faces.length(half >> 1);
          best = best == NONE || shared[cls] > shared[best] ? cls : best;
        }
      }
    }
    return best;
  }
}
