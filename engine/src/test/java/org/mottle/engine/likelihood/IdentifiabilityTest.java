package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.fit.Shape;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.variogram.NestedModel;

/** What the readings can and cannot tell apart, on seeded fields of known variogram. */
class IdentifiabilityTest {
  private static final Candidate SHAPE = Candidate.of(Shape.SPHERICAL);
  private static final SimulatedPool TRUTH = SimulatedPool.STANDARD;
  private static final LikelihoodSettings SPHERICAL =
      LikelihoodSettings.defaults().withCandidates(List.of(SHAPE));
  private static final int POOLS = 6;

  @Test
  void closePairsTellNuggetFromStructure() {
    double with = 0;
    double without = 0;
    for (int seed = 0; seed < POOLS; seed++) {
      PooledVariogram pairs = pooled(TRUTH.draw(seed));
      PooledVariogram none = pooled(TRUTH.size(9, 1, 18, 0).draw(seed));
      with += PooledLawsTest.width(pairs.parameters().nugget()) / POOLS;
      without += PooledLawsTest.width(none.parameters().nugget()) / POOLS;
      assertThat(pairs.evidence().nuggetKnown()).as("seed %d", seed).isTrue();
      assertThat(pairs.notes()).as("seed %d", seed).noneMatch(n -> n.contains("nugget"));
      assertThat(none.evidence().nuggetKnown()).as("seed %d", seed).isFalse();
      assertThat(none.notes()).as("seed %d", seed).anyMatch(n -> n.contains("nugget cannot"));
    }
    assertThat(without)
        .as("mean width in logarithms; with pairs %.2f", with)
        .isGreaterThan(1.5 * with);
  }

  @Test
  void replicatesTellNuggetFromStructure() {
    double with = 0;
    double without = 0;
    for (int seed = 0; seed < POOLS; seed++) {
      SimulatedPool none = TRUTH.size(9, 1, 18, 0);
      PooledVariogram twice = pooled(none.insertions(2).draw(seed));
      with += PooledLawsTest.width(twice.parameters().nugget()) / POOLS;
      without += PooledLawsTest.width(pooled(none.draw(seed)).parameters().nugget()) / POOLS;
      assertThat(twice.evidence().nuggetKnown()).isTrue();
      assertThat(twice.insertionVariance().orElseThrow())
          .as("162 degrees of freedom, truth 1.5, seed %d", seed)
          .isBetween(1.0, 2.0);
      assertThat(twice.parameters().nugget().high()).isGreaterThan(1.2);
    }
    assertThat(without)
        .as("mean width in logarithms; with replicates %.2f", with)
        .isGreaterThan(1.5 * with);
  }

  /**
   * Jitter that is not declared passes for nugget: 2 m turn half of a structure of 10 m into it.
   */
  @Test
  void declaredJitterIsNotNugget() {
    double declared = 0;
    double hidden = 0;
    double range = 0;
    for (int seed = 0; seed < POOLS; seed++) {
      List<Sample> samples = TRUTH.field(SHAPE, 10, 4, 1).jitter(2).insertions(2).draw(seed);
      PooledVariogram known = pooled(samples);
      declared += Math.log(known.parameters().nugget().best()) / POOLS;
      range += Math.log(known.parameters().practicalRange().best()) / POOLS;
      hidden += Math.log(pooled(exact(samples)).parameters().nugget().best()) / POOLS;
    }
    assertThat(Math.exp(declared)).as("nugget, truth 1").isBetween(0.8, 1.8);
    assertThat(Math.exp(range)).as("range, truth 10").isBetween(7.0, 15.0);
    assertThat(Math.exp(hidden - declared))
        .as("nugget with jitter hidden, over that")
        .isGreaterThan(1.25);
  }

  @Test
  void fewStationsBorrow() {
    for (int seed = 0; seed < POOLS; seed++) {
      List<Sample> few = TRUTH.size(3, 1, 12, 0).draw(seed);
      PooledVariogram v = pooled(few);
      assertThat(v.evidence().borrowed()).isTrue();
      assertThat(v.notes()).anyMatch(n -> n.contains("borrowed variogram: 36 stations"));
      assertThat(pooled(TRUTH.draw(seed)).evidence().borrowed()).isFalse();
    }
  }

  /** Six readings say next to nothing: draws are the prior's, 6 to 25 m and 0.15 to 0.6. */
  @Test
  void drawsOfAnUninformativePoolFollowThePrior() {
    List<Double> ranges = new ArrayList<>();
    List<Double> shares = new ArrayList<>();
    for (int seed = 0; seed < POOLS; seed++) {
      List<Sample> one = TRUTH.size(1, 1, 6, 0).draw(seed);
      for (NestedModel m : pooled(one).draws(one.get(0))) {
        ranges.add(m.structures().get(0).model().practicalRange());
        shares.add(m.nuggetShare());
      }
    }
    ranges.sort(null);
    shares.sort(null);
    int n = ranges.size();
    assertThat(ranges.get(n / 2)).as("median range").isBetween(10.0, 15.0);
    assertThat(ranges.get(n / 20)).as("5 %% of ranges").isBetween(4.5, 8.0);
    assertThat(ranges.get(19 * n / 20)).as("95 %% of ranges").isBetween(19.0, 33.0);
    assertThat(shares.get(n / 2)).as("median share").isBetween(0.25, 0.45);
    assertThat(shares.get(n / 20)).as("5 %% of shares").isBetween(0.05, 0.25);
    assertThat(shares.get(19 * n / 20)).as("95 %% of shares").isBetween(0.45, 0.75);
  }

  /** With three shapes to choose from the chance of a gain stays near one in twenty. */
  @Test
  void pureNoiseGainsNothing() {
    int gains = 0;
    int found = 0;
    int pools = 16;
    for (int seed = 0; seed < pools; seed++) {
      gains += gain(TRUTH.field(SHAPE, 12, 0, 3).draw(seed)) > 0 ? 1 : 0;
      found += gain(TRUTH.draw(seed)) > 0 ? 1 : 0;
    }
    assertThat(gains).as("pools of noise with a gain, of %d", pools).isLessThanOrEqualTo(3);
    assertThat(found).as("pools of structure with a gain, of %d", pools).isGreaterThanOrEqualTo(12);
  }

  private static double gain(List<Sample> samples) {
    return pooled(samples).evidence().gain();
  }

  private static PooledVariogram pooled(List<Sample> samples) {
    return PooledLawsTest.pooled(samples, SPHERICAL, 2);
  }

  private static List<Sample> exact(List<Sample> samples) {
    return samples.stream()
        .map(
            s -> {
              Observations o = s.observations();
              return new Sample(
                  s.green(),
                  s.survey(),
                  o.withPositionError(new PositionError(new double[o.size()], 0)),
                  s.insertions(),
                  s.replicates());
            })
        .toList();
  }
}
