package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WalkOrderTest {

  private static Positions scattered(long seed, int n) {
    Random random = new Random(seed);
    return Positions.of(random.doubles(n, 0, 25).toArray(), random.doubles(n, 0, 18).toArray());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void visits_every_place_once_and_says_how_far_that_is(long seed) {
    Positions places = scattered(seed, 20);
    WalkOrder walk = WalkOrder.from(3, 4, places);
    double length = 0;
    double x = 3;
    double y = 4;
    boolean[] seen = new boolean[20];
    for (int s = 0; s < walk.size(); s++) {
      int i = walk.place(s);
      assertThat(seen[i]).as("seed %d, place %d seen before", seed, i).isFalse();
      seen[i] = true;
      assertThat(walk.steps()[i]).isEqualTo(s);
      length += Math.hypot(places.x(i) - x, places.y(i) - y);
      x = places.x(i);
      y = places.y(i);
    }
    assertThat(walk.size()).isEqualTo(20);
    assertThat(walk.lengthM()).as("seed %d", seed).isCloseTo(length, within(1e-9));
    assertThat(walk.lengthM()).isLessThanOrEqualTo(nearestFirst(places) + 1e-9);
  }

  private static double nearestFirst(Positions places) {
    boolean[] seen = new boolean[places.size()];
    double x = 3;
    double y = 4;
    double length = 0;
    for (int s = 0; s < seen.length; s++) {
      int nearest = -1;
      for (int i = 0; i < seen.length; i++) {
        if (!seen[i]
            && (nearest < 0 || places.distance(i, x, y) < places.distance(nearest, x, y))) {
          nearest = i;
        }
      }
      seen[nearest] = true;
      length += places.distance(nearest, x, y);
      x = places.x(nearest);
      y = places.y(nearest);
    }
    return length;
  }

  @Test
  void is_seldom_much_longer_than_the_shortest_walk() {
    double worst = 1;
    double sum = 0;
    for (long seed = 1; seed <= 40; seed++) {
      Positions places = scattered(seed, 7);
      double ratio = WalkOrder.from(0, 0, places).lengthM() / shortest(places, 0, 0, 0);
      assertThat(ratio).as("seed %d", seed).isGreaterThan(1 - 1e-9);
      worst = Math.max(worst, ratio);
      sum += ratio;
    }
    assertThat(sum / 40).isLessThan(1.03);
    assertThat(worst).isLessThan(1.25);
  }

  /** By trying every order. */
  private static double shortest(Positions places, int visited, double x, double y) {
    if (visited == (1 << places.size()) - 1) {
      return 0;
    }
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < places.size(); i++) {
      if ((visited & 1 << i) == 0) {
        double rest = shortest(places, visited | 1 << i, places.x(i), places.y(i));
        least = Math.min(least, places.distance(i, x, y) + rest);
      }
    }
    return least;
  }

  @Test
  void does_not_cross_itself() {
    for (long seed = 1; seed <= 10; seed++) {
      Positions p = WalkOrder.anywhere(scattered(seed, 30)).places();
      for (int i = 0; i + 1 < p.size(); i++) {
        for (int j = i + 2; j + 1 < p.size(); j++) {
          boolean cross =
              side(p, i, i + 1, j) * side(p, i, i + 1, j + 1) < 0
                  && side(p, j, j + 1, i) * side(p, j, j + 1, i + 1) < 0;
          assertThat(cross).as("seed %d, legs %d and %d cross", seed, i, j).isFalse();
        }
      }
    }
  }

  private static double side(Positions p, int a, int b, int c) {
    return Math.signum(
        (p.x(b) - p.x(a)) * (p.y(c) - p.y(a)) - (p.y(b) - p.y(a)) * (p.x(c) - p.x(a)));
  }

  @Test
  void walks_a_row_from_end_to_end() {
    Positions row = Positions.of(new double[] {4, 0, 8, 2, 6}, new double[5]);
    WalkOrder free = WalkOrder.anywhere(row);
    assertThat(free.lengthM()).isCloseTo(8, within(1e-12));
    assertThat(free.places().xs()).containsExactly(0, 2, 4, 6, 8);
    assertThat(WalkOrder.from(9, 0, row).places().xs()).containsExactly(8, 6, 4, 2, 0);
  }

  @Test
  void nothing_to_walk_is_no_walk() {
    assertThat(WalkOrder.from(1, 2, Positions.NONE).size()).isZero();
    assertThat(WalkOrder.anywhere(Positions.NONE).lengthM()).isZero();
    assertThat(Arrays.stream(WalkOrder.anywhere(Positions.NONE).steps()).count()).isZero();
  }
}
