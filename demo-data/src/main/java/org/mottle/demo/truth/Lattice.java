package org.mottle.demo.truth;

/**
 * The nodes on which the moisture of a green is drawn: 256 × 256 at 0.25 m, centred on the green,
 * so that nodes lie at multiples of 0.25 m. The centres of 0.5 m cells are nodes; so is every
 * station, since plans are laid out on nodes.
 */
public final class Lattice {

  public static final int N = 256;
  public static final double STEP_M = 0.25;

  private Lattice() {}

  /** The node nearest to a place, as index into an array of N²; metres from the centre. */
  public static int node(double dx, double dy) {
    int column = (int) Math.round(dx / STEP_M) + N / 2;
    int row = (int) Math.round(dy / STEP_M) + N / 2;
    if (column < 0 || row < 0 || column >= N || row >= N) {
      throw new IllegalArgumentException("(" + dx + ", " + dy + ") m lies off the lattice");
    }
    return row * N + column;
  }

  /** The coordinate of the nearest node. */
  public static double snap(double metres) {
    return Math.round(metres / STEP_M) * STEP_M;
  }
}
