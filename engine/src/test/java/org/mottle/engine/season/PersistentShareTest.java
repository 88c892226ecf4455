package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.solve.CholeskyFactor;
import org.mottle.engine.solve.Factorisation;
import org.mottle.engine.variogram.Spherical;

class PersistentShareTest {
  private static final double[] SILL = {3, 2.5, 3.5, 3};
  private static final JointModel MODEL = new JointModel(new Spherical(1, 12), 1.4, SILL, 0.5);

  /** Greens drawn from the model itself, every station read in every survey. */
  private static List<RepeatedGreen> greens(double share, int greens, int stations, long seed) {
    List<RepeatedGreen> all = new ArrayList<>();
    Random random = new Random(seed);
    for (int g = 0; g < greens; g++) {
      double[] x = random.doubles(stations, 0, 25).toArray();
      double[] y = random.doubles(stations, 0, 20).toArray();
      int[] once = new int[stations];
      java.util.Arrays.fill(once, 1);
      List<SeenSurvey> empty = new ArrayList<>();
      for (int s = 0; s < SILL.length; s++) {
        empty.add(new SeenSurvey(Observations.of(x, y, new double[stations]), once));
      }
      StationCorrelations correlations =
          StationCorrelations.of(empty, new Blurred(MODEL.correlation()));
      CholeskyFactor factor =
          ((Factorisation.Factored)
                  CholeskyFactor.factor(correlations.covariances(MODEL.withShare(share))))
              .factor();
      double[] z =
          factor.multiplyLower(
              random.doubles(SILL.length * stations).map(u -> gaussian(random)).toArray());
      List<SeenSurvey> surveys = new ArrayList<>();
      for (int s = 0; s < SILL.length; s++) {
        double[] own = java.util.Arrays.copyOfRange(z, s * stations, (s + 1) * stations);
        surveys.add(new SeenSurvey(Observations.of(x, y, own), once));
      }
      all.add(new RepeatedGreen(surveys, List.of(MODEL)));
    }
    return all;
  }

  private static double gaussian(Random random) {
    return random.nextGaussian();
  }

  private static PersistentShare found(List<RepeatedGreen> greens, int threads) {
    List<List<Blurred>> tables =
        greens.stream().map(g -> List.of(new Blurred(MODEL.correlation()))).toList();
    return PersistentShare.of(greens, tables, threads, Progress.NONE);
  }

  @ParameterizedTest(name = "share {0}")
  @ValueSource(doubles = {0.15, 0.4, 0.6, 0.85})
  void whatWasPutInIsFound(double share) {
    PersistentShare found = found(greens(share, 12, 30, 5), 2);
    assertThat(found.share().best()).isCloseTo(share, within(0.12));
    assertThat(found.share().high() - found.share().low()).isLessThan(0.4);
    assertThat(found.assumed()).isFalse();
    assertThat(found.words()).contains("persists from survey to survey", "12 greens");
  }

  @Test
  void theIntervalHoldsItAsOftenAsItSays() {
    int held = 0;
    double sum = 0;
    for (int k = 0; k < 40; k++) {
      Interval share = found(greens(0.6, 5, 20, 100 + k), 2).share();
      held += share.holds(0.6) ? 1 : 0;
      sum += share.best() / 40;
    }
    assertThat(sum).isCloseTo(0.6, within(0.04));
    assertThat(held).isBetween(32, 40);
  }

  @Test
  void withoutRepeatsItIsAssumedAndSaid() {
    PersistentShare none = found(List.of(), 1);
    assertThat(none.assumed()).isTrue();
    assertThat(none.share().best()).isCloseTo(0.6, within(0.01));
    assertThat(none.share().low()).isLessThan(0.25);
    assertThat(none.share().high()).isGreaterThan(0.9);
    assertThat(none.words()).contains("assumed", "0 stations were read again");
  }

  @Test
  void drawsSpreadAsThePosteriorAndThreadsDoNotMatter() {
    List<RepeatedGreen> greens = greens(0.6, 4, 25, 9);
    PersistentShare one = found(greens, 1);
    double[] draws = one.draws(8);
    assertThat(draws).isEqualTo(found(greens, 3).draws(8));
    double mean = java.util.Arrays.stream(draws).average().orElseThrow();
    assertThat(mean).isCloseTo(one.share().best(), within(0.02));
    assertThat(java.util.Arrays.stream(draws).distinct().count()).isEqualTo(8);
    assertThat(java.util.Arrays.stream(draws).sorted().toArray()).isNotEqualTo(draws);
  }

  @Test
  void aLevelOrASlopeThatPersistsDoesNotCount() {
    List<RepeatedGreen> plain = greens(0.3, 6, 25, 11);
    List<RepeatedGreen> sloping = new ArrayList<>();
    for (RepeatedGreen green : plain) {
      List<SeenSurvey> surveys = new ArrayList<>();
      for (SeenSurvey s : green.surveys()) {
        Observations o = s.observations();
        double[] z = o.values();
        for (int i = 0; i < z.length; i++) {
          z[i] += 18 + 0.4 * o.x(i) - 0.3 * o.y(i);
        }
        surveys.add(new SeenSurvey(o.withValues(z), s.insertions()));
      }
      sloping.add(new RepeatedGreen(surveys, green.models()));
    }
    assertThat(found(sloping, 1).share().best())
        .isCloseTo(found(plain, 1).share().best(), within(1e-6));
  }
}
