package org.mottle.demo.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.PriorityQueue;
import org.junit.jupiter.api.Test;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;

class ElevationTest {

  private static final double STEP = 0.25;
  private static final int N = 240;

  private record Node(double z, int row, int column) {}

  /** The scenario's figures of the hollow: fill 54 mm, 27 m² deeper than 10 mm, 850 L. */
  @Test
  void theHollowOfG6IsClosed() {
    GreenSite green = CoursePlace.green("G6");
    double[][] fill = fill(green);
    double deepest = 0;
    double area = 0;
    double litres = 0;
    for (int row = 0; row < N; row++) {
      for (int column = 0; column < N; column++) {
        if (green.ring().contains(at(column), at(row))) {
          deepest = Math.max(deepest, fill[row][column]);
          area += fill[row][column] >= 0.010 ? STEP * STEP : 0;
          litres += fill[row][column] * STEP * STEP * 1000;
        }
      }
    }
    assertThat(deepest).isCloseTo(0.054, within(0.001));
    assertThat(area).isCloseTo(27, within(1.0));
    assertThat(litres).isCloseTo(850, within(20.0));
  }

  @Test
  void noOtherGreenHoldsWater() {
    for (GreenSite green : CoursePlace.greens()) {
      if (!green.id().equals("G6")) {
        double deepest = 0;
        double[][] fill = fill(green);
        for (int row = 0; row < N; row++) {
          for (int column = 0; column < N; column++) {
            if (green.ring().contains(at(column), at(row))) {
              deepest = Math.max(deepest, fill[row][column]);
            }
          }
        }
        assertThat(deepest).as(green.id()).isLessThan(0.001);
      }
    }
  }

  @Test
  void moundsRiseOutsideAndBunkersFall() {
    Elevation g1 = new Elevation(CoursePlace.green("G1"));
    assertThat(g1.at(0, 28) - (40 - 0.28)).isCloseTo(0.6, within(0.01));
    assertThat(g1.at(0, 0)).isEqualTo(40);
    Elevation g4 = new Elevation(CoursePlace.green("G4"));
    assertThat(g4.at(-6, -14.8)).isCloseTo(40 - 0.03 - 0.296 - 0.9, within(0.001));
  }

  private static double at(int i) {
    return (i - N / 2 + 0.5) * STEP;
  }

  /** Depth of standing water by priority flood from the rim of the window (Barnes et al. 2014). */
  private static double[][] fill(GreenSite green) {
    Elevation elevation = new Elevation(green);
    double[][] level = new double[N][N];
    double[][] depth = new double[N][N];
    boolean[][] seen = new boolean[N][N];
    PriorityQueue<Node> queue = new PriorityQueue<>(Comparator.comparingDouble(Node::z));
    for (int row = 0; row < N; row++) {
      for (int column = 0; column < N; column++) {
        level[row][column] = elevation.at(at(column), at(row));
        if (row == 0 || column == 0 || row == N - 1 || column == N - 1) {
          seen[row][column] = true;
          queue.add(new Node(level[row][column], row, column));
        }
      }
    }
    while (!queue.isEmpty()) {
      Node node = queue.poll();
      for (int k = 0; k < 9; k++) {
        int row = node.row() + k / 3 - 1;
        int column = node.column() + k % 3 - 1;
        if (row >= 0 && column >= 0 && row < N && column < N && !seen[row][column]) {
          seen[row][column] = true;
          double water = Math.max(node.z(), level[row][column]);
          depth[row][column] = water - level[row][column];
          queue.add(new Node(water, row, column));
        }
      }
    }
    return depth;
  }
}
