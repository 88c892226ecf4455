package org.mottle.engine.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.util.GeometricShapeFactory;
import org.mottle.engine.grid.GreenCells;
import org.mottle.engine.kriging.Estimate;
import org.mottle.engine.kriging.Kriging;
import org.mottle.engine.observation.CommonError;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.variogram.Exponential;
import org.mottle.engine.variogram.NestedModel;
import org.mottle.engine.variogram.Spherical;

/** Laws of the change between two surveys. */
class JointPairTest {
  private static final double NUGGET = 1.4;

  private static SeenSurvey survey(long seed, int n, double jitterM, double shiftM, double level) {
    Random random = new Random(seed);
    double[] x = random.doubles(n, 0, 24).toArray();
    double[] y = random.doubles(n, 0, 18).toArray();
    double[] z = new double[n];
    Arrays.setAll(
        z, i -> level + 2 * Math.sin(x[i] / 5) + Math.sqrt(NUGGET) * random.nextGaussian());
    double[] jitter = new double[n];
    Arrays.fill(jitter, jitterM);
    int[] insertions = random.ints(n, 1, 4).toArray();
    return new SeenSurvey(
        Observations.of(x, y, z).withPositionError(new PositionError(jitter, shiftM)), insertions);
  }

  private static SeenSurvey with(SeenSurvey survey, Observations observations) {
    return new SeenSurvey(observations, survey.insertions());
  }

  private static SeenSurvey raised(SeenSurvey survey, double by) {
    double[] z = survey.observations().values();
    Arrays.setAll(z, i -> z[i] + by);
    return with(survey, survey.observations().withValues(z));
  }

  private static List<JointModel> models(double share, double... sill) {
    return List.of(
        new JointModel(new Spherical(1, 12), NUGGET, sill, share),
        new JointModel(new Exponential(1, 5), 0.8 * NUGGET, sill, share));
  }

  private static JointPair pair(SeenSurvey before, SeenSurvey after, List<JointModel> models) {
    return JointPair.of(before, after, models).value().orElseThrow();
  }

  private static final SeenSurvey BEFORE = survey(1, 26, 0.8, 0.6, 24);
  private static final SeenSurvey AFTER = survey(2, 22, 1.4, 0.3, 19);
  private static final double[] X = new Random(7).doubles(300, -2, 26).toArray();
  private static final double[] Y = new Random(8).doubles(300, -2, 20).toArray();

  private static GreenCells cells() {
    GeometricShapeFactory shape = new GeometricShapeFactory();
    shape.setEnvelope(new org.locationtech.jts.geom.Envelope(0, 24, 0, 18));
    return GreenCells.of(shape.createEllipse(), 0.5);
  }

  private static Geometry box(double x0, double x1, double y0, double y1) {
    return new GeometryFactory().toGeometry(new org.locationtech.jts.geom.Envelope(x0, x1, y0, y1));
  }

  @Test
  void backwardsInTimeTheChangeHasTheOtherSign() {
    Drawn there = pair(BEFORE, AFTER, models(0.6, 3, 2)).at(X, Y, 1, Progress.NONE);
    Drawn back = pair(AFTER, BEFORE, models(0.6, 2, 3)).at(X, Y, 1, Progress.NONE);
    for (int i = 0; i < X.length; i++) {
      assertThat(back.mean()[i]).isCloseTo(-there.mean()[i], within(1e-9));
      assertThat(back.sd()[i]).isCloseTo(there.sd()[i], within(1e-9));
      assertThat(back.above(2)[i]).isCloseTo(there.below(-2)[i], within(1e-9));
    }
  }

  @ParameterizedTest(name = "errors of position {0}")
  @ValueSource(booleans = {false, true})
  void withNothingInCommonVariancesOfTwoKrigedMapsAddUp(boolean placed) {
    SeenSurvey before = placed ? BEFORE : survey(1, 26, 0, 0, 24);
    // to the centimetre the blurred models are those of kriging itself
    double jitter = Math.sqrt(0.5 * 0.64);
    SeenSurvey after = placed ? survey(2, 22, jitter, 0.3, 19) : survey(2, 22, 0, 0, 19);
    JointModel model = new JointModel(new Spherical(1, 12), NUGGET, new double[] {3, 2}, 0);
    Drawn change = pair(before, after, List.of(model)).at(X, Y, 1, Progress.NONE);
    for (int i = 0; i < X.length; i += 17) {
      Estimate a = kriged(before, 3, X[i], Y[i]);
      Estimate b = kriged(after, 2, X[i], Y[i]);
      double tolerance = placed ? 0.02 : 1e-9;
      assertThat(change.mean()[i]).isCloseTo(b.value() - a.value(), within(tolerance));
      assertThat(change.sd()[i])
          .isCloseTo(Math.sqrt(a.variance() + b.variance()), within(tolerance));
    }
  }

  private static Estimate kriged(SeenSurvey survey, double sill, double x, double y) {
    double[] variance = Arrays.stream(survey.insertions()).mapToDouble(k -> NUGGET / k).toArray();
    return Kriging.ordinary(NestedModel.of(0, new Spherical(sill, 12)))
        .fit(survey.observations().withMeasurementVariance(variance))
        .mean(new double[] {x}, new double[] {y}, new double[] {1});
  }

  /** The same ground read twice without error of place: only the probe's error is left. */
  @Test
  void whereAllPersistsTheChangeIsAsSureAsTheReadings() {
    SeenSurvey one = survey(1, 40, 0, 0, 24);
    SeenSurvey same = with(one, one.observations());
    JointModel model = new JointModel(new Spherical(1, 12), NUGGET, new double[] {3, 3}, 1);
    Drawn change = pair(one, same, List.of(model)).at(X, Y, 1, Progress.NONE);
    double weight = Arrays.stream(one.insertions()).sum();
    // of a constant: 2 c0 / sum of insertions, whatever the place
    double errorsOnly = Math.sqrt(2 * NUGGET / weight);
    for (int i = 0; i < X.length; i++) {
      assertThat(change.mean()[i]).isCloseTo(0, within(1e-9));
      assertThat(change.sd()[i]).isCloseTo(errorsOnly, within(1e-6));
    }
  }

  @Test
  void theMoreThatPersistsTheSurerTheChange() {
    double last = Double.POSITIVE_INFINITY;
    for (double share : new double[] {0, 0.3, 0.6, 0.9}) {
      double sd = pair(BEFORE, AFTER, models(share, 3, 3)).at(12, 9).sd();
      assertThat(sd).isLessThan(last);
      last = sd;
    }
  }

  @Test
  void aConstantAddedToOneSurveyShiftsTheChangeAlone() {
    Drawn plain = pair(BEFORE, AFTER, models(0.6, 3, 2)).at(X, Y, 1, Progress.NONE);
    Drawn wetter = pair(BEFORE, raised(AFTER, 3.5), models(0.6, 3, 2)).at(X, Y, 1, Progress.NONE);
    for (int i = 0; i < X.length; i++) {
      assertThat(wetter.mean()[i] - plain.mean()[i]).isCloseTo(3.5, within(1e-9));
      assertThat(wetter.sd()[i]).isCloseTo(plain.sd()[i], within(1e-9));
    }
  }

  @Test
  void turnedGroundChangesAlike() {
    double angle = Math.toRadians(37);
    JointPair plain = pair(BEFORE, AFTER, models(0.6, 3, 2));
    JointPair turned = pair(turned(BEFORE, angle), turned(AFTER, angle), models(0.6, 3, 2));
    for (int i = 0; i < X.length; i += 13) {
      double x = Math.cos(angle) * X[i] - Math.sin(angle) * Y[i] + 1000;
      double y = Math.sin(angle) * X[i] + Math.cos(angle) * Y[i] - 500;
      assertThat(turned.at(x, y).mean()).isCloseTo(plain.at(X[i], Y[i]).mean(), within(1e-7));
      assertThat(turned.at(x, y).sd()).isCloseTo(plain.at(X[i], Y[i]).sd(), within(1e-7));
    }
  }

  private static SeenSurvey turned(SeenSurvey survey, double angle) {
    Observations o = survey.observations();
    double[] x = new double[o.size()];
    double[] y = new double[o.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = Math.cos(angle) * o.x(i) - Math.sin(angle) * o.y(i) + 1000;
      y[i] = Math.sin(angle) * o.x(i) + Math.cos(angle) * o.y(i) - 500;
    }
    return with(survey, Observations.of(x, y, o.values()).withPositionError(o.positionError()));
  }

  @Test
  void oneThreadOrManyTheSameBytes() {
    JointPair pair = pair(BEFORE, AFTER, models(0.6, 3, 2));
    double[] x = new Random(3).doubles(1500, 0, 24).toArray();
    double[] y = new Random(4).doubles(1500, 0, 18).toArray();
    Drawn one = pair.at(x, y, 1, Progress.NONE);
    Drawn four = pair.at(x, y, 4, Progress.NONE);
    assertThat(four.mean()).isEqualTo(one.mean());
    assertThat(four.sd()).isEqualTo(one.sd());
    assertThat(four.above(2)).isEqualTo(one.above(2));
  }

  /**
   * An operator's offset is an error of the change everywhere, and none of a difference of areas.
   */
  @Test
  void whatAVisitHasWrongInCommonIsInTheChangeAndDropsOutAgainstAControlArea() {
    boolean[] all = new boolean[AFTER.size()];
    Arrays.fill(all, true);
    double variance = 1.7;
    SeenSurvey off =
        with(AFTER, AFTER.observations().withCommonErrors(List.of(CommonError.of(all, variance))));
    JointPair sound = pair(BEFORE, AFTER, models(0.6, 3, 2));
    JointPair doubted = pair(BEFORE, off, models(0.6, 3, 2));
    WeighedGround west = WeighedGround.of(cells(), box(4, 10, 6, 12));
    WeighedGround east = WeighedGround.of(cells(), box(14, 20, 6, 12));
    assertThat(variance(doubted, west)).isCloseTo(variance(sound, west) + variance, within(1e-9));
    WeighedGround against = west.less(east);
    assertThat(variance(doubted, against)).isCloseTo(variance(sound, against), within(1e-9));
    assertThat(doubted.over(against).mean())
        .isCloseTo(doubted.over(west).mean() - doubted.over(east).mean(), within(1e-9));
  }

  private static double variance(JointPair pair, WeighedGround ground) {
    double sd = pair.over(ground).sd();
    return sd * sd;
  }

  @Test
  void theMeanOverAnAreaIsTheMeanOfItsCells() {
    JointPair pair = pair(BEFORE, AFTER, models(0.6, 3, 2));
    GreenCells cells = cells();
    Geometry area = box(6, 18, 4, 14);
    var ground = org.mottle.engine.grid.CoveredGround.of(cells, area);
    double[] mean = pair.at(cells.neededX(), cells.neededY(), 1, Progress.NONE).mean();
    double sum = 0;
    for (int i = 0; i < ground.size(); i++) {
      sum += ground.areaM2(i) * mean[ground.place(i)] / ground.areaM2();
    }
    ChangeFigure whole = pair.over(WeighedGround.of(cells, area));
    assertThat(whole.mean()).isCloseTo(sum, within(0.02));
    double[] px = new double[ground.size()];
    double[] py = new double[px.length];
    double[] w = new double[px.length];
    for (int i = 0; i < px.length; i++) {
      px[i] = cells.neededX()[ground.place(i)];
      py[i] = cells.neededY()[ground.place(i)];
      w[i] = ground.areaM2(i) / ground.areaM2();
    }
    assertThat(whole.sd()).isCloseTo(pair.over(new WeighedGround(px, py, w)).sd(), within(0.01));
  }

  @Test
  void probabilitiesAndIntervalAreThoseOfTheMixture() {
    ChangeFigure figure =
        new ChangeFigure(new Drawn(new double[][] {{0}, {0}}, new double[][] {{1}, {1}}));
    assertThat(figure.above(2)).isCloseTo(0.0227501, within(1e-6));
    assertThat(figure.interval().high()).isCloseTo(1.6448536, within(1e-6));
    ChangeFigure two =
        new ChangeFigure(new Drawn(new double[][] {{-1}, {3}}, new double[][] {{1}, {2}}));
    assertThat(two.mean()).isEqualTo(1);
    assertThat(two.sd()).isCloseTo(Math.sqrt(2.5 + 4), within(1e-12));
    assertThat(two.below(two.interval().low())).isCloseTo(0.05, within(1e-9));
  }

  @Test
  void stationsAtOnePlaceWithoutANuggetAreRefused() {
    SeenSurvey one = survey(1, 12, 0, 0, 24);
    JointModel exact = new JointModel(new Spherical(1, 12), 0, new double[] {3, 3}, 1);
    assertThat(JointPair.of(one, one, List.of(exact)).refusal().orElseThrow().reason())
        .contains("nugget");
  }
}
