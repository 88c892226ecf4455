package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;

/** Laws that kriging obeys whatever the data, for every drift, support and neighbourhood. */
class KrigingLawsTest {
  private static final double TINY = 1e-9;

  /** One seeded survey and one way to krige it. */
  record Example(long seed, Kriging kriging, Observations observations, Targets targets) {
    Estimates estimates() {
      return kriging.fit(observations).estimate(targets, 1, Progress.NONE);
    }

    Example with(Observations others, Targets at) {
      return new Example(seed, kriging, others, at);
    }

    Example with(Kriging other) {
      return new Example(seed, other, observations, targets);
    }

    @Override
    public String toString() {
      return "seed "
          + seed
          + ", "
          + kriging.drift()
          + ", "
          + kriging.neighbourhood()
          + ", "
          + kriging.support();
    }
  }

  static Stream<Example> examples() {
    return LongStream.rangeClosed(1, 3).boxed().flatMap(KrigingLawsTest::examplesOf);
  }

  /** A block is never exact, and stays parallel to the axes. */
  static Stream<Example> pointExamples() {
    return examples().filter(e -> e.kriging().support().isPoint());
  }

  private static Stream<Example> examplesOf(long seed) {
    Random random = new Random(seed);
    int n = 30 + random.nextInt(60);
    Observations observations =
        Observations.of(
                random.doubles(n, 0, 40).toArray(),
                random.doubles(n, 0, 25).toArray(),
                random.doubles(n, 8, 35).toArray())
            .withCovariates(List.of(random.doubles(n, -1, 3).toArray()));
    Targets targets =
        Targets.of(random.doubles(70, -5, 45).toArray(), random.doubles(70, -5, 30).toArray())
            .withCovariates(List.of(random.doubles(70, -1, 3).toArray()));
    Kriging base = Kriging.ordinary(model(random));
    List<Example> all = new ArrayList<>();
    for (Drift drift : drifts()) {
      for (Neighbourhood near :
          List.of(Neighbourhood.ALL, Neighbourhood.nearest(14), new Neighbourhood(20, 60))) {
        for (BlockSupport support : List.of(BlockSupport.POINT, new BlockSupport(2, 3))) {
          Kriging kriging = base.with(drift).with(near).with(support);
          all.add(new Example(seed, kriging, observations, targets));
        }
      }
    }
    return all.stream();
  }

  private static List<Drift> drifts() {
    return List.of(
        Drift.knownMean(21),
        Drift.constant(),
        Drift.coordinates(),
        Drift.covariates(),
        Drift.coordinatesAndCovariates());
  }

  private static NestedModel model(Random random) {
    Anisotropy anisotropy = new Anisotropy(new Azimuth(random.nextInt(180)), 0.4);
    return new NestedModel(
        random.nextDouble(),
        List.of(
            Structure.isotropic(new Exponential(2 + random.nextDouble(), 4)),
            new Structure(new Spherical(3, 18), anisotropy)));
  }

  private static void same(Example example, Estimates actual, Estimates expected, double more) {
    for (int i = 0; i < expected.size(); i++) {
      String at = example + " target " + i;
      assertThat(actual.status(i)).as(at).isEqualTo(CellStatus.ESTIMATED);
      assertThat(actual.value(i)).as(at).isCloseTo(expected.value(i) + more, within(1e-7));
      assertThat(actual.variance(i)).as(at).isCloseTo(expected.variance(i), within(TINY));
    }
  }

  @ParameterizedTest
  @MethodSource("pointExamples")
  void exactAtADatumWithoutMeasurementError(Example example) {
    Observations data = example.observations();
    Targets atData = Targets.of(data.xs(), data.ys()).withCovariates(List.of(column(data)));
    Estimates estimates = example.with(data, atData).estimates();
    for (int i = 0; i < data.size(); i++) {
      assertThat(estimates.value(i))
          .as(example + " datum " + i)
          .isCloseTo(data.value(i), within(TINY));
      assertThat(estimates.variance(i)).as(example + " datum " + i).isBetween(0.0, TINY);
    }
  }

  private static double[] column(Observations data) {
    return IntStream.range(0, data.size()).mapToDouble(i -> data.covariate(0, i)).toArray();
  }

  @ParameterizedTest
  @MethodSource("examples")
  void aShiftToNationalGridCoordinatesChangesNothing(Example example) {
    // shifts by powers of two, and coordinates cut to 2^-20 m, are free of rounding
    Observations near = moved(example.observations(), 0, 0);
    Targets at = moved(example.targets(), 0, 0);
    Estimates expected = example.with(near, at).estimates();
    Observations far = moved(near, 524_288, 4_194_304);
    Estimates actual = example.with(far, moved(at, 524_288, 4_194_304)).estimates();
    same(example, actual, expected, 0);
  }

  private static Observations moved(Observations data, double dx, double dy) {
    return Observations.of(moved(data.xs(), dx), moved(data.ys(), dy), data.values())
        .withCovariates(List.of(column(data)));
  }

  private static Targets moved(Targets targets, double dx, double dy) {
    return Targets.of(moved(xs(targets), dx), moved(ys(targets), dy))
        .withCovariates(List.of(covariate(targets)));
  }

  private static double[] moved(double[] coordinates, double by) {
    return Arrays.stream(coordinates).map(c -> Math.rint(c * 0x1p20) * 0x1p-20 + by).toArray();
  }

  private static double[] xs(Targets targets) {
    return IntStream.range(0, targets.size()).mapToDouble(targets::x).toArray();
  }

  private static double[] ys(Targets targets) {
    return IntStream.range(0, targets.size()).mapToDouble(targets::y).toArray();
  }

  private static double[] covariate(Targets targets) {
    return IntStream.range(0, targets.size()).mapToDouble(j -> targets.covariate(0, j)).toArray();
  }

  @ParameterizedTest
  @MethodSource("pointExamples")
  void turningEverythingChangesNothing(Example example) {
    double angle = Math.toRadians(37);
    Observations data = example.observations();
    double[][] turned = turned(data.xs(), data.ys(), angle);
    double[][] targets = turned(xs(example.targets()), ys(example.targets()), angle);
    List<Structure> structures =
        example.kriging().model().structures().stream()
            .map(
                s ->
                    new Structure(
                        s.model(),
                        new Anisotropy(
                            new Azimuth(s.anisotropy().major().degrees() + 37),
                            s.anisotropy().ratio())))
            .toList();
    Kriging kriging =
        new Kriging(
            new NestedModel(example.kriging().model().nugget(), structures),
            example.kriging().drift(),
            example.kriging().neighbourhood(),
            BlockSupport.POINT);
    Observations there =
        Observations.of(turned[0], turned[1], data.values()).withCovariates(List.of(column(data)));
    Targets at =
        Targets.of(targets[0], targets[1]).withCovariates(List.of(covariate(example.targets())));
    same(example, example.with(kriging).with(there, at).estimates(), example.estimates(), 0);
  }

  /** Clockwise, as azimuths go. */
  private static double[][] turned(double[] x, double[] y, double angle) {
    double[] tx = new double[x.length];
    double[] ty = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      tx[i] = x[i] * Math.cos(angle) + y[i] * Math.sin(angle);
      ty[i] = y[i] * Math.cos(angle) - x[i] * Math.sin(angle);
    }
    return new double[][] {tx, ty};
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theOrderOfRowsChangesNothing(Example example) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < example.observations().size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, new Random(example.seed()));
    int[] rows = order.stream().mapToInt(Integer::intValue).toArray();
    Observations shuffled = example.observations().rows(rows);
    same(example, example.with(shuffled, example.targets()).estimates(), example.estimates(), 0);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void addingFiveAddsFiveAndNothingToTheVariance(Example example) {
    double[] more = Arrays.stream(example.observations().values()).map(v -> v + 5).toArray();
    Kriging kriging =
        example.kriging().drift() instanceof Drift.KnownMean known
            ? example.kriging().with(Drift.knownMean(known.mean() + 5))
            : example.kriging();
    Example raised =
        example.with(kriging).with(example.observations().withValues(more), example.targets());
    same(example, raised.estimates(), example.estimates(), 5);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void doublingTheModelDoublesTheVarianceOnly(Example example) {
    NestedModel model = example.kriging().model();
    NestedModel twice =
        new NestedModel(
            2 * model.nugget(),
            model.structures().stream()
                .map(
                    s ->
                        new Structure(
                            s.model().with(2 * s.model().partialSill(), s.model().range()),
                            s.anisotropy()))
                .toList());
    Kriging kriging =
        new Kriging(
            twice,
            example.kriging().drift(),
            example.kriging().neighbourhood(),
            example.kriging().support());
    Estimates once = example.estimates();
    Estimates doubled = example.with(kriging).estimates();
    for (int i = 0; i < once.size(); i++) {
      assertThat(doubled.value(i)).as(example.toString()).isCloseTo(once.value(i), within(TINY));
      assertThat(doubled.variance(i))
          .as(example.toString())
          .isCloseTo(2 * once.variance(i), within(TINY));
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void variancesRiseWithWhatIsUnknownAndAreNeverNegative(Example example) {
    Estimates some = example.estimates();
    Estimates simple = example.with(example.kriging().with(Drift.knownMean(21))).estimates();
    for (int i = 0; i < some.size(); i++) {
      assertThat(some.variance(i)).as(example.toString()).isGreaterThanOrEqualTo(0);
      assertThat(some.variance(i))
          .as(example.toString())
          .isGreaterThanOrEqualTo(simple.variance(i) - TINY);
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void anyNumberOfThreadsGivesTheSameBytes(Example example) {
    Predictor predictor = example.kriging().fit(example.observations());
    Estimates one = example.estimates();
    for (int threads : new int[] {2, 8}) {
      Estimates many = predictor.estimate(example.targets(), threads, Progress.NONE);
      assertThat(many.values()).as(example.toString()).isEqualTo(one.values());
      assertThat(many.variances()).as(example.toString()).isEqualTo(one.variances());
    }
    for (int i = 0; i < 5; i++) {
      Estimate alone =
          predictor.at(
              example.targets().x(i), example.targets().y(i), covariate(example.targets())[i]);
      assertThat(alone).as(example + " target " + i).isEqualTo(one.get(i));
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void theNearestOfAllIsAll(Example example) {
    Neighbourhood wide = Neighbourhood.ALL.within(1e6);
    Estimates all = example.with(example.kriging().with(Neighbourhood.ALL)).estimates();
    Estimates nearest = example.with(example.kriging().with(wide)).estimates();
    same(example, nearest, all, 0);
    int n = example.observations().size();
    Kriging ofAll = example.kriging().with(Neighbourhood.nearest(n));
    assertThat(example.with(ofAll).estimates().values()).isEqualTo(all.values());
  }

  @ParameterizedTest
  @MethodSource("examples")
  void weightsReproduceTheTermsOfTheDrift(Example example) {
    Kriging global = example.kriging().with(Neighbourhood.ALL);
    GlobalPredictor predictor = (GlobalPredictor) global.fit(example.observations());
    Estimates estimates = example.with(global).estimates();
    Observations data = example.observations();
    for (int j = 0; j < 5; j++) {
      double[] w = predictor.weights(example.targets(), j).weight();
      double mean = global.drift() instanceof Drift.KnownMean known ? known.mean() : 0;
      double value = mean;
      for (int i = 0; i < w.length; i++) {
        value += w[i] * (data.value(i) - mean);
      }
      assertThat(estimates.value(j)).as(example.toString()).isCloseTo(value, within(TINY));
      if (global.drift().unbiased()) {
        assertThat(Arrays.stream(w).sum()).as(example.toString()).isCloseTo(1, within(TINY));
      }
      if (global.drift().usesCoordinates()) {
        double x = IntStream.range(0, w.length).mapToDouble(i -> w[i] * data.x(i)).sum();
        assertThat(x).as(example.toString()).isCloseTo(example.targets().x(j), within(1e-8));
      }
      if (global.drift().usesCovariates()) {
        double c = IntStream.range(0, w.length).mapToDouble(i -> w[i] * data.covariate(0, i)).sum();
        assertThat(c)
            .as(example.toString())
            .isCloseTo(example.targets().covariate(0, j), within(1e-8));
      }
    }
  }
}
