package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.progress.Progress;

class OthersViewTest {

  private static PooledVariogram pooled(List<Sample> samples) {
    return (PooledVariogram)
        RestrictedLikelihood.of(samples, LikelihoodSettings.defaults(), 1, Progress.NONE);
  }

  private static double meanSill(List<OthersView> views) {
    return views.stream()
        .mapToDouble(v -> v.sills().stream().mapToDouble(s -> s.share() * s.sill()[0]).sum())
        .average()
        .orElseThrow();
  }

  private static Sample stretched(Sample s, double factor) {
    double[] values = Arrays.stream(s.observations().values()).map(v -> factor * v).toArray();
    return new Sample(
        s.green(), s.survey(), s.observations().withValues(values), s.insertions(), s.replicates());
  }

  /** A green that varies three times as much as the others has a sill of its own, not here. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2})
  void aGreensOwnReadingsDoNotSetItsSill(long seed) {
    List<Sample> samples = new ArrayList<>(SimulatedPool.STANDARD.draw(seed));
    samples.set(0, stretched(samples.get(0), 3));
    PooledVariogram pool = pooled(samples);
    double own =
        pool.draws(samples.get(0)).stream()
            .mapToDouble(m -> m.sill() - m.nugget())
            .average()
            .orElseThrow();
    double others = meanSill(pool.othersOf(List.of(samples.get(0)), 9));
    assertThat(others).as("seed %d", seed).isLessThan(own / 2);
  }

  @Test
  void sharesSumToOneAndSillsGoTogether() {
    List<Sample> samples = SimulatedPool.STANDARD.size(9, 2, 18, 2).draw(3);
    List<Sample> green = samples.stream().filter(s -> s.green().equals("G2")).toList();
    for (OthersView view : pooled(samples).othersOf(green, 5)) {
      assertThat(view.sills().stream().mapToDouble(OthersView.Sills::share).sum())
          .isCloseTo(1, within(1e-3));
      double before = 0;
      for (OthersView.Sills sills : view.sills()) {
        assertThat(sills.sill()).hasSize(2);
        assertThat(sills.sill()[1]).isGreaterThanOrEqualTo(before);
        before = sills.sill()[1];
      }
    }
  }

  /** Position errors lower the correlation of neighbours, of two surveys more than of one. */
  @Test
  void correlationsKnowThePositionErrors() {
    List<Sample> samples = SimulatedPool.STANDARD.jitter(1).size(9, 2, 18, 2).draw(4);
    List<Sample> green = samples.stream().filter(s -> s.green().equals("G2")).toList();
    double[][] r = pooled(samples).othersOf(green, 1).get(0).correlation();
    assertThat(r).hasDimensions(36, 36);
    for (int i = 0; i < 36; i++) {
      assertThat(r[i][i]).isEqualTo(1);
      for (int j = 0; j < i; j++) {
        assertThat(r[i][j]).isEqualTo(r[j][i]).isBetween(-1e-9, 0.97);
      }
    }
  }
}
