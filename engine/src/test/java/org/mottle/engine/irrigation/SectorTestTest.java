package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.mottle.engine.likelihood.OthersView;
import org.mottle.engine.survey.WaterHistory;

class SectorTestTest {
  private static final SectorPrior PRIOR = SectorPrior.DEFAULT;

  private static SectorEvidence evidence(double[][] place, double[][] values, List<Head> heads) {
    return new SectorTest(PRIOR, SimulatedSurveys.surveys(place, values, 0, 0, heads))
        .under(List.of(SimulatedSurveys.view(place, values.length)))
        .orElseThrow();
  }

  /** The law, mean and size of the shortfall by quadrature, slope and edge in the covariance. */
  @Test
  void theMarginalLikelihoodIsThatOfQuadrature() {
    Random random = new Random(5);
    double[][] place = SimulatedSurveys.places(7, random);
    double[][] values = SimulatedSurveys.field(place, 1, 3, 0, random);
    List<Head> heads = SimulatedSurveys.heads(0, 0, 0);
    SectorEvidence found = evidence(place, values, heads);
    double[] share = new SectorPattern(heads).shares(heads.get(1), place[0], place[1]);
    double none = 0;
    double with = 0;
    for (double sill : SimulatedSurveys.SILL) {
      RealMatrix v = covariance(place, sill);
      none += overMean(v, values[0], share, 0);
      int steps = 2000;
      double h = 7 * PRIOR.headSdPct() / steps;
      for (int k = 0; k <= steps; k++) {
        double b = -h * k;
        double density =
            2
                * Math.exp(-b * b / (2 * PRIOR.headSdPct() * PRIOR.headSdPct()))
                / (PRIOR.headSdPct() * Math.sqrt(2 * Math.PI));
        double end = k == 0 ? 0.5 : 1;
        with += end * h * density * overMean(v, values[0], share, b);
      }
    }
    assertThat(found.logHead()[1]).isCloseTo(Math.log(with / none), within(1e-5));
  }

  private static RealMatrix covariance(double[][] place, double sill) {
    int n = place[0].length;
    double[][] r = SimulatedSurveys.correlation(place, 1);
    double mx = Arrays.stream(place[0]).average().orElseThrow();
    double my = Arrays.stream(place[1]).average().orElseThrow();
    double plane = PRIOR.planeSdPctM() * PRIOR.planeSdPctM();
    double edge = PRIOR.edgeSdPct() * PRIOR.edgeSdPct();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        double slope =
            (place[0][i] - mx) * (place[0][j] - mx) + (place[1][i] - my) * (place[1][j] - my);
        r[i][j] = sill * r[i][j] + plane * slope + edge * rim(place, i) * rim(place, j);
      }
      r[i][i] += SimulatedSurveys.NUGGET;
    }
    return new Array2DRowRealMatrix(r);
  }

  private static double rim(double[][] place, int i) {
    return Math.max(0, 1 - (12 - Math.hypot(place[0][i], place[1][i])) / 1.5);
  }

  /** The Gaussian density integrated over the mean, by the trapezium rule. */
  private static double overMean(RealMatrix v, double[] y, double[] share, double b) {
    CholeskyDecomposition cholesky = new CholeskyDecomposition(v);
    RealMatrix inverse = cholesky.getSolver().getInverse();
    double sum = 0;
    double h = 0.25;
    double[] e = new double[y.length];
    for (double m = -15; m <= 75; m += h) {
      for (int i = 0; i < e.length; i++) {
        e[i] = y[i] - m - b * share[i];
      }
      double q = 0;
      double[] we = inverse.operate(e);
      for (int i = 0; i < e.length; i++) {
        q += e[i] * we[i];
      }
      sum += h * Math.exp(-0.5 * q);
    }
    return sum / Math.sqrt(cholesky.getDeterminant());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void turningAndMovingEverythingChangesNothing(long seed) {
    Random random = new Random(seed);
    double[][] place = SimulatedSurveys.places(18, random);
    double[][] values = SimulatedSurveys.field(place, 2, 3, 0.5, random);
    SectorEvidence here = evidence(place, values, SimulatedSurveys.heads(0, 0, 0));
    double[][] moved = SimulatedSurveys.turned(place, 73, 500, 900);
    List<Head> heads = SimulatedSurveys.heads(500, 900, 73);
    SectorEvidence there =
        new SectorTest(PRIOR, SimulatedSurveys.surveys(moved, values, 500, 900, heads))
            .under(List.of(SimulatedSurveys.view(moved, 2)))
            .orElseThrow();
    assertThat(there.logHead()).containsExactly(here.logHead(), within(1e-8));
    assertThat(there.logGround()).containsExactly(here.logGround(), within(1e-8));
    assertThat(there.logSpot()).isCloseTo(here.logSpot(), within(1e-8));
    assertThat(there.effectPct()).containsExactly(here.effectPct(), within(1e-8));
  }

  @Test
  void aWetterDayAndAnotherOrderOfHeadsChangeNothing() {
    Random random = new Random(11);
    double[][] place = SimulatedSurveys.places(18, random);
    double[][] values = SimulatedSurveys.field(place, 2, 3, 0.5, random);
    List<Head> heads = SimulatedSurveys.heads(0, 0, 0);
    SectorEvidence here = evidence(place, values, heads);
    double[][] wetter = {Arrays.stream(values[0]).map(v -> v + 6).toArray(), values[1].clone()};
    assertThat(evidence(place, wetter, heads).logHead())
        .containsExactly(here.logHead(), within(1e-8));
    List<Head> reversed = new java.util.ArrayList<>(heads);
    Collections.reverse(reversed);
    double[] other = evidence(place, values, reversed).logHead();
    for (int h = 0; h < 4; h++) {
      assertThat(other[3 - h]).isCloseTo(here.logHead()[h], within(1e-9));
    }
  }

  /** With no survey beside it a head and its ground look the same. */
  @Test
  void oneSurveyCannotTellAHeadFromItsGround() {
    Random random = new Random(12);
    double[][] place = SimulatedSurveys.places(18, random);
    double[][] values = SimulatedSurveys.field(place, 1, 3, 0, random);
    List<Head> heads = SimulatedSurveys.heads(0, 0, 0);
    plant(values[0], new SectorPattern(heads).shares(heads.get(2), place[0], place[1]), -25);
    SectorEvidence e = evidence(place, values, heads);
    assertThat(e.logGround()).containsExactly(e.logHead(), within(1e-9));
    GreenHistory.Causes causes = causes(e);
    assertThat(causes.head()[2] + causes.ground()[2]).isGreaterThan(0.95);
    assertThat(causes.head()[2]).isLessThan(HeadWords.LOOK);
  }

  private static void plant(double[] values, double[] pattern, double size) {
    for (int i = 0; i < values.length; i++) {
      values[i] += size * pattern[i];
    }
  }

  private static GreenHistory.Causes causes(SectorEvidence e) {
    return history(e).in(0);
  }

  private static GreenHistory history(SectorEvidence e) {
    return new GreenHistory(
        PRIOR, List.of(WaterHistory.AFTER_IRRIGATION), List.of(Optional.of(e)), 4);
  }

  /**
   * Greens drawn from the very model: head, ground, spot or none by their prior probabilities. The
   * posterior probabilities then sum to 1, are on average the prior ones, and among greens of a
   * stated probability the share where it holds is that probability.
   */
  @Test
  void probabilitiesBearOut() {
    Random random = new Random(20);
    int greens = 1500;
    double[] stated = new double[10];
    double[] held = new double[10];
    double[] count = new double[10];
    double all = 0;
    int faults = 0;
    List<Head> heads = SimulatedSurveys.heads(0, 0, 0);
    SectorPattern pattern = new SectorPattern(heads);
    double[][] place = SimulatedSurveys.places(20, new Random(4));
    OthersView view = SimulatedSurveys.view(place, 2);
    double[] common = {0.2, 0.5, 0.8};
    for (int g = 0; g < greens; g++) {
      double sill = SimulatedSurveys.SILL[random.nextInt(3)];
      double[][] values = SimulatedSurveys.field(place, 2, sill, common[random.nextInt(3)], random);
      drift(place, values, random);
      int fault = -1;
      double u = random.nextDouble();
      int h = random.nextInt(4);
      double[] share = pattern.shares(heads.get(h), place[0], place[1]);
      double size = -Math.abs(random.nextGaussian()) * PRIOR.headSdPct();
      if (u < 4 * PRIOR.head()) {
        fault = h;
        faults++;
        plant(values[0], share, size);
      } else if (u < 4 * (PRIOR.head() + PRIOR.ground())) {
        plant(values[0], share, size);
        plant(values[1], share, size);
      } else if (u < 4 * (PRIOR.head() + PRIOR.ground()) + PRIOR.spot()) {
        spot(place, values[0], random);
      }
      SectorEvidence e =
          new SectorTest(PRIOR, SimulatedSurveys.surveys(place, values, 0, 0, heads))
              .under(List.of(view))
              .orElseThrow();
      GreenHistory.Causes causes = causes(e);
      double sum = causes.spot() + causes.none();
      for (int k = 0; k < 4; k++) {
        double p = causes.head()[k];
        sum += p + causes.ground()[k];
        int bin = Math.min(9, (int) (10 * p));
        stated[bin] += p;
        held[bin] += k == fault ? 1 : 0;
        count[bin]++;
        all += p;
      }
      assertThat(sum).isCloseTo(1, within(1e-9));
    }
    assertThat(all).isCloseTo(faults, within(3 * Math.sqrt(faults)));
    double high = count[8] + count[9];
    assertThat(high).as("greens with a head named").isGreaterThan(30);
    double mean = (stated[8] + stated[9]) / high;
    assertThat((held[8] + held[9]) / high)
        .isCloseTo(mean, within(3 * Math.sqrt(mean * (1 - mean) / high)));
    double middle = count[3] + count[4] + count[5] + count[6];
    double half = (stated[3] + stated[4] + stated[5] + stated[6]) / middle;
    assertThat((held[3] + held[4] + held[5] + held[6]) / middle)
        .isCloseTo(half, within(3 * Math.sqrt(half * (1 - half) / middle)));
  }

  /** Slope and edge, three quarters of their variance common to both surveys. */
  private static void drift(double[][] place, double[][] values, Random random) {
    double mx = Arrays.stream(place[0]).average().orElseThrow();
    double my = Arrays.stream(place[1]).average().orElseThrow();
    for (int t = 0; t < 3; t++) {
      double sd = t < 2 ? PRIOR.planeSdPctM() : PRIOR.edgeSdPct();
      double always = Math.sqrt(0.75) * sd * random.nextGaussian();
      for (double[] survey : values) {
        double size = always + Math.sqrt(0.25) * sd * random.nextGaussian();
        for (int i = 0; i < survey.length; i++) {
          double term = t == 0 ? place[0][i] - mx : t == 1 ? place[1][i] - my : rim(place, i);
          survey[i] += size * term;
        }
      }
    }
  }

  private static void spot(double[][] place, double[] values, Random random) {
    double size = PRIOR.spotSdPct() * random.nextGaussian();
    double width = new double[] {1.5, 3, 5}[random.nextInt(3)];
    int c = random.nextInt(values.length);
    for (int i = 0; i < values.length; i++) {
      double r = Math.hypot(place[0][i] - place[0][c], place[1][i] - place[1][c]) / width;
      values[i] += size * Math.exp(-0.5 * r * r);
    }
  }

  /** One survey by itself decides as all surveys do when there is no other. */
  @Test
  void surveysSupportOneAnotherAndLetARepairedHeadGo() {
    SectorEvidence dead = evidence(3);
    SectorEvidence sound = evidence(-2);
    List<WaterHistory> irrigated = Collections.nCopies(3, WaterHistory.AFTER_IRRIGATION);
    GreenHistory green =
        new GreenHistory(
            PRIOR, irrigated, List.of(Optional.of(dead), Optional.of(dead), Optional.of(sound)), 1);
    double alone = green.in(0).head()[0];
    assertThat(green.combined(0)[0]).isGreaterThan(alone);
    assertThat(green.combined(2)[0]).isLessThan(0.2);
    GreenHistory first =
        new GreenHistory(PRIOR, irrigated.subList(0, 1), List.of(Optional.of(dead)), 1);
    assertThat(first.combined(0)[0]).isCloseTo(alone, within(0.05));
  }

  private static SectorEvidence evidence(double logHead) {
    double[] one = {logHead};
    return new SectorEvidence(
        one,
        new double[] {logHead - 4},
        0,
        new double[] {-4},
        new double[] {1},
        new double[] {3},
        1);
  }
}
