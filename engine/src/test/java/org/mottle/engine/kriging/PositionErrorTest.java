package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.Gaussian;
import org.mottle.engine.variogram.Linear;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;

/** Laws of kriging from readings whose places are in error, or that share an error. */
class PositionErrorTest {
  private static final NestedModel MODEL =
      NestedModel.of(0.3, new Exponential(2, 4), new Spherical(2, 12));
  private static final Targets TARGETS =
      Targets.of(new double[] {3, 11, 17, 26}, new double[] {4, 9, 2, 30});

  private static Observations survey(long seed, int n) {
    Random random = new Random(seed);
    return Observations.of(
        random.doubles(n, 0, 22).toArray(),
        random.doubles(n, 0, 18).toArray(),
        random.doubles(n, 12, 30).toArray());
  }

  private static Observations jittered(Observations data, double jitter, double shift) {
    double[] sd = new double[data.size()];
    Arrays.fill(sd, jitter);
    return data.withPositionError(new PositionError(sd, shift));
  }

  /** Jitters of 0, 0.7 and 2 m by turns. */
  private static Observations mixed(Observations data, double shift) {
    double[] sd = new double[data.size()];
    for (int i = 0; i < sd.length; i++) {
      sd[i] = new double[] {0, 0.7, 2}[i % 3];
    }
    return data.withPositionError(new PositionError(sd, shift));
  }

  private static Estimates krige(NestedModel model, Observations data) {
    return Kriging.ordinary(model).fit(data).estimate(TARGETS, 1, Progress.NONE);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void noErrorChangesNoByte(long seed) {
    Observations data = survey(seed, 30);
    Observations same =
        jittered(data, 0, 0).withCommonErrors(List.of(CommonError.of(new boolean[30], 3)));
    assertThat(krige(MODEL, same).values()).isEqualTo(krige(MODEL, data).values());
    assertThat(krige(MODEL, same).variances()).isEqualTo(krige(MODEL, data).variances());
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void theCovarianceStaysPositiveSemiDefinite(long seed) {
    Random random = new Random(seed);
    int n = 40;
    double[] sd = random.doubles(n, 0, 3).map(s -> s < 1 ? 0 : s).toArray();
    for (Observations data :
        List.of(
            survey(seed, n).withPositionError(new PositionError(sd, 1)),
            mixed(survey(seed, n), 0),
            jittered(survey(seed, n), 0.02, 0))) {
      for (NestedModel model :
          List.of(
              MODEL,
              NestedModel.of(0, new Gaussian(4, 9)),
              NestedModel.of(0, new Spherical(4, 9)))) {
        double sill = model.sill() - model.nugget();
        PositionedCovariances positioned =
            new PositionedCovariances(model, Drift.constant(), data, 0, 0);
        double[][] c = positioned.upper(positioned.exact().place(data.xs(), data.ys(), 0, n, 0, 0));
        for (int i = 0; i < n; i++) {
          for (int j = i; j < n; j++) {
            c[i][j] = sill - c[i][j];
            c[j][i] = c[i][j];
          }
        }
        double[] eigenvalues =
            new EigenDecomposition(new Array2DRowRealMatrix(c)).getRealEigenvalues();
        assertThat(Arrays.stream(eigenvalues).min().getAsDouble())
            .as("seed " + seed + ", " + model)
            .isGreaterThan(-1e-6 * sill);
      }
    }
  }

  /** Cressie & Kornak 2003: jitter makes a Gaussian model another one, and a nugget. */
  @ParameterizedTest(name = "jitter {0} m")
  @ValueSource(doubles = {0.4, 1, 2.5})
  void amongReadingsAGaussianModelIsAnotherWithANugget(double jitter) {
    double wide = 36 + 4 * jitter * jitter;
    double partial = 4 * 36 / wide;
    Observations data = survey(4, 25);
    double[] lost = new double[25];
    Arrays.fill(lost, 4 - partial + 0.2);
    Kriging blurred = Kriging.ordinary(NestedModel.of(0.2, new Gaussian(4, 6)));
    Kriging other = Kriging.ordinary(NestedModel.of(0, new Gaussian(partial, Math.sqrt(wide))));
    Estimates actual = blurred.leaveOneOut(jittered(data, jitter, 3), 1, Progress.NONE);
    Estimates expected = other.leaveOneOut(data.withMeasurementVariance(lost), 1, Progress.NONE);
    assertThat(actual.values()).containsExactly(expected.values(), within(1e-4));
    assertThat(actual.variances()).containsExactly(expected.variances(), within(1e-5));
    TrendCoefficient mean = blurred.fit(jittered(data, jitter, 3)).trendCoefficients().get(0);
    TrendCoefficient plain =
        other.fit(data.withMeasurementVariance(lost)).trendCoefficients().get(0);
    assertThat(mean.value()).isCloseTo(plain.value(), within(1e-4));
    assertThat(mean.standardError()).isCloseTo(plain.standardError(), within(1e-4));
  }

  @Test
  void aShiftInCommonLeavesTheReadingsAloneAndWidensTheMapNearThem() {
    Observations data = survey(5, 30);
    Observations shifted = jittered(data, 0, 1.5);
    Kriging kriging = Kriging.ordinary(MODEL);
    assertThat(kriging.leaveOneOut(shifted, 1, Progress.NONE).variances())
        .isEqualTo(kriging.leaveOneOut(data, 1, Progress.NONE).variances());
    for (int i = 0; i < 30; i++) {
      double variance = kriging.fit(shifted).at(data.x(i), data.y(i)).variance();
      assertThat(variance).as("at datum " + i).isGreaterThan(0.5);
    }
  }

  @Test
  void jitterRaisesEveryVarianceAndMoreOfItMore() {
    Observations data = survey(6, 30);
    Estimates before = krige(MODEL, data);
    for (double jitter : new double[] {0.2, 0.6, 1.5, 4}) {
      Estimates after = krige(MODEL, jittered(data, jitter, 0));
      for (int j = 0; j < TARGETS.size() - 1; j++) {
        assertThat(after.variance(j))
            .as("jitter " + jitter + ", target " + j)
            .isGreaterThan(before.variance(j));
      }
      before = after;
    }
  }

  @Test
  void aBlockIsTheMeanOverItsPointsAndThreadsDoNotMatter() {
    Observations data = mixed(survey(7, 30), 1);
    BlockSupport block = new BlockSupport(3, 2);
    Kriging kriging = Kriging.ordinary(MODEL);
    double[] x = new double[16];
    double[] y = new double[16];
    double[] weight = new double[16];
    for (int p = 0; p < 16; p++) {
      x[p] = 11 + block.dx(p);
      y[p] = 9 + block.dy(p);
      weight[p] = block.weight(p);
    }
    Estimate mean = kriging.fit(data).mean(x, y, weight);
    Estimate of = kriging.with(block).fit(data).at(11, 9);
    assertThat(of.value()).isCloseTo(mean.value(), within(1e-10));
    assertThat(of.variance()).isCloseTo(mean.variance(), within(1e-10));
    Estimates many = kriging.fit(data).estimate(TARGETS, 3, Progress.NONE);
    assertThat(many.values()).isEqualTo(krige(MODEL, data).values());
  }

  @Test
  void allTablesAndNoTablesAgree() {
    Observations data = survey(8, 40);
    double[] sd = new double[40];
    for (int i = 0; i < 40; i++) {
      sd[i] = 1 + 1e-12 * i;
    }
    Observations distinct = data.withPositionError(new PositionError(sd, 0));
    Estimates expected = krige(MODEL, jittered(data, 1, 0));
    assertThat(krige(MODEL, distinct).values()).containsExactly(expected.values(), within(1e-4));
    assertThat(krige(MODEL, distinct).variances())
        .containsExactly(expected.variances(), within(1e-5));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void anErrorOfAllReadingsAddsItsVarianceAndLeavesTheEstimate(long seed) {
    Observations data = mixed(survey(seed, 24), 0.5);
    boolean[] all = new boolean[24];
    Arrays.fill(all, true);
    Estimates alone = krige(MODEL, data);
    Estimates shared = krige(MODEL, data.withCommonErrors(List.of(CommonError.of(all, 0.49))));
    for (int j = 0; j < TARGETS.size(); j++) {
      assertThat(shared.value(j)).as("seed " + seed).isCloseTo(alone.value(j), within(1e-9));
      assertThat(shared.variance(j))
          .as("seed " + seed)
          .isCloseTo(alone.variance(j) + 0.49, within(1e-9));
    }
  }

  @Test
  void anErrorOfAReadingAloneIsItsMeasurementVariance() {
    Observations data = survey(9, 20);
    boolean[] one = new boolean[20];
    one[6] = true;
    double[] variance = new double[20];
    variance[6] = 0.8;
    Estimates expected = krige(MODEL, data.withMeasurementVariance(variance));
    Estimates actual = krige(MODEL, data.withCommonErrors(List.of(CommonError.of(one, 0.8))));
    assertThat(actual.values()).isEqualTo(expected.values());
    assertThat(actual.variances()).isEqualTo(expected.variances());
  }

  @Test
  void refusalsSayWhatToDo() {
    Observations data = jittered(survey(1, 20), 1, 0);
    NestedModel unbounded = NestedModel.of(0, new Linear(1, 0));
    refused(Kriging.ordinary(unbounded), data, "a variogram that levels off");
    NestedModel turned =
        new NestedModel(
            0, List.of(new Structure(new Spherical(1, 5), new Anisotropy(Azimuth.NORTH, 0.5))));
    refused(Kriging.ordinary(turned), data, "the same in all directions");
    refused(
        Kriging.ordinary(MODEL).with(Drift.covariates()),
        data.withCovariates(List.of(data.xs())),
        "covariates that are known where the readings were, the drift was Covariates");
    Kriging local = Kriging.ordinary(MODEL).with(Neighbourhood.nearest(8));
    refused(local, data, "position error needs kriging from all 20 observations");
    refused(
        local,
        survey(1, 20).withCommonErrors(List.of(CommonError.of(new boolean[20], 1))),
        "errors in common need kriging from all 20 observations");
  }

  private static void refused(Kriging kriging, Observations data, String why) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> kriging.fit(data))
        .withMessageContaining(why);
  }
}
