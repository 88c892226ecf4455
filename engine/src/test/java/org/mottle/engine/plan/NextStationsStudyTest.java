package org.mottle.engine.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.kriging.JointEstimates;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.Targets;
import org.mottle.engine.observation.Observations;

/**
 * Fields of known covariance on a green of about 500 m², 18 readings, and then six more: those
 * ranked, or six drawn at random with the same inset and clearance. The area called wrongly by the
 * likelier class is counted against the truth.
 */
class NextStationsStudyTest {
  private static final int SEEDS = 100;
  private static final Geometry GREEN = InventedGreen.outline();
  private static final AreaPoints POINTS = AreaPoints.of(GREEN, 1);
  private static final double[] LIMITS = {20.5, 23.5};

  /** The field is known at the centroids of the cells, where the stations stand too. */
  private static final InventedGreen.FieldDraws FIELDS =
      new InventedGreen.FieldDraws(InventedGreen.MODEL, POINTS.positions());

  private static Observations readings(Positions at, double[] truth, Random noise) {
    double[] value = new double[at.size()];
    for (int s = 0; s < value.length; s++) {
      for (int i = 0; i < truth.length; i++) {
        if (POINTS.positions().distance(i, at.x(s), at.y(s)) == 0) {
          value[s] = truth[i] + Math.sqrt(InventedGreen.NUGGET) * noise.nextGaussian();
        }
      }
    }
    return InventedGreen.observed(at, value, InventedGreen.NUGGET);
  }

  private static Observations joined(Observations a, Observations b) {
    double[] values = Arrays.copyOf(a.values(), a.size() + b.size());
    System.arraycopy(b.values(), 0, values, a.size(), b.size());
    return InventedGreen.observed(
        InventedGreen.joined(InventedGreen.places(a), InventedGreen.places(b)),
        values,
        InventedGreen.NUGGET);
  }

  /** m² on the wrong side of a limit, summed over the limits. */
  private static double wrongM2(Observations survey, double[] truth) {
    Positions p = POINTS.positions();
    JointEstimates map =
        JointEstimates.of(
            Kriging.ordinary(InventedGreen.MODEL).system(survey), Targets.of(p.xs(), p.ys()));
    double wrong = 0;
    for (int i = 0; i < truth.length; i++) {
      for (double limit : LIMITS) {
        wrong += truth[i] > limit == map.value(i) > limit ? 0 : POINTS.areaM2(i);
      }
    }
    return wrong;
  }

  @Test
  void ranked_stations_set_more_ground_right_than_random_ones() {
    double ranked = 0;
    double atRandom = 0;
    double promised = 0;
    double losses = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      Random random = new Random(seed);
      double[] truth = FIELDS.draw(random);
      Positions first =
          InventedGreen.randomPlaces(random, POINTS.positions(), Positions.NONE, 2.5, 18);
      Observations survey = readings(first, truth, random);
      StationRanking ranking =
          NextStations.withDefaults()
              .rank(
                  GREEN,
                  first,
                  List.of(InventedGreen.draw(InventedGreen.MODEL, survey, InventedGreen.NUGGET)),
                  LIMITS);
      assertThat(ranking.stations()).as("seed %d", seed).hasSize(6);
      Positions best =
          Positions.of(
              ranking.stations().stream().mapToDouble(NextStation::x).toArray(),
              ranking.stations().stream().mapToDouble(NextStation::y).toArray());
      Positions sites = new StationSites(GREEN, 1).among(POINTS.positions(), first, 1.5);
      Positions any = InventedGreen.randomPlaces(random, sites, first, 1.5, 6);
      double before = wrongM2(survey, truth);
      ranked += before - wrongM2(joined(survey, readings(best, truth, random)), truth);
      atRandom += before - wrongM2(joined(survey, readings(any, truth, random)), truth);
      promised += ranking.before() - ranking.after();
      losses += ranking.before() / before;
    }
    String figures =
        String.format(
            "m² set right over %d seeds: ranked %.1f, random %.1f; p (1 - p) promised %.1f;"
                + " loss over wrong area %.2f",
            SEEDS, ranked / SEEDS, atRandom / SEEDS, promised / SEEDS, losses / SEEDS);
    assertThat(ranked).as(figures).isGreaterThan(1.2 * atRandom);
  }
}
