package org.mottle.demo.truth;

/**
 * The nodes on which the moisture of a green is drawn: 256 × 256 at 0.25 m, centred on the green,
 * so that nodes lie at multiples of 0.25 m. The centres of 0.5 m cells are nodes; so is every
 * station, since plans are laid out on nodes. Of a drawn field only the window within 20 m of the
 * centre is kept.
 */
public final class Lattice {

  public static final int N = 256;
  public static final double STEP_M = 0.25;
  private static final int HALF = 80;
  private static final int SIDE = 2 * HALF + 1;

  private Lattice() {}

  /** The node of the window nearest to a place, as index; metres from the centre. */
  public static int node(double dx, double dy) {
    int column = (int) Math.round(dx / STEP_M) + HALF;
    int row = (int) Math.round(dy / STEP_M) + HALF;
    if (column < 0 || row < 0 || column >= SIDE || row >= SIDE) {
      throw new IllegalArgumentException("(" + dx + ", " + dy + ") m lies off the lattice");
    }
    return row * SIDE + column;
  }

  /** The window of a whole field of N² values. */
  static float[] window(double[] field) {
    float[] window = new float[SIDE * SIDE];
    int first = N / 2 - HALF;
    for (int row = 0; row < SIDE; row++) {
      for (int column = 0; column < SIDE; column++) {
        window[row * SIDE + column] = (float) field[(first + row) * N + first + column];
      }
    }
    return window;
  }

  /** The coordinate of the nearest node. */
  public static double snap(double metres) {
    return Math.round(metres / STEP_M) * STEP_M;
  }
}
