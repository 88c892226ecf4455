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
  private static final int[] BEYOND_ROW = {-1, 0, 1, 0};
  private static final int[] BEYOND_COLUMN = {0, 1, 0, -1};
  private static final int OUTER = 0;
  private static final int FIRST_SPOKE = 1;
  private static final int SECOND_SPOKE = 2;

  private final QuadMask mask;
  private final LinearSurface surface;
  private final Level level;
  private final Frame frame;
  private final boolean[] visited;

  private int row;
  private int column;
  private int triangle;

  LevelTracer(QuadMask mask, Level level, Frame frame) {
    this.mask = mask;
    this.surface = mask.surface();
    this.level = level;
    this.frame = frame;
    this.visited = new boolean[4 * mask.rows() * mask.columns()];
  }

  List<Chain> trace() {
    List<Chain> chains = new ArrayList<>();
    for (int r = mask.firstRow(); r < mask.firstRow() + mask.rows(); r++) {
      for (int c = mask.firstColumn(); c < mask.firstColumn() + mask.columns(); c++) {
        if (mask.active(r, c) && passes(r, c)) {
          for (int k = 0; k < 4; k++) {
            if (!visited[4 * mask.index(r, c) + k] && crosses(r, c, k)) {
              chains.add(chain(r, c, k));
            }
          }
        }
      }
    }
    return chains;
  }

  private boolean passes(int r, int c) {
    boolean first = above(r, c, 0);
    return above(r, c, 1) != first || above(r, c, 2) != first || above(r, c, 3) != first;
  }

  private boolean crosses(int r, int c, int k) {
    boolean middle = level.isAbove(surface.middle(r, c));
    return above(r, c, k) != middle || above(r, c, k + 1) != middle;
  }

  private boolean above(int r, int c, int corner) {
    return level.isAbove(corner(r, c, corner));
  }

  private double corner(int r, int c, int corner) {
    return surface.centre(r + CORNER_ROW[corner & 3], c + CORNER_COLUMN[corner & 3]);
  }

  private Chain chain(int r, int c, int k) {
    Chain.Builder points = new Chain.Builder();
    boolean[] crossing = crossings(r, c, k);
    int one = crossing[OUTER] ? OUTER : FIRST_SPOKE;
    int other = crossing[SECOND_SPOKE] ? SECOND_SPOKE : FIRST_SPOKE;
    boolean closed = follow(r, c, k, other, points);
    if (!closed) {
      points.reverse();
      follow(r, c, k, one, points);
    }
    return points.build(closed);
  }

  private boolean[] crossings(int r, int c, int k) {
    boolean middle = level.isAbove(surface.middle(r, c));
    boolean first = above(r, c, k);
    boolean second = above(r, c, k + 1);
    return new boolean[] {first != second, first != middle, second != middle};
  }

  /** Leaves the triangle by an edge and goes on; true when it comes back to where it started. */
  private boolean follow(int r, int c, int k, int leaveBy, Chain.Builder points) {
    row = r;
    column = c;
    triangle = k;
    int exit = leaveBy;
    while (true) {
      visited[4 * mask.index(row, column) + triangle] = true;
      addCrossing(exit, points);
      int entry = step(exit);
      if (!mask.active(row, column)) {
        return false;
      }
      if (row == r && column == c && triangle == k) {
        return true;
      }
      boolean[] crossing = crossings(row, column, triangle);
      exit = OUTER;
      while (exit == entry || !crossing[exit]) {
        exit++;
      }
    }
  }

  /** Moves to the triangle beyond an edge and says by which of its edges it is entered. */
  private int step(int exit) {
    switch (exit) {
      case OUTER:
        row += BEYOND_ROW[triangle];
        column += BEYOND_COLUMN[triangle];
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
    double a = corner(row, column, from);
    double b = edge == OUTER ? corner(row, column, to) : surface.middle(row, column);
    double t = Math.min(1, Math.max(0, (level.value() - a) / (b - a)));
    double endRow = edge == OUTER ? CORNER_ROW[to] : 0.5;
    double endColumn = edge == OUTER ? CORNER_COLUMN[to] : 0.5;
    points.add(
        mask.localX(frame, column + CORNER_COLUMN[from] + t * (endColumn - CORNER_COLUMN[from])),
        mask.localY(frame, row + CORNER_ROW[from] + t * (endRow - CORNER_ROW[from])));
  }
}
