package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
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

  /**
   * Exact by dynamic programming over subsets (Held and Karp 1962); the walk may start anywhere.
   */
  private static double shortestAnywhere(Positions places) {
    int n = places.size();
    double[][] least = new double[1 << n][n];
    for (double[] row : least) {
      Arrays.fill(row, Double.POSITIVE_INFINITY);
    }
    for (int i = 0; i < n; i++) {
      least[1 << i][i] = 0;
    }
    for (int set = 1; set < 1 << n; set++) {
      for (int end = 0; end < n; end++) {
        for (int next = 0; next < n; next++) {
          if ((set & 1 << next) == 0) {
            double length = least[set][end] + places.distance(end, places.x(next), places.y(next));
            least[set | 1 << next][next] = Math.min(least[set | 1 << next][next], length);
          }
        }
      }
    }
    return Arrays.stream(least[(1 << n) - 1]).min().orElseThrow();
  }

  @Test
  void is_the_shortest_walk_of_few_stations() {
    for (long seed = 1; seed <= 30; seed++) {
      for (int n = 2; n <= 7; n++) {
        Positions places = scattered(seed * 10 + n, n);
        assertThat(WalkOrder.from(3, 4, places).lengthM())
            .as("seed %d, %d stations, from a point", seed, n)
            .isCloseTo(shortest(places, 0, 3, 4), within(1e-9));
      }
      for (int n = 2; n <= 11; n += 3) {
        Positions places = scattered(seed * 10 + n, n);
        assertThat(WalkOrder.anywhere(places).lengthM())
            .as("seed %d, %d stations, from anywhere", seed, n)
            .isCloseTo(shortestAnywhere(places), within(1e-9));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void of_25_stations_is_as_short_as_a_long_anneal_finds(long seed) {
    Positions places = scattered(seed, 25);
    assertThat(WalkOrder.anywhere(places).lengthM())
        .as("seed %d", seed)
        .isLessThan(annealed(places, seed) * 1.03);
  }

  /** Simulated annealing by reversals (Kirkpatrick, Gelatt and Vecchi 1983), 1,500,000 trials. */
  private static double annealed(Positions p, long seed) {
    Random random = new Random(seed);
    int n = p.size();
    int[] walk = IntStream.range(0, n).toArray();
    double length = length(p, walk);
    double least = length;
    int trials = 1_500_000;
    for (int trial = 0; trial < trials; trial++) {
      double temperature = 8 * Math.pow(0.002, (double) trial / trials);
      int from = random.nextInt(n);
      int to = random.nextInt(n);
      if (from > to) {
        int swap = from;
        from = to;
        to = swap;
      }
      double change = 0;
      if (from > 0) {
        change += leg(p, walk[from - 1], walk[to]) - leg(p, walk[from - 1], walk[from]);
      }
      if (to < n - 1) {
        change += leg(p, walk[from], walk[to + 1]) - leg(p, walk[to], walk[to + 1]);
      }
      if (change < 0 || random.nextDouble() < Math.exp(-change / temperature)) {
        for (int i = from, j = to; i < j; i++, j--) {
          int swap = walk[i];
          walk[i] = walk[j];
          walk[j] = swap;
        }
        length += change;
        least = Math.min(least, length);
      }
    }
    assertThat(length(p, walk)).as("the anneal's own sum").isCloseTo(length, within(1e-6));
    return least;
  }

  private static double length(Positions p, int[] walk) {
    double sum = 0;
    for (int i = 1; i < walk.length; i++) {
      sum += leg(p, walk[i - 1], walk[i]);
    }
    return sum;
  }

  private static double leg(Positions p, int a, int b) {
    return p.distance(a, p.x(b), p.y(b));
  }

  @Test
  void is_walked_the_same_every_time() {
    for (long seed = 1; seed <= 5; seed++) {
      assertThat(WalkOrder.anywhere(scattered(seed, 30)).steps())
          .as("seed %d", seed)
          .isEqualTo(WalkOrder.anywhere(scattered(seed, 30)).steps());
    }
  }

  @Test
  void many_stations_are_walked_too() {
    Positions places = scattered(1, 150);
    WalkOrder walk = WalkOrder.anywhere(places);
    assertThat(Arrays.stream(walk.steps()).sorted().toArray())
        .containsExactly(IntStream.range(0, 150).toArray());
    // 0.7124 √(nA) is the shortest tour of many random points (Johnson and McGeoch 1997, from
    // memory); the edge of the area adds some, the open end takes some
    assertThat(walk.lengthM()).isLessThan(0.7124 * Math.sqrt(150 * 25 * 18) * 1.15);
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
