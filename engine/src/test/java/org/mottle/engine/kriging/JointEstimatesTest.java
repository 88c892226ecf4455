package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;

/** Laws of the covariances between errors of kriging, for every drift. */
class JointEstimatesTest {
  private static final double NOISE = 0.7;
  private static final NestedModel MODEL =
      new NestedModel(
          0,
          java.util.List.of(
              new Structure(new Exponential(3, 5), new Anisotropy(new Azimuth(30), 0.6)),
              Structure.isotropic(new Spherical(1, 12))));

  /** Errors of places are not modelled under anisotropy. */
  private static final NestedModel ISOTROPIC =
      NestedModel.of(0, new Exponential(3, 5), new Spherical(1, 12));

  private final Random random = new Random(5);
  private final double[] x = random.doubles(18, 0, 25).toArray();
  private final double[] y = random.doubles(18, 0, 20).toArray();
  private final double[] z = random.doubles(18, 15, 30).toArray();
  private final double[] tx = random.doubles(9, 0, 25).toArray();
  private final double[] ty = random.doubles(9, 0, 20).toArray();

  static Stream<Drift> drifts() {
    return Stream.of(Drift.knownMean(21), Drift.constant(), Drift.coordinates());
  }

  private static Observations observations(double[] x, double[] y, double[] z) {
    double[] noise = new double[x.length];
    Arrays.fill(noise, NOISE);
    return Observations.of(x, y, z).withMeasurementVariance(noise);
  }

  private static double[] plus(double[] a, double last) {
    double[] longer = Arrays.copyOf(a, a.length + 1);
    longer[a.length] = last;
    return longer;
  }

  private JointEstimates joint(Drift drift) {
    return JointEstimates.of(
        Kriging.ordinary(MODEL).with(drift).system(observations(x, y, z)), Targets.of(tx, ty));
  }

  /** Whatever kriging makes of errors of the places, the joint estimates make the same of them. */
  @ParameterizedTest
  @MethodSource("drifts")
  void values_and_variances_are_those_of_kriging(Drift drift) {
    double[] jitter = new double[x.length];
    Arrays.fill(jitter, 0.6);
    Observations survey = observations(x, y, z).withPositionError(new PositionError(jitter, 0.5));
    Kriging kriging = Kriging.ordinary(ISOTROPIC).with(drift);
    Targets targets = Targets.of(tx, ty);
    JointEstimates joint = JointEstimates.of(kriging.system(survey), targets);
    Estimates estimates = kriging.fit(survey).estimate(targets, 1, Progress.NONE);
    double[] row = new double[tx.length];
    for (int j = 0; j < tx.length; j++) {
      joint.covariances(j, row.length, row);
      assertThat(joint.value(j)).isCloseTo(estimates.values()[j], within(1e-11));
      assertThat(joint.variance(j)).isCloseTo(estimates.variances()[j], within(1e-11));
      assertThat(row[j]).isCloseTo(joint.variance(j), within(1e-11));
    }
  }

  /** cov(a, b) = C(a, b) - w(a)'c(b) - w(b)'c(a) + w(a)'C w(b), weights as kriging gives them. */
  @ParameterizedTest
  @MethodSource("drifts")
  void covariances_are_those_of_weighted_sums(Drift drift) {
    JointEstimates joint = joint(drift);
    Weights w =
        Kriging.ordinary(MODEL)
            .with(drift)
            .fit(observations(x, y, z))
            .weights(Targets.of(tx, ty), 1, Progress.NONE);
    double[] row = new double[tx.length];
    for (int a = 0; a < tx.length; a++) {
      joint.covariances(a, row.length, row);
      for (int b = 0; b < tx.length; b++) {
        double sum = covariance(tx[a] - tx[b], ty[a] - ty[b]);
        for (int i = 0; i < x.length; i++) {
          sum -= w.weight(i, a) * covariance(x[i] - tx[b], y[i] - ty[b]);
          sum -= w.weight(i, b) * covariance(x[i] - tx[a], y[i] - ty[a]);
          for (int j = 0; j < x.length; j++) {
            double noise = i == j ? NOISE : 0;
            sum += w.weight(i, a) * w.weight(j, b) * (covariance(x[i] - x[j], y[i] - y[j]) + noise);
          }
        }
        assertThat(row[b]).as("%s, %d and %d", drift, a, b).isCloseTo(sum, within(1e-10));
      }
    }
  }

  private static double covariance(double dx, double dy) {
    return MODEL.sill() - MODEL.semivariance(dx, dy);
  }

  /** One more reading anywhere: kriging anew is the update of rank one, drift included. */
  @ParameterizedTest
  @MethodSource("drifts")
  void one_more_reading_is_an_update_of_rank_one(Drift drift) {
    JointEstimates joint = joint(drift);
    double[] toNew = new double[tx.length];
    joint.covariances(0, tx.length, toNew);
    double datum = 27;
    Estimates anew =
        Kriging.ordinary(MODEL)
            .with(drift)
            .fit(observations(plus(x, tx[0]), plus(y, ty[0]), plus(z, datum)))
            .estimate(Targets.of(tx, ty), 1, Progress.NONE);
    for (int j = 0; j < tx.length; j++) {
      double gain = toNew[j] / (joint.variance(0) + NOISE);
      assertThat(joint.variance(j) - gain * toNew[j]).isCloseTo(anew.variances()[j], within(1e-10));
      assertThat(joint.value(j) + gain * (datum - joint.value(0)))
          .isCloseTo(anew.values()[j], within(1e-10));
    }
  }
}
