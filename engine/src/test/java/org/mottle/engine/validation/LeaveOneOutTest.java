package org.mottle.engine.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.inversedistance.InverseDistance;
import org.mottle.engine.kriging.CellStatus;
import org.mottle.engine.kriging.Drift;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.kriging.ValidationTable;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/**
 * Leave-one-out of the Meuse topsoil data against meuse_cv_loo.csv and meuse_cv_stats.csv (gstat
 * 2.1.0, R 4.2.2), the closed form against dubrule_meuse40.csv (Dubrule 1983) and against leaving
 * each one out in earnest.
 */
class LeaveOneOutTest {
  private static final ValidationTable POINTS = ValidationTable.read("meuse_points.csv");
  private static final Kriging ORDINARY =
      Kriging.ordinary(NestedModel.of(0.05066243, new Spherical(0.5906078, 897)));
  private static final Kriging UNIVERSAL =
      Kriging.ordinary(NestedModel.of(0.06, new Exponential(0.15, 340))).with(Drift.covariates());

  private static Observations meuse() {
    return Observations.of(POINTS.column("x"), POINTS.column("y"), POINTS.column("logzinc"))
        .withCovariates(List.of(POINTS.column("sqrtdist")));
  }

  private static Predictions leaveOneOut(Kriging kriging) {
    return LeaveOneOut.of(kriging, meuse(), 1, Progress.NONE);
  }

  @Test
  void everyPredictionAgainstGstat() {
    ValidationTable expected = ValidationTable.read("meuse_cv_loo.csv");
    Predictions ordinary = leaveOneOut(ORDINARY);
    Predictions universal = leaveOneOut(UNIVERSAL);
    assertThat(ordinary.size()).isEqualTo(155);
    for (int i = 0; i < 155; i++) {
      String at = "observation " + (i + 1);
      assertThat(ordinary.predicted(i)).as(at).isCloseTo(expected.number("pred", i), within(1e-8));
      assertThat(ordinary.variance(i)).as(at).isCloseTo(expected.number("var", i), within(1e-9));
      assertThat(ordinary.residual(i)).as(at).isCloseTo(expected.number("resid", i), within(1e-8));
      assertThat(ordinary.z(i)).as(at).isCloseTo(expected.number("z", i), within(1e-8));
      assertThat(universal.predicted(i))
          .as(at)
          .isCloseTo(expected.number("uk_pred", i), within(1e-8));
      assertThat(universal.variance(i))
          .as(at)
          .isCloseTo(expected.number("uk_var", i), within(1e-9));
    }
  }

  @Test
  void scoresAgainstGstat() {
    ValidationTable expected = ValidationTable.read("meuse_cv_stats.csv");
    Predictions[] cases = {
      leaveOneOut(ORDINARY),
      leaveOneOut(ORDINARY.with(Neighbourhood.nearest(20))),
      leaveOneOut(UNIVERSAL),
      LeaveOneOut.of(InverseDistance.ofPower(1), meuse(), 1, Progress.NONE),
      LeaveOneOut.of(InverseDistance.ofPower(2), meuse(), 1, Progress.NONE),
      LeaveOneOut.of(InverseDistance.ofPower(3), meuse(), 1, Progress.NONE)
    };
    assertThat(expected.column("n")).containsExactly(155, 155, 155, 155, 155, 155);
    for (int c = 0; c < cases.length; c++) {
      Scores scores = cases[c].scores(0.9);
      String name = expected.text("case", c);
      assertThat(scores.predictions()).isEqualTo(155);
      assertThat(scores.missing()).isZero();
      close(name, scores.meanError(), expected.number("ME", c), 1e-9);
      close(name, scores.rootMeanSquareError(), expected.number("RMSE", c), 1e-8);
      close(name, scores.meanAbsoluteError(), expected.number("MAE", c), 1e-8);
      close(name, scores.meanSquaredDeviationRatio(), expected.number("MSDR", c), 1e-8);
      close(name, scores.medianSquaredZ(), expected.number("medSDR", c), 1e-8);
    }
  }

  private static void close(String name, double actual, double expected, double tolerance) {
    if (Double.isNaN(expected)) {
      assertThat(actual).as(name).isNaN();
    } else {
      assertThat(actual).as(name).isCloseTo(expected, within(tolerance));
    }
  }

  @Test
  void closedFormOfDubrule() {
    ValidationTable expected = ValidationTable.read("dubrule_meuse40.csv");
    Observations first =
        Observations.of(expected.column("x"), expected.column("y"), expected.column("z"));
    Kriging kriging = Kriging.ordinary(NestedModel.of(0.05, new Spherical(0.59, 897)));
    Predictions predictions = LeaveOneOut.of(kriging, first, 1, Progress.NONE);
    assertThat(predictions.size()).isEqualTo(40);
    for (int i = 0; i < 40; i++) {
      assertThat(predictions.residual(i)).isCloseTo(expected.number("loo_resid", i), within(1e-11));
      assertThat(predictions.variance(i)).isCloseTo(expected.number("loo_var", i), within(1e-12));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3})
  void closedFormIsLeavingOutInEarnest(long seed) {
    Random random = new Random(seed);
    int n = 60;
    double[] x = random.doubles(n, 0, 30).toArray();
    double[] y = random.doubles(n, 0, 30).toArray();
    Observations all =
        Observations.of(x, y, random.doubles(n, 10, 30).toArray())
            .withMeasurementVariance(random.doubles(n, 0, 1).toArray())
            .withCovariates(List.of(random.doubles(n).toArray()));
    NestedModel model = NestedModel.of(1, new Exponential(8, 5));
    for (Drift drift :
        List.of(
            Drift.knownMean(20),
            Drift.constant(),
            Drift.coordinates(),
            Drift.coordinatesAndCovariates())) {
      Kriging kriging = Kriging.ordinary(model).with(drift);
      Predictions predictions = LeaveOneOut.of(kriging, all, 1, Progress.NONE);
      for (int i = 0; i < n; i += 7) {
        int left = i;
        int[] others = IntStream.range(0, n).filter(k -> k != left).toArray();
        Estimate earnest = kriging.fit(all.rows(others)).at(x[i], y[i], covariates(drift, all, i));
        String at = "seed " + seed + ", " + drift + ", observation " + i;
        assertThat(predictions.predicted(i)).as(at).isCloseTo(earnest.value(), within(1e-9));
        assertThat(predictions.variance(i))
            .as(at)
            .isCloseTo(earnest.variance() + all.measurementVariance(i), within(1e-9));
      }
    }
  }

  private static double[] covariates(Drift drift, Observations all, int i) {
    return drift instanceof Drift.CoordinatesAndCovariates
        ? new double[] {all.covariate(0, i)}
        : new double[0];
  }

  @Test
  void aNeighbourhoodOfAllTheOthersIsTheClosedForm() {
    Predictions closed = leaveOneOut(ORDINARY);
    Predictions resolved = leaveOneOut(ORDINARY.with(Neighbourhood.nearest(154)));
    for (int i = 0; i < 155; i++) {
      assertThat(resolved.predicted(i)).isCloseTo(closed.predicted(i), within(1e-10));
      assertThat(resolved.variance(i)).isCloseTo(closed.variance(i), within(1e-10));
    }
  }

  @Test
  void theLastObservationOfItsKindCannotBeLeftOut() {
    // the covariate differs at one observation only: without it the drift cannot be estimated
    double[] flag = new double[20];
    flag[7] = 1;
    Random random = new Random(5);
    Observations some =
        Observations.of(
                random.doubles(20, 0, 9).toArray(),
                random.doubles(20, 0, 9).toArray(),
                random.doubles(20).toArray())
            .withCovariates(List.of(flag));
    Kriging kriging =
        Kriging.ordinary(NestedModel.of(0.1, new Exponential(1, 3))).with(Drift.covariates());
    Predictions predictions = LeaveOneOut.of(kriging, some, 1, Progress.NONE);
    assertThat(predictions.estimates().status(7)).isEqualTo(CellStatus.ILL_CONDITIONED);
    assertThat(predictions.predicted(7)).isNaN();
    assertThat(predictions.estimates().count(CellStatus.ESTIMATED)).isEqualTo(19);
    assertThat(predictions.scores(0.9).missing()).isEqualTo(1);
  }

  @Test
  void coverageOfTheCentralInterval() {
    Scores wide = leaveOneOut(ORDINARY).scores(1);
    Scores half = leaveOneOut(ORDINARY).scores(0.5);
    assertThat(wide.coverage()).isEqualTo(1);
    double[] z = IntStream.range(0, 155).mapToDouble(leaveOneOut(ORDINARY)::z).toArray();
    // 0.6744897501960817 is the 75 % point of the normal distribution (Abramowitz & Stegun 26.2)
    long inside = Arrays.stream(z).filter(v -> Math.abs(v) <= 0.6744897501960817).count();
    assertThat(half.coverage()).isEqualTo(inside / 155.0);
  }
}
