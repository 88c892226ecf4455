package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/** What must hold of a pooled variogram whatever the readings are. */
class PooledLawsTest {
  private static final SimulatedPool SMALL = SimulatedPool.STANDARD.size(4, 2, 16, 2);
  private static final LikelihoodSettings SPHERICAL =
      LikelihoodSettings.defaults()
          .withCandidates(List.of(Candidate.of(Shape.SPHERICAL)))
          .withDraws(10);

  @Test
  void constantsAndPlanesOfTheGreensDoNotMatter() {
    List<Sample> samples = SMALL.draw(11);
    List<Sample> tilted = new ArrayList<>();
    for (int i = 0; i < samples.size(); i++) {
      tilted.add(tilted(samples.get(i), 5 - i, 0.1 * i, -0.2));
    }
    close(pooled(samples), pooled(tilted), 1, 1e-9);
  }

  /** Sums run in the order of the samples: another order changes the last digits alone. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void orderOfSamplesAndOfStationsChangesRoundingAlone(long seed) {
    List<Sample> samples = SMALL.draw(seed);
    List<Sample> shuffled = new ArrayList<>();
    Random random = new Random(seed);
    for (Sample s : samples) {
      List<Integer> rows = new ArrayList<>();
      for (int i = 0; i < s.size(); i++) {
        rows.add(i);
      }
      Collections.shuffle(rows, random);
      shuffled.add(s.rows(rows.stream().mapToInt(Integer::intValue).toArray()));
    }
    Collections.shuffle(shuffled, random);
    close(pooled(samples), pooled(shuffled), 1, 1e-9);
    assertThat(pooled(shuffled).surveys()).isEqualTo(pooled(samples).surveys());
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 4})
  void anyNumberOfThreadsGivesTheSameBytes(int threads) {
    List<Sample> samples = SMALL.jitter(0.7).draw(5);
    LikelihoodSettings settings = LikelihoodSettings.defaults().withDraws(9);
    PooledVariogram one = pooled(samples, settings, 1);
    PooledVariogram many = pooled(samples, settings, threads);
    assertThat(many.parameters()).isEqualTo(one.parameters());
    assertThat(many.scores()).isEqualTo(one.scores());
    assertThat(many.evidence()).isEqualTo(one.evidence());
    for (Sample s : samples) {
      assertThat(many.draws(s)).isEqualTo(one.draws(s));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 7, 100})
  void scaledValuesScaleVariancesAndLeaveTheRange(double k) {
    List<Sample> samples = SMALL.draw(3);
    List<Sample> scaled = samples.stream().map(s -> mapped(s, v -> k * v)).toList();
    close(pooled(samples), pooled(scaled), k * k, 1e-9);
  }

  @Test
  void sillsFollowTheVarianceOfEachSurvey() {
    double ratio = 0;
    PooledVariogram v = null;
    for (int seed = 0; seed < 5; seed++) {
      List<Sample> samples = new ArrayList<>(SMALL.size(6, 1, 18, 2).draw(seed));
      SimulatedPool dry = SMALL.size(6, 1, 18, 2).field(SMALL.shape(), 12, 12, 1.5);
      dry.draw(100 + seed).forEach(s -> samples.add(of(s, "S2")));
      v = pooled(samples);
      ratio += Math.log(sill(v, "S2") / sill(v, "S1")) / 5;
    }
    assertThat(Math.exp(ratio)).as("ratio of sills, truth 4").isBetween(2.5, 6.5);
    assertThat(v.model("S2").structures().get(0).model().partialSill()).isEqualTo(sill(v, "S2"));
  }

  private static double sill(PooledVariogram v, String survey) {
    return v.parameters().sills().get(survey).best();
  }

  private static Sample of(Sample s, String survey) {
    return new Sample(s.green(), survey, s.observations(), s.insertions(), s.replicates());
  }

  @Test
  void oneReadingInAirLeavesTheVariogramOfTheRestAlone() {
    List<Sample> samples = new ArrayList<>(SimulatedPool.STANDARD.draw(21));
    Sample spoiled = samples.get(4);
    double[] values = spoiled.observations().values();
    values[7] = -30;
    samples.set(4, withValues(spoiled, values));
    PooledVariogram with = pooled(samples);
    samples.set(4, spoiled.rows(without(7, spoiled.size())));
    PooledVariogram rest = pooled(samples);
    close(rest, with, 1, 1e-9);
    assertThat(with.notes()).anyMatch(n -> n.contains("1 reading of green G5 in S1"));
    samples.set(4, spoiled);
    double range = pooled(samples).parameters().practicalRange().best();
    assertThat(with.parameters().practicalRange().best() / range).isBetween(0.7, 1.4);
    assertThat(with.draws(withValues(spoiled, values)))
        .isEqualTo(with.draws(samples.get(4).rows(without(7, 18))));
  }

  @Test
  void samplesThatSayNothingAreNotPooled() {
    Sample flat = mapped(SMALL.draw(1).get(0), v -> 18);
    Sample single = SMALL.draw(1).get(0).rows(new int[] {0});
    Sample heap =
        new Sample(
            "G1",
            "S1",
            Observations.of(new double[5], new double[5], new double[] {1, 2, 3, 4, 5}),
            new int[] {1, 1, 1, 1, 1},
            Replicates.NONE);
    for (List<Sample> samples :
        List.of(List.<Sample>of(), List.of(flat), List.of(single), List.of(heap))) {
      PooledOutcome outcome = RestrictedLikelihood.of(samples, SPHERICAL, 1, Progress.NONE);
      assertThat(outcome).isInstanceOf(NotPooled.class);
    }
    List<Sample> mixed = new ArrayList<>(SMALL.draw(2));
    double range = pooled(mixed).parameters().practicalRange().best();
    mixed.addAll(List.of(flat, single, heap));
    assertThat(pooled(mixed).parameters().practicalRange().best()).isCloseTo(range, within(1e-9));
  }

  @Test
  void repeatedSurveysOfOnePatternWeighAsOne() {
    List<Sample> once = SMALL.size(6, 1, 18, 2).draw(4);
    List<Sample> thrice = new ArrayList<>();
    for (String survey : List.of("S1", "S2", "S3")) {
      once.forEach(s -> thrice.add(of(s, survey)));
    }
    PooledVariogram a = pooled(once);
    PooledVariogram b = pooled(thrice);
    assertThat(b.evidence().designEffect()).isCloseTo(3, within(1e-12));
    assertThat(b.parameters().practicalRange().best())
        .isCloseTo(a.parameters().practicalRange().best(), within(0.05));
    // each survey's nugget share has a prior, so that three say a little more than one
    assertThat(width(b.parameters().nugget()))
        .isCloseTo(width(a.parameters().nugget()), within(0.25));
    List<Sample> other = SMALL.size(9, 3, 18, 2).draw(4);
    assertThat(pooled(other).evidence().designEffect()).isBetween(1.0, 1.25);
  }

  @Test
  void drawsAreOfThePoolsSurveysOnly() {
    PooledVariogram v = pooled(SMALL.draw(1));
    Sample s = SMALL.draw(1).get(0);
    Sample foreign = of(s, "S9");
    assertThatThrownBy(() -> v.draws(foreign)).hasMessageContaining("'S9'");
  }

  static double width(Interval i) {
    return Math.log(i.high() / i.low());
  }

  private static PooledVariogram pooled(List<Sample> samples) {
    return pooled(samples, SPHERICAL, 1);
  }

  static PooledVariogram pooled(List<Sample> samples, LikelihoodSettings settings, int threads) {
    return (PooledVariogram) RestrictedLikelihood.of(samples, settings, threads, Progress.NONE);
  }

  private static void close(PooledVariogram a, PooledVariogram b, double variances, double by) {
    close(a.parameters().practicalRange(), b.parameters().practicalRange(), 1, by);
    close(a.parameters().nugget(), b.parameters().nugget(), variances, by);
    close(a.parameters().nuggetShare(), b.parameters().nuggetShare(), 1, by);
    for (String survey : a.surveys()) {
      close(a.parameters().sills().get(survey), b.parameters().sills().get(survey), variances, by);
    }
    assertThat(b.evidence().gain()).isCloseTo(a.evidence().gain(), within(1e-6));
  }

  private static void close(Interval a, Interval b, double scale, double by) {
    assertThat(b.low() / a.low()).isCloseTo(scale, within(by * scale));
    assertThat(b.best() / a.best()).isCloseTo(scale, within(by * scale));
    assertThat(b.high() / a.high()).isCloseTo(scale, within(by * scale));
  }

  private static Sample tilted(Sample s, double level, double east, double north) {
    double[] values = s.observations().values();
    Arrays.setAll(
        values,
        i -> values[i] + level + east * s.observations().x(i) + north * s.observations().y(i));
    return withValues(s, values);
  }

  private static Sample mapped(Sample s, DoubleUnaryOperator f) {
    return withValues(s, Arrays.stream(s.observations().values()).map(f).toArray());
  }

  private static Sample withValues(Sample s, double[] values) {
    return new Sample(
        s.green(), s.survey(), s.observations().withValues(values), s.insertions(), s.replicates());
  }

  private static int[] without(int row, int n) {
    return IntStream.range(0, n).filter(i -> i != row).toArray();
  }
}
