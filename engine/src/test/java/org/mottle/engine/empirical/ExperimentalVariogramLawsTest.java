package org.mottle.engine.empirical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.mottle.engine.observation.Observations;

/** What holds for any points: against every pair taken one by one, and under change of scene. */
class ExperimentalVariogramLawsTest {
  private static final long SEED = 15_07;
  private static final LagBins BINS = new LagBins(41, 3);

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void equalsEveryPairTakenOneByOne(Estimator estimator) {
    for (Direction direction : List.of(Direction.ALL, Direction.of(77, 30))) {
      for (int n : new int[] {2, 3, 60, 700}) {
        Observations o = scattered(n, 0, 0);
        assertClose(
            of(estimator, direction, 1, o), oneByOne(o, estimator, direction), 1e-12, "n " + n);
      }
    }
  }

  @Test
  void clusteredPointsWithATinyCutoffLoseNoPair() {
    Random random = new Random(SEED);
    double[][] p = new double[3][400];
    for (int i = 0; i < 400; i++) {
      p[0][i] = (i % 7) * 9000.0 + random.nextDouble();
      p[1][i] = (i % 5) * 70000.0 + random.nextDouble();
      p[2][i] = random.nextGaussian();
    }
    Observations o = Observations.of(p[0], p[1], p[2]);
    LagBins bins = new LagBins(0.5, 0.1);
    ExperimentalVariogram v =
        ExperimentalVariogram.of(List.of(o), bins, Estimator.MATHERON, Direction.ALL, 1);
    assertThat(v.pairs()).isEqualTo(pairsWithin(o, 0.5)).isGreaterThan(100);
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void anyNumberOfThreadsGivesTheSameBytes(Estimator estimator) {
    Observations o = scattered(3000, 0, 0);
    for (Direction direction : List.of(Direction.ALL, Direction.of(10, 40))) {
      ExperimentalVariogram one = of(estimator, direction, 1, o);
      for (int threads : new int[] {2, 3, 8}) {
        assertThat(of(estimator, direction, threads, o)).isEqualTo(one);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void theOrderOfTheRowsIsForgotten(Estimator estimator) {
    Observations o = scattered(800, 500_000, 5_000_000);
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < o.size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(SEED));
    Observations shuffled =
        Observations.of(
            order.stream().mapToDouble(o::x).toArray(),
            order.stream().mapToDouble(o::y).toArray(),
            order.stream().mapToDouble(o::value).toArray());
    assertThat(of(estimator, Direction.ALL, 1, shuffled))
        .as("seed %s", SEED)
        .isEqualTo(of(estimator, Direction.ALL, 1, o));
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void coordinatesInTheMillionsServeAsWellAsNearNought(Estimator estimator) {
    // places on a lattice of 2^-10 m are exact in both scenes
    Observations near = scattered(500, 0, 0);
    Observations far = scattered(500, 600_000, 5_000_000);
    assertThat(of(estimator, Direction.of(120, 20), 1, far))
        .isEqualTo(of(estimator, Direction.of(120, 20), 1, near));
  }

  @Test
  void turningTheSceneTurnsTheDirections() {
    Observations o = scattered(500, 0, 0);
    double turn = Math.toRadians(33);
    double[] x = new double[o.size()];
    double[] y = new double[o.size()];
    for (int i = 0; i < x.length; i++) {
      // clockwise, as azimuths go
      x[i] = o.x(i) * Math.cos(turn) + o.y(i) * Math.sin(turn);
      y[i] = -o.x(i) * Math.sin(turn) + o.y(i) * Math.cos(turn);
    }
    Observations turned = Observations.of(x, y, o.values());
    assertClose(
        of(Estimator.MATHERON, Direction.of(103, 30), 1, turned),
        of(Estimator.MATHERON, Direction.of(70, 30), 1, o),
        1e-10,
        "seed " + SEED);
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void addingFiveChangesNothingAndTriplingMultipliesByNine(Estimator estimator) {
    Observations o = scattered(300, 0, 0);
    ExperimentalVariogram plain = of(estimator, Direction.ALL, 1, o);
    double[] plusFive = Arrays.stream(o.values()).map(v -> v + 5).toArray();
    double[] tripled = Arrays.stream(o.values()).map(v -> 3 * v).toArray();
    assertClose(
        of(estimator, Direction.ALL, 1, o.withValues(plusFive)), plain, 1e-10, "seed " + SEED);
    List<Lag> nine = of(estimator, Direction.ALL, 1, o.withValues(tripled)).lags();
    for (int i = 0; i < nine.size(); i++) {
      double expected = 9 * plain.lags().get(i).semivariance();
      assertThat(nine.get(i).semivariance()).isCloseTo(expected, within(1e-12 * expected));
    }
  }

  @ParameterizedTest
  @EnumSource(Estimator.class)
  void pairsNeverCrossGroups(Estimator estimator) {
    Observations west = scattered(120, 0, 0);
    Observations east = scattered(90, 20, 0);
    ExperimentalVariogram pooled = of(estimator, Direction.ALL, 2, west, east);
    // the same groups so far apart that no pair of both is within the cutoff, each with its mean
    double[] x = concat(west.xs(), Arrays.stream(east.xs()).map(v -> v + 1e6).toArray());
    Observations apart =
        Observations.of(x, concat(west.ys(), east.ys()), concat(west.values(), east.values()));
    assertClose(pooled, of(estimator, Direction.ALL, 1, apart), 1e-9, "seed " + SEED);
    double[] lifted = Arrays.stream(east.values()).map(v -> v + 64).toArray();
    assertClose(
        of(estimator, Direction.ALL, 1, west, east.withValues(lifted)), pooled, 1e-9, "lifted");
  }

  private static ExperimentalVariogram of(
      Estimator estimator, Direction direction, int threads, Observations... groups) {
    return ExperimentalVariogram.of(List.of(groups), BINS, estimator, direction, threads);
  }

  private static Observations scattered(int n, double east, double north) {
    Random random = new Random(SEED + n);
    double[][] p = new double[3][n];
    for (int i = 0; i < n; i++) {
      p[0][i] = east + random.nextInt(100 * 1024) / 1024.0;
      p[1][i] = north + random.nextInt(100 * 1024) / 1024.0;
      p[2][i] = random.nextInt(1 << 20) / 32768.0;
    }
    return Observations.of(p[0], p[1], p[2]);
  }

  private static long pairsWithin(Observations o, double cutoff) {
    long pairs = 0;
    for (int i = 0; i < o.size(); i++) {
      for (int j = 0; j < i; j++) {
        pairs += Math.hypot(o.x(i) - o.x(j), o.y(i) - o.y(j)) <= cutoff ? 1 : 0;
      }
    }
    return pairs;
  }

  private static ExperimentalVariogram oneByOne(
      Observations o, Estimator estimator, Direction direction) {
    List<List<double[]>> bins = new ArrayList<>();
    for (int b = 0; b < 14; b++) {
      bins.add(new ArrayList<>());
    }
    for (int i = 0; i < o.size(); i++) {
      for (int j = 0; j < i; j++) {
        double dx = o.x(i) - o.x(j);
        double dy = o.y(i) - o.y(j);
        double h = Math.sqrt(dx * dx + dy * dy);
        double azimuth = (Math.toDegrees(Math.atan2(dx, dy)) + 360) % 180;
        double off = Math.abs(azimuth - direction.azimuth().degrees());
        if (h > 0 && h <= 41 && Math.min(off, 180 - off) <= direction.tolerance()) {
          bins.get((int) Math.ceil(h / 3) - 1)
              .add(new double[] {h, Math.abs(o.value(i) - o.value(j))});
        }
      }
    }
    List<Lag> lags = new ArrayList<>();
    for (List<double[]> bin : bins) {
      if (!bin.isEmpty()) {
        double h = bin.stream().mapToDouble(p -> p[0]).average().orElseThrow();
        double[] d = bin.stream().mapToDouble(p -> p[1]).sorted().toArray();
        lags.add(new Lag(d.length, h, semivariance(estimator, d), direction));
      }
    }
    return new ExperimentalVariogram(lags);
  }

  private static double semivariance(Estimator estimator, double[] sorted) {
    int n = sorted.length;
    return switch (estimator) {
      case MATHERON -> Arrays.stream(sorted).map(d -> d * d).sum() / (2 * n);
      case CRESSIE_HAWKINS ->
          Math.pow(Arrays.stream(sorted).map(Math::sqrt).sum() / n, 4) / (2 * (0.457 + 0.494 / n));
      case DOWD -> 1.099 * Math.pow((sorted[(n - 1) / 2] + sorted[n / 2]) / 2, 2);
    };
  }

  private static double[] concat(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  private static void assertClose(
      ExperimentalVariogram actual,
      ExperimentalVariogram expected,
      double relative,
      String description) {
    assertThat(actual.lags()).as(description).hasSameSizeAs(expected.lags());
    for (int i = 0; i < expected.lags().size(); i++) {
      Lag a = actual.lags().get(i);
      Lag e = expected.lags().get(i);
      assertThat(a.pairs()).as("%s, lag %s", description, i).isEqualTo(e.pairs());
      assertThat(a.distance())
          .as("%s, lag %s", description, i)
          .isCloseTo(e.distance(), within(relative * e.distance()));
      assertThat(a.semivariance())
          .as("%s, lag %s", description, i)
          .isCloseTo(e.semivariance(), within(relative * Math.max(1e-3, e.semivariance())));
    }
  }
}
