package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

/** Weights are what the estimates are made of. */
class WeightsTest {
  private static final NestedModel MODEL = NestedModel.of(0.4, new Exponential(5, 7));
  private static final List<Drift> DRIFTS =
      List.of(Drift.knownMean(21), Drift.constant(), Drift.coordinates());

  private static Observations survey(Random random, int n) {
    return Observations.of(
        random.doubles(n, 0, 30).toArray(),
        random.doubles(n, 0, 20).toArray(),
        random.doubles(n, 10, 30).toArray());
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void otherDataAtTheSamePlacesCostOneSum(long seed) {
    Random random = new Random(seed);
    Observations data = survey(random, 37);
    Observations other = data.withValues(random.doubles(37, 10, 30).toArray());
    Targets targets =
        Targets.of(random.doubles(500, 0, 30).toArray(), random.doubles(500, 0, 20).toArray());
    for (Drift drift : DRIFTS) {
      Predictor predictor = Kriging.ordinary(MODEL).with(drift).fit(data);
      Estimates expected = predictor.estimate(targets, 1, Progress.NONE);
      Weights weights = predictor.weights(targets, 1, Progress.NONE);
      assertThat(weights.estimates().values()).as(drift.toString()).isEqualTo(expected.values());
      assertThat(weights.estimates().variances()).isEqualTo(expected.variances());
      assertThat(weights.applyTo(data.values()))
          .as("seed " + seed + " " + drift)
          .containsExactly(expected.values(), within(1e-9));
      Estimates others =
          Kriging.ordinary(MODEL).with(drift).fit(other).estimate(targets, 1, Progress.NONE);
      assertThat(weights.applyTo(other.values()))
          .as("seed " + seed + " " + drift)
          .containsExactly(others.values(), within(1e-9));
      Weights many = predictor.weights(targets, 3, Progress.NONE);
      assertThat(many.toArray()).isDeepEqualTo(weights.toArray());
    }
  }

  @Test
  void sumsOfPartOfTheTargetsAreThoseOfTheWhole() {
    Random random = new Random(5);
    Observations data = survey(random, 20);
    Targets targets = Targets.of(random.doubles(9).toArray(), random.doubles(9).toArray());
    Weights weights = Kriging.ordinary(MODEL).fit(data).weights(targets);
    double[] part = {1, 1, 1};
    weights.addSums(data.values(), 4, 3, part);
    double[] whole = weights.applyTo(data.values());
    assertThat(part)
        .containsExactly(new double[] {1 + whole[4], 1 + whole[5], 1 + whole[6]}, within(1e-12));
    assertThatThrownBy(() -> weights.addSums(data.values(), 8, 3, part))
        .hasMessageContaining("number of targets must be between 0.0 and 1.0, was 3");
    assertThatThrownBy(() -> weights.applyTo(new double[4]))
        .hasMessage("there are 4 data for the weights of 20");
  }

  @Test
  void neighbourhoodsHaveNone() {
    Observations data = survey(new Random(6), 20);
    Predictor local = Kriging.ordinary(MODEL).with(Neighbourhood.nearest(8)).fit(data);
    Targets target = Targets.of(new double[] {1}, new double[] {1});
    assertThatThrownBy(() -> local.weights(target, 1, Progress.NONE))
        .isInstanceOf(UnsupportedOperationException.class)
        .hasMessageContaining("weights of all 20 observations need kriging from all of them");
  }
}
