package org.mottle.engine.contour;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;
import org.mottle.engine.contour.EdgeNoding.Edge;
import org.mottle.engine.contour.Faces.Face;

/**
 * The code of every face of a map: outside the outline, or what the ground in it is. A sliver
 * thinner than a grain takes the code of the neighbour with which it shares most of its boundary.
 */
final class FaceClasses {
  /** Code and class of the ground outside the outline. */
  static final int OUTSIDE = Integer.MIN_VALUE;

  private final PlanarMap map;
  private final List<Edge> edges;
  private final Faces faces;
  private final int[] codes;

  FaceClasses(PlanarMap map, List<Edge> edges, ToIntFunction<Face> codeOf, double grain) {
    this.map = map;
    this.edges = edges;
    this.faces = new Faces(map);
    this.codes = new int[faces.count()];
    markOutside();
    boolean[] sliver = new boolean[codes.length];
    boolean anySliver = false;
    for (int f = 0; f < codes.length; f++) {
      if (codes[f] != OUTSIDE) {
        codes[f] = codeOf.applyAsInt(faces.face(f));
        sliver[f] = faces.face(f).isSliver(grain);
        anySliver |= sliver[f];
      }
    }
    if (anySliver) {
      mergeSlivers(sliver);
    }
  }

  /** Number of faces. */
  int count() {
    return codes.length;
  }

  /** Code of a face. */
  int code(int face) {
    return codes[face];
  }

  /** Area of a face, m². */
  double area(int face) {
    return faces.face(face).area();
  }

  /** The face on the left of a half-edge, or {@link Faces#UNBOUNDED}. */
  int face(int half) {
    return faces.ofCycle(map.cycle(half));
  }

  private void markOutside() {
    for (int half = 0; half < 2 * edges.size(); half++) {
      if (map.has(half >> 1) && face(half) != Faces.UNBOUNDED) {
        int ground = edges.get(half >> 1).ground();
        if (((half & 1) == 0 ? ground : -ground) < 0) {
          codes[face(half)] = OUTSIDE;
        }
      }
    }
  }

  private void mergeSlivers(boolean[] sliver) {
    double[][] shared = new double[codes.length][];
    int[][] neighbours = new int[codes.length][];
    for (int half = 0; half < 2 * edges.size(); half++) {
      if (map.has(half >> 1) && face(half) != Faces.UNBOUNDED && sliver[face(half)]) {
        int other = face(half ^ 1);
        if (other != Faces.UNBOUNDED && codes[other] != OUTSIDE && other != face(half)) {
          addShared(shared, neighbours, face(half), other, length(half >> 1));
        }
      }
    }
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int f = 0; f < codes.length; f++) {
        if (sliver[f] && neighbours[f] != null) {
          int best = longest(shared[f], neighbours[f], sliver);
          if (best != Faces.UNBOUNDED) {
            codes[f] = codes[best];
            sliver[f] = false;
            changed = true;
          }
        }
      }
    }
  }

  private static void addShared(
      double[][] shared, int[][] neighbours, int face, int other, double length) {
    int n = neighbours[face] == null ? 0 : neighbours[face].length;
    for (int i = 0; i < n; i++) {
      if (neighbours[face][i] == other) {
        shared[face][i] += length;
        return;
      }
    }
    neighbours[face] = n == 0 ? new int[1] : Arrays.copyOf(neighbours[face], n + 1);
    shared[face] = n == 0 ? new double[1] : Arrays.copyOf(shared[face], n + 1);
    neighbours[face][n] = other;
    shared[face][n] = length;
  }

  private static int longest(double[] shared, int[] neighbours, boolean[] sliver) {
    int best = Faces.UNBOUNDED;
    double most = 0;
    for (int i = 0; i < neighbours.length; i++) {
      if (!sliver[neighbours[i]] && shared[i] > most) {
        most = shared[i];
        best = neighbours[i];
      }
    }
    return best;
  }

  /** Length of an edge, m. */
  double length(int edge) {
    double length = 0;
    for (int i = 1; i < edges.get(edge).points().length; i++) {
      length += edges.get(edge).points()[i].distance(edges.get(edge).points()[i - 1]);
    }
    return length;
  }
}
