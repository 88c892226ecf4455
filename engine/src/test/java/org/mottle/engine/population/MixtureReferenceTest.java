package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.reference.ReferenceTable;

/** Waiting times of Old Faithful: mclust 6.0.0 and direct maximisation in R 4.2.2 (mixture.R). */
class MixtureReferenceTest {
  private static final double[] WAITING = ReferenceTable.of("faithful_waiting").numbers("waiting");
  private static final ReferenceTable REFERENCE = ReferenceTable.of("mixture");
  private static final double FLOOR = 1e-6;

  @ParameterizedTest
  @ValueSource(strings = {"mclust", "direct"})
  void oneSurveyAgreesWithBothPrograms(String by) {
    TwoFound found = (TwoFound) InventedGreens.test(WAITING);
    int row = REFERENCE.rowOf("case", by);
    agrees(found.mixture(), row);
    assertThat(found.evidence().deltaBic()).isCloseTo(REFERENCE.number(row, "dbic"), within(1e-7));
  }

  @Test
  void twoSurveysTakeTheCommonDepthWhichHasTheSmallerCriterion() {
    TwoFound found = (TwoFound) InventedGreens.test(twoSurveys());
    int row = REFERENCE.rowOf("case", "two-common");
    assertThat(found.mixture().kind()).isEqualTo(Mixture.Depth.COMMON);
    agrees(found.mixture(), row);
    assertThat(found.evidence().deltaBic()).isCloseTo(REFERENCE.number(row, "dbic"), within(1e-7));
  }

  @ParameterizedTest
  @CsvSource({"two-common,COMMON", "two-own,BY_SURVEY"})
  void twoSurveysAgreeWithDirectMaximisation(String row, Mixture.Depth kind) {
    agrees(new MixtureSearch(twoSurveys(), FLOOR).best(kind), REFERENCE.rowOf("case", row));
  }

  /** The optimisers of R stop some 1e-8 short of the optimum. */
  private static void agrees(Mixture mixture, int row) {
    int last = mixture.surveys() - 1;
    assertThat(mixture.logLikelihood()).isCloseTo(REFERENCE.number(row, "loglik"), within(2e-8));
    assertThat(mixture.upperMean(0)).isCloseTo(REFERENCE.number(row, "upper1"), within(1e-4));
    assertThat(mixture.upperMean(last)).isCloseTo(REFERENCE.number(row, "upper2"), within(1e-4));
    assertThat(mixture.depth(0)).isCloseTo(REFERENCE.number(row, "depth1"), within(1e-4));
    assertThat(mixture.depth(last)).isCloseTo(REFERENCE.number(row, "depth2"), within(1e-4));
    assertThat(mixture.sigma()).isCloseTo(REFERENCE.number(row, "sigma"), within(1e-4));
    assertThat(mixture.share()).isCloseTo(REFERENCE.number(row, "share"), within(1e-6));
  }

  private static double[][] twoSurveys() {
    double[] last = Arrays.copyOfRange(WAITING, 136, 272);
    return new double[][] {
      Arrays.copyOf(WAITING, 136), Arrays.stream(last).map(v -> v - 20).toArray()
    };
  }

  /** A hundred random starts a sample: none ends higher than the search did. */
  @Test
  void noRandomStartFindsABetterOptimum() {
    Random random = new Random(11);
    InventedGreens greens = new InventedGreens(11);
    for (int sample = 0; sample < 12; sample++) {
      double[][] value = {greens.two(18, sample % 6, 7, 2), greens.two(20, sample % 5, 5, 2)};
      for (Mixture.Depth kind : Mixture.Depth.values()) {
        double searched = new MixtureSearch(value, 0.002).best(kind).logLikelihood();
        for (int start = 0; start < 100; start++) {
          Expectation run = new Expectation(value, kind, 0.002);
          run.start(new double[][] {random.doubles(18).toArray(), random.doubles(20).toArray()});
          run.climb(4000, 1e-11);
          assertThat(run.logLikelihood())
              .as("seed 11, sample %d, %s, start %d", sample, kind, start)
              .isLessThan(searched + 1e-6);
        }
      }
    }
  }

  /** The law of expectation-maximisation: no step loses. */
  @Test
  void noStepLosesLikelihood() {
    double[][] value = twoSurveys();
    Expectation run = new Expectation(value, Mixture.Depth.BY_SURVEY, FLOOR);
    Random random = new Random(3);
    run.start(new double[][] {random.doubles(136).toArray(), random.doubles(136).toArray()});
    for (int step = 0; step < 200; step++) {
      double before = run.logLikelihood();
      run.climb(1, 0);
      assertThat(run.logLikelihood()).as("step %d", step).isGreaterThanOrEqualTo(before - 1e-9);
    }
  }
}
