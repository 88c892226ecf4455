package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;

/**
 * Surveys drawn with true places, soil, probe and operator: the mean squared error of kriging is
 * its variance, whatever is wrong with the places. The soil is drawn by Cholesky at the true places
 * and the targets of each draw.
 */
class PositionErrorSimulationTest {
  private static final int DRAWS = 6_000;

  /** Relative standard error of a mean of squares is sqrt(2 / draws), 1.8 %; four of them. */
  private static final double TOLERANCE = 0.073;

  private static final int N = 12;
  private static final double MEAN = 20;
  private static final double SHIFT = 1.2;
  private static final double MEASUREMENT = 0.3;
  private static final double OPERATOR = 0.4;
  private static final NestedModel MODEL = NestedModel.of(0.2, new Exponential(4, 4));
  private static final double[] JITTER = {0, 0.8, 1.6};
  private static final double[] TARGET_X = {3, 8, 5};
  private static final double[] TARGET_Y = {3, 5, 9};
  private static final double[] AREA = {0.5, 0.3, 0.2};

  private final double[] error = new double[TARGET_X.length];
  private double areaError;
  private double blindError;
  private Weights blind;
  private final double[] leftOut = new double[N];

  private static Observations survey(Random random) {
    double[] jitter = new double[N];
    double[] variance = new double[N];
    boolean[] operator = new boolean[N];
    for (int i = 0; i < N; i++) {
      jitter[i] = JITTER[i % 3];
      variance[i] = MEASUREMENT;
      operator[i] = i % 2 == 0;
    }
    return Observations.of(
            random.doubles(N, 0, 11).toArray(), random.doubles(N, 0, 11).toArray(), new double[N])
        .withMeasurementVariance(variance)
        .withPositionError(new PositionError(jitter, SHIFT))
        .withCommonErrors(List.of(CommonError.of(operator, OPERATOR)));
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2})
  void theMeanSquaredErrorIsTheVariance(long seed) {
    Random random = new Random(seed);
    Observations plan = survey(random);
    Kriging kriging =
        Kriging.ordinary(MODEL).with(seed == 1 ? Drift.knownMean(MEAN) : Drift.constant());
    Targets targets = Targets.of(TARGET_X, TARGET_Y);
    Weights weights = kriging.fit(plan).weights(targets, 1, Progress.NONE);
    blind =
        kriging
            .fit(plan.withPositionError(new PositionError(new double[N], 0)))
            .weights(targets, 1, Progress.NONE);
    for (int draw = 0; draw < DRAWS; draw++) {
      accumulate(random, plan, weights, kriging, draw);
    }
    String with = "seed " + seed + ", " + kriging.drift();
    double promised = 0;
    for (int j = 0; j < TARGET_X.length; j++) {
      double ratio = error[j] / DRAWS / weights.estimates().variance(j);
      assertThat(ratio).as(with + ", target " + j).isCloseTo(1, within(TOLERANCE));
      promised += blind.estimates().variance(j);
    }
    // kriging that trusts the places promises too much, so that the check above can fail
    assertThat(blindError / DRAWS).as(with).isGreaterThan(1.05 * promised);
    double ofArea = kriging.fit(plan).mean(targets, AREA).variance();
    assertThat(areaError / DRAWS / ofArea).as(with + ", area").isCloseTo(1, within(TOLERANCE));
    Estimates without = kriging.leaveOneOut(plan, 1, Progress.NONE);
    for (int i = 0; i < N; i++) {
      assertThat(leftOut[i] / (DRAWS / 10) / without.variance(i))
          .as(with + ", left out " + i)
          .isCloseTo(1, within(TOLERANCE * Math.sqrt(10)));
    }
  }

  private void accumulate(
      Random random, Observations plan, Weights weights, Kriging kriging, int draw) {
    double shiftX = SHIFT * random.nextGaussian();
    double shiftY = SHIFT * random.nextGaussian();
    int all = N + TARGET_X.length;
    double[] x = new double[all];
    double[] y = new double[all];
    for (int i = 0; i < all; i++) {
      double jitter = i < N ? plan.positionError().jitterSdM(i) : 0;
      x[i] = i < N ? plan.x(i) + shiftX + jitter * random.nextGaussian() : TARGET_X[i - N];
      y[i] = i < N ? plan.y(i) + shiftY + jitter * random.nextGaussian() : TARGET_Y[i - N];
    }
    double[] smooth = field(random, x, y);
    double operator = Math.sqrt(OPERATOR) * random.nextGaussian();
    double[] value = new double[N];
    for (int i = 0; i < N; i++) {
      double own = Math.sqrt(MODEL.nugget() + MEASUREMENT) * random.nextGaussian();
      value[i] = smooth[i] + own + (i % 2 == 0 ? operator : 0);
    }
    double[] estimate = weights.applyTo(value);
    double[] trusting = blind.applyTo(value);
    double mean = 0;
    for (int j = 0; j < estimate.length; j++) {
      double off = estimate[j] - smooth[N + j];
      double micro = Math.sqrt(MODEL.nugget()) * random.nextGaussian();
      error[j] += (off - micro) * (off - micro);
      blindError += Math.pow(trusting[j] - smooth[N + j] - micro, 2);
      mean += AREA[j] * off;
    }
    areaError += mean * mean;
    if (draw % 10 == 0) {
      Estimates without = kriging.leaveOneOut(plan.withValues(value), 1, Progress.NONE);
      for (int i = 0; i < N; i++) {
        leftOut[i] += Math.pow(without.value(i) - value[i], 2);
      }
    }
  }

  private static double[] field(Random random, double[] x, double[] y) {
    int n = x.length;
    double[][] c = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double h = Math.hypot(x[i] - x[j], y[i] - y[j]);
        c[i][j] = 4 * Math.exp(-h / 4) + (i == j ? 1e-9 : 0);
      }
    }
    double[][] lower = new CholeskyDecomposition(new Array2DRowRealMatrix(c)).getL().getData();
    double[] value = new double[n];
    double[] white = new double[n];
    for (int i = 0; i < n; i++) {
      white[i] = random.nextGaussian();
      value[i] = MEAN;
      for (int j = 0; j <= i; j++) {
        value[i] += lower[i][j] * white[j];
      }
    }
    return value;
  }
}
