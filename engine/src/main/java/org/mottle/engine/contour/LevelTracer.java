package org.mottle.engine.contour;

import java.util.ArrayList;
import java.util.List;

/**
 * Follows the lines of one level through the triangles of a {@link LinearSurface}, each triangle
 * once, since a level passes a triangle in one straight piece or not at all. Lines end only where
 * the traced squares end.
 *
 * <p>Corners of a square run north-west, north-east, south-east, south-west; triangle k lies
 * between corner k, corner k + 1 and the middle.
 */
final class LevelTracer {
  private static final int[] CORNER_ROW = {0, 0, 1, 1};
  private static final int[] CORNER_COLUMN = {0, 1, 1, 0};
  private static final int OUTER = 0;
  private static final int FIRST_SPOKE = 1;
  private static final int SECOND_SPOKE = 2;

  private final QuadMask mask;
  private final LinearSurface surface;
  private final Level level;
  private final Frame frame;
  private final int columns;
  private final int[] corner;
  private final int[] beyond;
  private final boolean[] visited;

  private int quad;
  private int triangle;

  LevelTracer(QuadMask mask, Level level, Frame frame) {
    this.mask = mask;
    this.surface = mask.surface();
    this.level = level;
    this.frame = frame;
    this.columns = surface.grid().columns();
    this.corner = new int[] {0, 1, columns + 1, columns};
    this.beyond = new int[] {-columns, 1, columns, -1};
    this.visited = new boolean[4 * surface.grid().size()];
  }

  List<Chain> trace() {
    List<Chain> chains = new ArrayList<>();
    for (int at : mask.between(level.lowest(), level.highest())) {
      for (int k = 0; k < 4; k++) {
        if (!visited[4 * at + k] && crossings(at, k) != 0) {
          chains.add(chain(at, k));
        }
      }
    }
    return chains;
  }

  private Chain chain(int at, int k) {
    Chain.Builder points = new Chain.Builder();
    int crossed = crossings(at, k);
    int one = crosses(crossed, OUTER) ? OUTER : FIRST_SPOKE;
    int other = crosses(crossed, SECOND_SPOKE) ? SECOND_SPOKE : FIRST_SPOKE;
    boolean closed = follow(at, k, other, points);
    if (!closed) {
      points.reverse();
      follow(at, k, one, points);
    }
    return points.build(closed);
  }

  /** The edges of a triangle that the level crosses, one bit each: none or two. */
  private int crossings(int at, int k) {
    boolean middle = level.isAbove(surface.middle(at));
    boolean first = level.isAbove(surface.centre(at + corner[k]));
    boolean second = level.isAbove(surface.centre(at + corner[(k + 1) & 3]));
    return (first != second ? 1 << OUTER : 0)
        | (first != middle ? 1 << FIRST_SPOKE : 0)
        | (second != middle ? 1 << SECOND_SPOKE : 0);
  }

  private static boolean crosses(int crossed, int edge) {
    return (crossed >> edge & 1) == 1;
  }

  /** Leaves the triangle by an edge and goes on; true when it comes back to where it started. */
  private boolean follow(int at, int k, int leaveBy, Chain.Builder points) {
    quad = at;
    triangle = k;
    int exit = leaveBy;
    while (true) {
      visited[4 * quad + triangle] = true;
      addCrossing(exit, points);
      int entry = step(exit);
      if (!mask.active(quad)) {
        return false;
      }
      if (quad == at && triangle == k) {
        return true;
      }
      int crossed = crossings(quad, triangle) & ~(1 << entry);
      exit = Integer.numberOfTrailingZeros(crossed);
    }
  }

  /** Moves to the triangle beyond an edge and says by which of its edges it is entered. */
  private int step(int exit) {
    switch (exit) {
      case OUTER:
        quad += beyond[triangle];
        triangle = (triangle + 2) & 3;
        return OUTER;
      case FIRST_SPOKE:
        triangle = (triangle + 3) & 3;
        return SECOND_SPOKE;
      default:
        triangle = (triangle + 1) & 3;
        return FIRST_SPOKE;
    }
  }

  private void addCrossing(int edge, Chain.Builder points) {
    int from = edge == SECOND_SPOKE ? (triangle + 1) & 3 : triangle;
    int to = (triangle + 1) & 3;
    double a = surface.centre(quad + corner[from]);
    double b = edge == OUTER ? surface.centre(quad + corner[to]) : surface.middle(quad);
    double t = Math.min(1, Math.max(0, (level.value() - a) / (b - a)));
    double endRow = edge == OUTER ? CORNER_ROW[to] : 0.5;
    double endColumn = edge == OUTER ? CORNER_COLUMN[to] : 0.5;
    int row = quad / columns;
    int column = quad % columns;
    points.add(
        mask.localX(frame, column + CORNER_COLUMN[from] + t * (endColumn - CORNER_COLUMN[from])),
        mask.localY(frame, row + CORNER_ROW[from] + t * (endRow - CORNER_ROW[from])));
  }
}
