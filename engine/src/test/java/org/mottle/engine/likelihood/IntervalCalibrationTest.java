package org.mottle.engine.likelihood;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.engine.fit.Shape;

/**
 * Intervals of 90 % hold the truth in 90 % of pools, give or take three standard deviations of the
 * binomial: nine samples of 18 stations, two close pairs each, range 12 m, sill 3, nugget 1.5.
 */
class IntervalCalibrationTest {

  @ParameterizedTest
  @CsvSource({"SPHERICAL,40", "EXPONENTIAL,15", "MATERN,15"})
  void intervalsHoldTheTruth(Shape shape, int pools) {
    Candidate candidate = Candidate.of(shape);
    SimulatedPool truth = SimulatedPool.STANDARD.field(candidate, 12, 3, 1.5);
    LikelihoodSettings settings =
        LikelihoodSettings.defaults().withCandidates(List.of(candidate)).withDraws(1);
    int range = 0;
    int nugget = 0;
    int sill = 0;
    for (int seed = 1000; seed < 1000 + pools; seed++) {
      PooledVariogram v = PooledLawsTest.pooled(truth.draw(seed), settings, 2);
      range += v.parameters().practicalRange().holds(12) ? 1 : 0;
      nugget += v.parameters().nugget().holds(1.5) ? 1 : 0;
      sill += v.parameters().sills().get("S1").holds(3) ? 1 : 0;
    }
    int least = (int) Math.ceil(pools * 0.9 - 3 * Math.sqrt(pools * 0.9 * 0.1));
    String figures =
        "%s: of %d pools, seeds from 1000, intervals hold the range in %d, the nugget in %d, the"
            + " sill in %d";
    for (int held : new int[] {range, nugget, sill}) {
      assertThat(held)
          .as(figures, candidate.label(), pools, range, nugget, sill)
          .isGreaterThanOrEqualTo(least);
    }
  }
}
