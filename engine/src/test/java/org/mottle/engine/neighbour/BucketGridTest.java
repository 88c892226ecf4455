package org.mottle.engine.neighbour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search against sorting all distances, on point sets of every awkward shape. */
class BucketGridTest {

  private record Points(String name, double[] x, double[] y) {}

  private static List<Points> shapes(long seed) {
    Random random = new Random(seed);
    int n = 150 + random.nextInt(200);
    double[] lattice = IntStream.range(0, n).mapToDouble(i -> i % 16).toArray();
    double[] rows = IntStream.range(0, n).mapToDouble(i -> i / 16).toArray();
    double[] clustered = random.doubles(n).map(v -> Math.pow(v, 6) * 1000).toArray();
    double[] same = new double[n];
    Arrays.fill(same, 7);
    return List.of(
        new Points(
            "uniform", random.doubles(n, 0, 50).toArray(), random.doubles(n, 0, 50).toArray()),
        new Points("lattice, full of ties", lattice, rows),
        new Points("clustered", clustered, random.doubles(n, 0, 1000).toArray()),
        new Points("on a line", random.doubles(n, 0, 50).toArray(), same),
        new Points("at one place", same, same),
        new Points("national grid", shifted(lattice, 500_000), shifted(rows, 5_800_000)),
        new Points("one point", new double[] {3}, new double[] {4}));
  }

  private static double[] shifted(double[] values, double by) {
    return Arrays.stream(values).map(v -> v + by).toArray();
  }

  private static double square(Points p, int i, double x, double y) {
    double dx = p.x()[i] - x;
    double dy = p.y()[i] - y;
    return dx * dx + dy * dy;
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void findsWhatSortingFinds(long seed) {
    Random random = new Random(seed + 1000);
    for (Points points : shapes(seed)) {
      int n = points.x().length;
      BucketGrid grid = new BucketGrid(points.x(), points.y());
      for (Neighbourhood near :
          List.of(
              Neighbourhood.nearest(1),
              Neighbourhood.nearest(12),
              new Neighbourhood(40, 6),
              Neighbourhood.ALL.within(5),
              Neighbourhood.nearest(n),
              Neighbourhood.nearest(Math.max(1, n - 1)))) {
        BucketGrid.Search search = grid.search(near);
        for (int t = 0; t < 25; t++) {
          int at = random.nextInt(n);
          double away = t % 3 == 0 ? 0 : t % 3 == 1 ? random.nextInt(9) - 4 : 300;
          double x = points.x()[at] + away;
          double y = points.y()[at] - away / 2;
          int excluded = t % 2 == 0 ? -1 : at;
          check(points, near, search, x, y, excluded);
        }
      }
    }
  }

  private static void check(
      Points points, Neighbourhood near, BucketGrid.Search search, double x, double y, int out) {
    int n = points.x().length;
    int[] expected =
        IntStream.range(0, n)
            .boxed()
            .filter(i -> i != out && Math.sqrt(square(points, i, x, y)) <= near.radius())
            .sorted(Comparator.comparingDouble((Integer i) -> square(points, i, x, y)))
            .limit(near.nearest())
            .mapToInt(Integer::intValue)
            .toArray();
    int count = search.find(x, y, out);
    int[] found = IntStream.range(0, count).map(search::row).toArray();
    for (int k = 0; k < count; k++) {
      assertThat(search.squaredDistance(k)).isEqualTo(square(points, found[k], x, y));
    }
    if (near.nearest() >= n) {
      Arrays.sort(found);
      Arrays.sort(expected);
    }
    assertThat(found).as("%s, %s, from %s %s", points.name(), near, x, y).isEqualTo(expected);
  }

  @Test
  void theRadiusIsInclusive() {
    BucketGrid grid = new BucketGrid(new double[] {0, 0.3, 9}, new double[] {0, 0.4, 9});
    BucketGrid.Search search = grid.search(Neighbourhood.ALL.within(0.5));
    assertThat(search.find(0, 0)).isEqualTo(2);
    assertThat(grid.search(Neighbourhood.ALL.within(Math.nextDown(0.5))).find(0, 0)).isEqualTo(1);
  }

  @Test
  void noPointsNoNeighbours() {
    BucketGrid grid = new BucketGrid(new double[0], new double[0]);
    assertThat(grid.search(Neighbourhood.nearest(5)).find(1, 2)).isZero();
  }

  @Test
  void refusesNeighbourhoodsOfNothing() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Neighbourhood.nearest(0))
        .withMessage("nearest must be at least 1, was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Neighbourhood.ALL.within(0))
        .withMessageContaining("radius must be > 0.0 m, was 0.0");
  }
}
