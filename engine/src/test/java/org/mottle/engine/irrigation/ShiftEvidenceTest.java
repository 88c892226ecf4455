package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShiftEvidenceTest {

  /** Simpson's rule. */
  private static double integral(DoubleUnaryOperator f, double low, double high) {
    int n = 200_000;
    double h = (high - low) / n;
    double sum = f.applyAsDouble(low) + f.applyAsDouble(high);
    for (int i = 1; i < n; i++) {
      sum += (i % 2 == 1 ? 4 : 2) * f.applyAsDouble(low + i * h);
    }
    return sum * h / 3;
  }

  @ParameterizedTest
  @CsvSource({"0.5,-3,7", "0.5,3,7", "4,-12,10", "0.01,0.1,7", "2,9,0.5", "0,0,5"})
  void integralsInClosedFormAreThoseOfQuadrature(double a, double r, double sd) {
    DoubleUnaryOperator density =
        b ->
            Math.exp(b * r - b * b * a / 2 - b * b / (2 * sd * sd)) / (sd * Math.sqrt(2 * Math.PI));
    double far = 12 * sd;
    double both = integral(density, -far, far);
    ShiftEvidence either = ShiftEvidence.eitherWay(a, r, sd);
    assertThat(either.logBayes()).isCloseTo(Math.log(both), within(1e-9));
    double down = 2 * integral(density, -far, 0);
    double mean = 2 * integral(b -> b * density.applyAsDouble(b), -far, 0) / down;
    double square = 2 * integral(b -> b * b * density.applyAsDouble(b), -far, 0) / down;
    ShiftEvidence shift = ShiftEvidence.downwards(a, r, sd);
    assertThat(shift.logBayes()).isCloseTo(Math.log(down), within(1e-9));
    assertThat(shift.mean()).isCloseTo(mean, within(1e-8));
    assertThat(shift.variance()).isCloseTo(square - mean * mean, within(1e-7));
  }

  @Test
  void bothSignsTogetherAreTheTwoHalves() {
    for (double r : new double[] {-5, -0.3, 0, 2, 8}) {
      double down = Math.exp(ShiftEvidence.downwards(1.5, r, 4).logBayes());
      double up = Math.exp(ShiftEvidence.downwards(1.5, -r, 4).logBayes());
      assertThat(Math.log((down + up) / 2))
          .isCloseTo(ShiftEvidence.eitherWay(1.5, r, 4).logBayes(), within(1e-12));
    }
  }

  @Test
  void farDownTheAsymptoteTakesOver() {
    assertThat(ShiftEvidence.logPhi(-29.999999))
        .isCloseTo(ShiftEvidence.logPhi(-30.000001), within(1e-3));
    // step of ln Phi is about -z dz there
    assertThat(ShiftEvidence.logPhi(-29.999999) - ShiftEvidence.logPhi(-30.000001))
        .isCloseTo(30 * 2e-6, within(2e-6));
    ShiftEvidence impossible = ShiftEvidence.downwards(10, 500, 7);
    assertThat(impossible.logBayes()).isFinite().isNegative();
    assertThat(impossible.mean()).isBetween(-0.01, 0.0);
  }
}
