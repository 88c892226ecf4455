package org.mottle.export.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/** The scores of the study on maps whose scores are known. */
class MetricsTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** A square green of 20 m by 20 m in 400 cells, band 15 to 20. */
  private static GreenCase green(double[] truth) {
    Geometry square = FACTORY.toGeometry(new Envelope(0, 20, 0, 20));
    return new GreenCase(
        new GreenSurvey(Green.of("Q", square), "S1", List.of(), Optional.of(TargetBand.of(15, 20))),
        Cells.of(square, 1),
        truth,
        new Known("q", NestedModel.of(0, new Spherical(3, 12)), 1.5, 0, 0),
        true);
  }

  private static double[] all(double value) {
    double[] values = new double[400];
    Arrays.fill(values, value);
    return values;
  }

  private static List<GreenScore> scored(double[] truth, double[] mean, double sd) {
    return List.of(
        GreenScore.of(MappedGreen.of(green(truth), CellDistribution.normal(mean, all(sd)))));
  }

  @Test
  void normalDistributionAgreesWithCommonsMath() {
    NormalDistribution reference = new NormalDistribution();
    for (double z = -9; z <= 9; z += 0.0371) {
      assertThat(Normal.cdf(z))
          .as("z %s", z)
          .isCloseTo(reference.cumulativeProbability(z), within(2e-10));
    }
  }

  @Test
  void mixtureOfOneTwiceIsThatOne() {
    CellDistribution one = CellDistribution.normal(new double[] {18}, new double[] {1.3});
    CellDistribution twice =
        new CellDistribution(new double[][] {{18}, {18}}, new double[][] {{1.3}, {1.3}});
    assertThat(twice.quantile(0, -Normal.Z90))
        .isCloseTo(one.quantile(0, -Normal.Z90), within(1e-6));
    assertThat(twice.crps(0, 20)).isCloseTo(one.crps(0, 20), within(1e-9));
    assertThat(twice.logScore(0, 20)).isCloseTo(one.logScore(0, 20), within(1e-12));
    assertThat(twice.sd(0)).isCloseTo(1.3, within(1e-12));
  }

  @Test
  void quantilesOfAMixtureHoldTheirShare() {
    CellDistribution two =
        new CellDistribution(new double[][] {{10}, {20}}, new double[][] {{0.5}, {3}});
    for (double z : new double[] {-Normal.Z90, -Normal.Z50, 0, Normal.Z50, Normal.Z90}) {
      assertThat(two.below(0, two.quantile(0, z))).isCloseTo(Normal.cdf(z), within(1e-6));
    }
  }

  /** Gneiting and Raftery 2007, eq. 21: CRPS of N(0, 1) at 0 is (√2 − 1) / √π. */
  @Test
  void crpsOfANormalAtItsMean() {
    CellDistribution normal = CellDistribution.normal(new double[] {0}, new double[] {1});
    assertThat(normal.crps(0, 0)).isCloseTo((Math.sqrt(2) - 1) / Math.sqrt(Math.PI), within(1e-9));
    assertThat(normal.logScore(0, 0)).isCloseTo(0.5 * Math.log(2 * Math.PI), within(1e-12));
  }

  @Test
  void aShiftedMapHasItsShiftAsErrorAndAsBias() {
    List<GreenScore> scores = scored(all(17), all(18), 2);
    assertThat(Metric.RMSE.of(scores)).isCloseTo(1, within(1e-12));
    assertThat(Metric.BIAS.of(scores)).isCloseTo(1, within(1e-12));
    assertThat(Metric.RMSE_OF_MEANS.of(scores)).isCloseTo(1, within(1e-12));
    assertThat(Metric.COVERAGE_50.of(scores)).isEqualTo(1);
    assertThat(Metric.UNDER_75.of(scores)).isZero();
    assertThat(Metric.COVERAGE_90.of(scored(all(17), all(18), 0.5))).isZero();
    assertThat(Metric.UNDER_75.of(scored(all(17), all(18), 0.5))).isEqualTo(1);
  }

  @Test
  void areasAreThoseOfTheCells() {
    double[] truth = all(17);
    Arrays.fill(truth, 0, 100, 14);
    Arrays.fill(truth, 100, 140, 21);
    List<GreenScore> sure = scored(truth, truth, 0.01);
    assertThat(Metric.DRY_RATIO.of(sure)).isCloseTo(1, within(1e-9));
    assertThat(Metric.WET_RATIO.of(sure)).isCloseTo(1, within(1e-9));
    assertThat(Metric.CALLED.of(sure)).isCloseTo(140 / 400.0, within(1e-9));
    assertThat(Metric.PRECISION.of(sure)).isEqualTo(1);
    assertThat(Metric.SOUND_WRONG.of(sure)).isZero();
    List<GreenScore> wrong = scored(all(17), truth, 0.01);
    assertThat(Metric.PRECISION.of(wrong)).isZero();
    assertThat(Metric.SOUND_WRONG.of(wrong)).isCloseTo(140 / 400.0, within(1e-9));
    assertThat(Metric.DRY_ERROR.of(wrong)).isCloseTo(100, within(1e-6));
  }

  /** Half of what is called at 0.9 is so, all that is called at 0.99 is. */
  @Test
  void precisionIsThatOfTheAreaCalled() {
    Histogram p = new Histogram();
    for (int i = 0; i < 100; i++) {
      p.add(0.99, true, 1);
      p.add(0.9, i % 2 == 0, 1);
      p.add(0.05, false, 8);
    }
    assertThat(p.calledM2()).isEqualTo(200);
    assertThat(p.calledSoM2()).isEqualTo(150);
    assertThat(p.callableM2(0.9)).isEqualTo(100);
    assertThat(p.callableM2(0.75)).isEqualTo(200);
    assertThat(p.bin(9).share()).isCloseTo(0.2, within(1e-12));
    assertThat(p.worstGap()).isCloseTo((0.99 + 0.9) / 2 - 0.75, within(1e-12));
  }

  @Test
  void aBinWithHardlyAnyAreaDoesNotMakeTheWorstGap() {
    Histogram p = new Histogram();
    p.add(0.02, false, 999);
    p.add(0.95, false, 1);
    assertThat(p.worstGap()).isCloseTo(0.02, within(1e-12));
  }

  /** Drawn from what is believed: all scores must find the map calibrated. */
  @Test
  void aMapThatIsRightAboutItselfIsFoundCalibrated() {
    RandomGenerator random = new Well19937c(7);
    List<GreenScore> scores =
        DoubleStream.iterate(0, i -> i + 1)
            .limit(300)
            .mapToObj(
                i -> {
                  double[] mean = random(random, 17.5, 3);
                  double[] truth = new double[mean.length];
                  for (int c = 0; c < mean.length; c++) {
                    truth[c] = mean[c] + 1.2 * random.nextGaussian();
                  }
                  return scored(truth, mean, 1.2).get(0);
                })
            .toList();
    assertThat(Metric.RMSE.of(scores)).as("seed 7").isCloseTo(1.2, within(0.01));
    assertThat(Metric.COVERAGE_50.of(scores)).as("seed 7").isCloseTo(0.5, within(0.005));
    assertThat(Metric.COVERAGE_90.of(scores)).as("seed 7").isCloseTo(0.9, within(0.005));
    assertThat(Metric.GAP_DRY.of(scores)).as("seed 7").isLessThan(0.02);
    assertThat(Metric.GAP_WET.of(scores)).as("seed 7").isLessThan(0.02);
    assertThat(Metric.DRY_RATIO.of(scores)).as("seed 7").isCloseTo(1, within(0.01));
  }

  private static double[] random(RandomGenerator random, double mean, double sd) {
    return DoubleStream.generate(() -> mean + sd * random.nextGaussian()).limit(400).toArray();
  }

  @Test
  void areaIntervalsAreCountedWhereThereAreAny() {
    GreenCase green = green(all(17));
    MappedGreen map = MappedGreen.of(green, CellDistribution.normal(all(17), all(1)));
    assertThat(Metric.AREA_COVERAGE.of(List.of(GreenScore.of(map)))).isNaN();
    MappedGreen with =
        map.with(
            new AreaClaim(2, Optional.of(new Span(0, 9))),
            new AreaClaim(2, Optional.of(new Span(1, 9))),
            List.of(new PatchClaim(true, green.subject().green().outline(), 0.25)));
    List<GreenScore> scores = List.of(GreenScore.of(with));
    assertThat(Metric.AREA_COVERAGE.of(scores)).isEqualTo(0.5);
    assertThat(Metric.PATCH_SAID.of(scores)).isEqualTo(0.25);
    assertThat(Metric.PATCH_THERE.of(scores)).isZero();
  }

  @Test
  void closedIsCountedTowardsTheBetterSideOnly() {
    assertThat(new Closed(Metric.RMSE, 1.625, 1.578).share(1.59)).isCloseTo(0.745, within(1e-3));
    assertThat(new Closed(Metric.RMSE, 1.625, 1.578).isOpen()).isTrue();
    assertThat(new Closed(Metric.RMSE, 1.5, 1.6).isOpen()).isFalse();
    assertThat(new Closed(Metric.CALLABLE_90, 0.033, 0.048).isOpen()).isTrue();
  }

  @Test
  void seedsAreReadFromWords() {
    assertThat(Seeds.parse("reporting", "101-140").all()).hasSize(40).startsWith(101L);
    assertThatThrownBy(() -> Seeds.parse("reporting", "9-3"))
        .hasMessageContaining("9-3")
        .hasMessageContaining("reporting");
  }
}
