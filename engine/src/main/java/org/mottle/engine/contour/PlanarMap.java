package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Quadrant;
import org.mottle.engine.contour.EdgeNoding.Edge;

/**
 * The faces between noded edges. Half-edge 2e runs along edge e, 2e + 1 against it; every half-edge
 * has the face on its left. Edges that end nowhere and edges with one face on both sides bound
 * nothing and are left out.
 */
final class PlanarMap {
  private static final int UNKNOWN = -1;

  private final List<Edge> edges;
  private final int[] origin;
  private final int[] next;
  private final int[] cycle;
  private final boolean[] gone;
  private final List<int[]> outgoing = new ArrayList<>();

  PlanarMap(List<Edge> edges) {
    this.edges = edges;
    this.origin = new int[2 * edges.size()];
    this.next = new int[2 * edges.size()];
    this.cycle = new int[2 * edges.size()];
    this.gone = new boolean[edges.size()];
    buildNodes();
    do {
      dropDangles();
      link();
    } while (dropBridges());
  }

  boolean has(int edge) {
    return !gone[edge];
  }

  /** Boundary on the left of a half-edge; half-edges with the same number bound the same face. */
  int cycle(int half) {
    return cycle[half];
  }

  int nodeCount() {
    return outgoing.size();
  }

  int edgeCount() {
    return edges.size();
  }

  int next(int half) {
    return next[half];
  }

  int origin(int half) {
    return origin[half];
  }

  Coordinate[] points(int half) {
    return edges.get(half >> 1).points();
  }

  private void buildNodes() {
    Map<Coordinate, Integer> nodes = new HashMap<>();
    List<List<Integer>> leaving = new ArrayList<>();
    for (int half = 0; half < origin.length; half++) {
      Coordinate start = start(half);
      Integer node = nodes.putIfAbsent(start, leaving.size());
      if (node == null) {
        node = leaving.size();
        leaving.add(new ArrayList<>(4));
      }
      origin[half] = node;
      leaving.get(node).add(half);
    }
    for (List<Integer> halves : leaving) {
      halves.sort(this::compareDirection);
      int[] sorted = new int[halves.size()];
      for (int i = 0; i < sorted.length; i++) {
        sorted[i] = halves.get(i);
      }
      outgoing.add(sorted);
    }
  }

  private Coordinate start(int half) {
    Coordinate[] points = points(half);
    return (half & 1) == 0 ? points[0] : points[points.length - 1];
  }

  private Coordinate towards(int half) {
    Coordinate[] points = points(half);
    return (half & 1) == 0 ? points[1] : points[points.length - 2];
  }

  /** Counter-clockwise from east. */
  private int compareDirection(int one, int other) {
    Coordinate o = start(one);
    Coordinate a = towards(one);
    Coordinate b = towards(other);
    int quadrant = Quadrant.quadrant(o, a);
    int otherQuadrant = Quadrant.quadrant(o, b);
    if (quadrant != otherQuadrant) {
      return Integer.compare(quadrant, otherQuadrant);
    }
    return Orientation.index(o, b, a);
  }

  private void dropDangles() {
    boolean dropped = true;
    while (dropped) {
      dropped = false;
      for (int[] halves : outgoing) {
        int only = onlyOne(halves);
        if (only != UNKNOWN) {
          gone[only >> 1] = true;
          dropped = true;
        }
      }
    }
  }

  private int onlyOne(int[] halves) {
    int only = UNKNOWN;
    for (int half : halves) {
      if (!gone[half >> 1]) {
        if (only != UNKNOWN) {
          return UNKNOWN;
        }
        only = half;
      }
    }
    return only;
  }

  /** A half-edge is followed by the first one clockwise from its way back. */
  private void link() {
    Arrays.fill(cycle, UNKNOWN);
    for (int[] halves : outgoing) {
      int before = UNKNOWN;
      int first = UNKNOWN;
      for (int half : halves) {
        if (!gone[half >> 1]) {
          if (before == UNKNOWN) {
            first = half;
          } else {
            next[half ^ 1] = before;
          }
          before = half;
        }
      }
      if (first != UNKNOWN) {
        next[first ^ 1] = before;
      }
    }
    int count = 0;
    for (int half = 0; half < cycle.length; half++) {
      if (!gone[half >> 1] && cycle[half] == UNKNOWN) {
        for (int h = half; cycle[h] == UNKNOWN; h = next[h]) {
          cycle[h] = count;
        }
        count++;
      }
    }
  }

  private boolean dropBridges() {
    boolean dropped = false;
    for (int e = 0; e < gone.length; e++) {
      if (!gone[e] && cycle[2 * e] == cycle[2 * e + 1]) {
        gone[e] = true;
        dropped = true;
      }
    }
    return dropped;
  }
}
