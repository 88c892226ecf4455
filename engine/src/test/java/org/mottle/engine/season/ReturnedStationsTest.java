package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;

class ReturnedStationsTest {
  private static final int N = 20;
  private static final double[] X = new Random(1).doubles(N, 0, 25).toArray();
  private static final double[] Y = new Random(2).doubles(N, 0, 20).toArray();
  private static final List<String> NAMES =
      IntStream.range(0, N).mapToObj(Integer::toString).toList();

  private static SeenSurvey recorded(long seed, double scatterM, double toldM) {
    Random random = new Random(seed);
    double[] x = X.clone();
    double[] y = Y.clone();
    for (int i = 0; i < N; i++) {
      x[i] += scatterM * random.nextGaussian();
      y[i] += scatterM * random.nextGaussian();
    }
    double[] jitter = new double[N];
    Arrays.fill(jitter, toldM);
    int[] once = new int[N];
    Arrays.fill(once, 1);
    return new SeenSurvey(
        Observations.of(x, y, new double[N]).withPositionError(new PositionError(jitter, 0)), once);
  }

  @Test
  void recordsThatScatterAsToldAreOfOnePlace() {
    List<SeenSurvey> seen =
        ReturnedStations.of(
            List.of(recorded(3, 0.8, 0.8), recorded(4, 0.8, 0.8), recorded(5, 1.6, 1.6)),
            List.of(NAMES, NAMES, NAMES));
    Observations a = seen.get(0).observations();
    Observations c = seen.get(2).observations();
    double squares = 0;
    for (int i = 0; i < N; i++) {
      assertThat(c.x(i)).isEqualTo(a.x(i));
      assertThat(seen.get(0).samePlace(i, seen.get(2), i)).isTrue();
      // 1 / (2 / 0.64 + 1 / 2.56)
      assertThat(a.positionError().jitterSdM(i)).isCloseTo(0.533, within(0.001));
      squares += Math.pow(a.x(i) - X[i], 2) + Math.pow(a.y(i) - Y[i], 2);
    }
    assertThat(Math.sqrt(squares / 2 / N)).isCloseTo(0.533, within(0.15));
  }

  @Test
  void placesCopiedFromAPlanAndNamesUsedAnewStayAsRecorded() {
    SeenSurvey plan = recorded(3, 0, 0.7);
    SeenSurvey anew = recorded(6, 9, 0.7);
    for (SeenSurvey other : List.of(plan, anew)) {
      List<SeenSurvey> seen = ReturnedStations.of(List.of(plan, other), List.of(NAMES, NAMES));
      assertThat(seen.get(1).site()).containsOnly(SeenSurvey.ONCE);
      assertThat(seen.get(1).observations().xs()).isEqualTo(other.observations().xs());
    }
  }

  @Test
  void stationsWithoutANameAreNobodyElses() {
    List<String> none = NAMES.stream().map(n -> "").toList();
    List<SeenSurvey> seen =
        ReturnedStations.of(
            List.of(recorded(3, 0.8, 0.8), recorded(4, 0.8, 0.8)), List.of(none, none));
    assertThat(seen.get(0).site()).containsOnly(SeenSurvey.ONCE);
  }
}
