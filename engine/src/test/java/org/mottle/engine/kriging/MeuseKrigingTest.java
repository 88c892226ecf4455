package org.mottle.engine.kriging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.neighbour.Neighbourhood;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Anisotropy;
import org.mottle.engine.variogram.Azimuth;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;
import org.mottle.engine.variogram.Structure;

/**
 * Every kriging column of meuse_predictions.csv: log zinc of the Meuse topsoil data (Burrough &
 * McDonnell 1998; R package sp), computed with gstat 2.1.0, R 4.2.2
 * (validation/README-kriging.txt).
 */
class MeuseKrigingTest {
  private static final ValidationTable POINTS = ValidationTable.read("meuse_points.csv");
  private static final ValidationTable TARGETS = ValidationTable.read("meuse_targets.csv");
  private static final ValidationTable EXPECTED = ValidationTable.read("meuse_predictions.csv");
  private static final NestedModel MODEL =
      NestedModel.of(0.05066243, new Spherical(0.5906078, 897));
  private static final NestedModel NO_NUGGET = NestedModel.of(0, new Spherical(0.5906078, 897));
  private static final NestedModel TREND_MODEL = NestedModel.of(0.06, new Exponential(0.15, 340));
  private static final Kriging ORDINARY = Kriging.ordinary(MODEL);

  static Observations logZinc() {
    return Observations.of(POINTS.column("x"), POINTS.column("y"), POINTS.column("logzinc"));
  }

  static Targets targets() {
    return Targets.of(TARGETS.column("x"), TARGETS.column("y"));
  }

  private static void check(
      String name, Kriging kriging, Observations observations, double tolerance) {
    check(name, kriging, observations, targets(), tolerance);
  }

  private static void check(
      String name, Kriging kriging, Observations observations, Targets targets, double tolerance) {
    Estimates estimates = kriging.fit(observations).estimate(targets, 1, Progress.NONE);
    assertThat(EXPECTED.size()).isEqualTo(20);
    for (int i = 0; i < EXPECTED.size(); i++) {
      double value = EXPECTED.number(name + "_pred", i);
      double variance = EXPECTED.number(name + "_var", i);
      String at = name + " at cell " + EXPECTED.text("cell", i);
      if (Double.isNaN(value)) {
        assertThat(estimates.status(i)).as(at).isEqualTo(CellStatus.TOO_FEW_NEIGHBOURS);
        assertThat(estimates.value(i)).as(at).isNaN();
        continue;
      }
      assertThat(estimates.status(i)).as(at).isEqualTo(CellStatus.ESTIMATED);
      assertThat(estimates.value(i))
          .as(at)
          .isCloseTo(value, within(tolerance * Math.max(1, Math.abs(value))));
      assertThat(estimates.variance(i)).as(at + " variance").isCloseTo(variance, within(tolerance));
      assertThat(estimates.variance(i)).as(at + " variance").isGreaterThanOrEqualTo(0);
    }
  }

  @Test
  void ordinaryWithAll() {
    check("ok", ORDINARY, logZinc(), 1e-8);
  }

  @Test
  void ordinaryWithNearest20() {
    check("ok20", ORDINARY.with(Neighbourhood.nearest(20)), logZinc(), 1e-8);
  }

  @Test
  void ordinaryWithNearest12Within400() {
    check("ok12_400", ORDINARY.with(new Neighbourhood(12, 400)), logZinc(), 1e-8);
  }

  @Test
  void simpleWithTheSampleMean() {
    double mean = Arrays.stream(POINTS.column("logzinc")).sum() / POINTS.size();
    check("sk", ORDINARY.with(Drift.knownMean(mean)), logZinc(), 1e-8);
  }

  @Test
  void blocks() {
    check("bk40", ORDINARY.with(BlockSupport.square(40)), logZinc(), 1e-6);
    check("bk200", ORDINARY.with(BlockSupport.square(200)), logZinc(), 1e-6);
    check("bk40_nonug", Kriging.ordinary(NO_NUGGET).with(BlockSupport.square(40)), logZinc(), 1e-6);
  }

  @Test
  void nuggetAsMeasurementError() {
    check("err", Kriging.ordinary(NO_NUGGET), measured(0.05066243), 1e-8);
    NestedModel mixed = NO_NUGGET.withNugget(0.02066243);
    check("errmix", Kriging.ordinary(mixed), measured(0.03), 1e-8);
  }

  private static Observations measured(double variance) {
    double[] variances = new double[POINTS.size()];
    Arrays.fill(variances, variance);
    return logZinc().withMeasurementVariance(variances);
  }

  @Test
  void driftOnTheRootOfTheDistanceToTheRiver() {
    check(
        "uk_sqrtdist",
        Kriging.ordinary(TREND_MODEL).with(Drift.covariates()),
        logZinc().withCovariates(List.of(POINTS.column("sqrtdist"))),
        targets().withCovariates(List.of(TARGETS.column("sqrtdist"))),
        1e-8);
  }

  @Test
  void driftOnCoordinates() {
    check("uk_xy", Kriging.ordinary(TREND_MODEL).with(Drift.coordinates()), logZinc(), 1e-8);
  }

  @Test
  void indicator() {
    double[] above = Arrays.stream(POINTS.column("zinc")).map(z -> z > 500 ? 1 : 0).toArray();
    NestedModel model = NestedModel.of(0.03, new Spherical(0.18, 900));
    check("ik500", Kriging.ordinary(model), logZinc().withValues(above), 1e-8);
  }

  @Test
  void anisotropic() {
    Structure structure =
        new Structure(new Spherical(0.5906078, 897), new Anisotropy(new Azimuth(30), 0.5));
    NestedModel model = new NestedModel(0.05066243, List.of(structure));
    check("ok_anis30_.5", Kriging.ordinary(model), logZinc(), 1e-8);
  }

  @Test
  void trendCoefficientsByGeneralisedLeastSquares() {
    ValidationTable expected = ValidationTable.read("meuse_trend_coefs.csv");
    List<TrendCoefficient> trend =
        Kriging.ordinary(TREND_MODEL)
            .with(Drift.covariates())
            .fit(logZinc().withCovariates(List.of(POINTS.column("sqrtdist"))))
            .trendCoefficients();
    assertThat(trend).extracting(TrendCoefficient::term).containsExactly("1", "covariate 1");
    for (int t = 0; t < 2; t++) {
      assertThat(trend.get(t).value()).isCloseTo(expected.number("gls", t), within(1e-10));
      assertThat(trend.get(t).standardError())
          .isCloseTo(expected.number("gls_se", t), within(1e-10));
    }
  }
}
