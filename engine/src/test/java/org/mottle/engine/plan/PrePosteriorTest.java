package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.kriging.Estimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;

/** The closed form against drawing the new readings and kriging anew, and greed against search. */
class PrePosteriorTest {
  private static final Geometry GREEN = InventedGreen.rectangle(9, 6);
  private static final AreaPoints POINTS = AreaPoints.of(GREEN, 1);
  private static final NormalDistribution NORMAL = new NormalDistribution();
  private static final double[] LIMITS = {21, 23.5};
  private static final GaussIntegrator HERMITE = new GaussIntegratorFactory().hermite(9);
  private static final Positions THREE =
      Positions.of(new double[] {1.5, 4.5, 7.5}, new double[] {4.5, 1.5, 3.5});

  private static DrawField field(Observations survey, Positions candidates) {
    return new DrawField(
        InventedGreen.draw(InventedGreen.MODEL, survey, InventedGreen.NUGGET),
        POINTS,
        candidates,
        LIMITS);
  }

  private static Estimates kriged(Observations survey, Positions at) {
    return Kriging.ordinary(InventedGreen.MODEL)
        .fit(survey)
        .estimate(Targets.of(at.xs(), at.ys()), 1, Progress.NONE);
  }

  private static Observations with(Observations survey, double x, double y, double value) {
    double[] values = Arrays.copyOf(survey.values(), survey.size() + 1);
    values[survey.size()] = value;
    Positions one = Positions.of(new double[] {x}, new double[] {y});
    Positions all = InventedGreen.joined(InventedGreen.places(survey), one);
    return InventedGreen.observed(all, values, InventedGreen.NUGGET);
  }

  private static double lossM2(Observations survey) {
    Estimates e = kriged(survey, POINTS.positions());
    double sum = 0;
    for (int i = 0; i < POINTS.size(); i++) {
      for (double limit : LIMITS) {
        double p =
            NORMAL.cumulativeProbability((e.values()[i] - limit) / Math.sqrt(e.variances()[i]));
        sum += POINTS.areaM2(i) * p * (1 - p);
      }
    }
    return sum;
  }

  /** One reading: its law cut into 400 equal slices, each kriged anew. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void one_reading(long seed) {
    Observations survey = InventedGreen.survey(GREEN, seed, 6);
    double x = 3.5;
    double y = 2.5;
    Positions candidate = Positions.of(new double[] {x}, new double[] {y});
    double[] gain = new double[1];
    DrawField field = field(survey, candidate);
    field.addGains(Criterion.MISCLASSIFIED_AREA, gain);
    double before = lossM2(survey);
    assertThat(field.lossM2()).isCloseTo(before, within(1e-5));
    Estimates at = kriged(survey, candidate);
    double sd = Math.sqrt(at.variances()[0] + InventedGreen.NUGGET);
    double after = 0;
    for (int s = 0; s < 400; s++) {
      double z = NORMAL.inverseCumulativeProbability((s + 0.5) / 400);
      after += lossM2(with(survey, x, y, at.values()[0] + sd * z)) / 400;
    }
    assertThat(gain[0]).as("seed %d", seed).isPositive().isCloseTo(before - after, within(2e-3));
  }

  /** Three readings, each law by nine points of Gauss-Hermite quadrature given those before. */
  @ParameterizedTest
  @ValueSource(longs = {7, 8})
  void three_readings(long seed) {
    Observations survey = InventedGreen.survey(GREEN, seed, 6);
    double gained = gainedByThree(survey);
    double after = expectedLossM2(survey, 0);
    assertThat(gained).as("seed %d", seed).isCloseTo(lossM2(survey) - after, within(2e-3));
    assertThat(gained).isGreaterThan(0.5);
  }

  private static double expectedLossM2(Observations survey, int next) {
    if (next == THREE.size()) {
      return lossM2(survey);
    }
    Estimates e = kriged(survey, THREE.pick(java.util.List.of(next)));
    double sd = Math.sqrt(e.variances()[0] + InventedGreen.NUGGET);
    double sum = 0;
    for (int i = 0; i < HERMITE.getNumberOfPoints(); i++) {
      double value = e.values()[0] + sd * Math.sqrt(2) * HERMITE.getPoint(i);
      Observations later = with(survey, THREE.x(next), THREE.y(next), value);
      sum += HERMITE.getWeight(i) / Math.sqrt(Math.PI) * expectedLossM2(later, next + 1);
    }
    return sum;
  }

  private static double gainedByThree(Observations survey) {
    DrawField field = field(survey, THREE);
    double gained = 0;
    for (int c = 0; c < 3; c++) {
      double[] gain = new double[3];
      field.addGains(Criterion.MISCLASSIFIED_AREA, gain);
      gained += gain[c];
      field.take(c);
    }
    return gained;
  }

  /** Three readings, one after the other, each drawn from kriging given those before. */
  @Test
  void three_readings_drawn_at_random() {
    Observations survey = InventedGreen.survey(GREEN, 7, 6);
    double gained = gainedByThree(survey);
    Random random = new Random(70);
    int runs = 1500;
    double sum = 0;
    double squares = 0;
    for (int r = 0; r < runs; r++) {
      Observations later = survey;
      for (int c = 0; c < 3; c++) {
        Positions at = Positions.of(new double[] {THREE.x(c)}, new double[] {THREE.y(c)});
        Estimates e = kriged(later, at);
        double sd = Math.sqrt(e.variances()[0] + InventedGreen.NUGGET);
        double value = e.values()[0] + sd * random.nextGaussian();
        later = with(later, at.x(0), at.y(0), value);
      }
      double drop = lossM2(survey) - lossM2(later);
      sum += drop;
      squares += drop * drop;
    }
    double mean = sum / runs;
    double error = Math.sqrt((squares / runs - mean * mean) / runs);
    assertThat(gained)
        .as("seeds 7 and 70, standard error %s", error)
        .isCloseTo(mean, within(3.5 * error));
    assertThat(3.5 * error).isLessThan(0.2 * gained);
  }

  /**
   * The first station is the best single one. Of sets of three the greedy one need not be the best:
   * the loss is not submodular for certain. How near it comes is measured.
   */
  @Test
  void greed_comes_near_the_best_set_of_three() {
    double worst = 1;
    for (long seed = 1; seed <= 4; seed++) {
      Observations survey = InventedGreen.survey(GREEN, seed, 5);
      Positions sites =
          new StationSites(GREEN, 1).among(POINTS.positions(), InventedGreen.places(survey), 1);
      StationRanking greedy =
          NextStations.withDefaults()
              .withCount(3)
              .withClearance(1)
              .withLeastGainM2(0)
              .rank(
                  GREEN,
                  InventedGreen.places(survey),
                  java.util.List.of(
                      InventedGreen.draw(InventedGreen.MODEL, survey, InventedGreen.NUGGET)),
                  LIMITS);
      double best = 0;
      double bestSingle = 0;
      for (int a = 0; a < sites.size(); a++) {
        bestSingle = Math.max(bestSingle, gain(survey, sites, a));
        for (int b = a + 1; b < sites.size(); b++) {
          for (int c = b + 1; c < sites.size(); c++) {
            if (apart(sites, a, b) && apart(sites, a, c) && apart(sites, b, c)) {
              best = Math.max(best, gain(survey, sites, a, b, c));
            }
          }
        }
      }
      assertThat(greedy.stations().get(0).gainM2())
          .as("seed %d", seed)
          .isCloseTo(bestSingle, within(1e-9));
      double ratio = (greedy.before() - greedy.after()) / best;
      assertThat(ratio).as("seed %d", seed).isLessThan(1 + 1e-9);
      worst = Math.min(worst, ratio);
    }
    assertThat(worst).isGreaterThan(0.95);
  }

  private static boolean apart(Positions sites, int a, int b) {
    return sites.distance(a, sites.x(b), sites.y(b)) >= 1;
  }

  private static double gain(Observations survey, Positions sites, int... taken) {
    DrawField field = field(survey, sites.pick(Arrays.stream(taken).boxed().toList()));
    double before = field.lossM2();
    for (int i = 0; i < taken.length; i++) {
      field.take(i);
    }
    return before - field.lossM2();
  }
}
