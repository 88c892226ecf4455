package org.mottle.engine.irrigation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.simulation.NormalStream;

/** Published uniformities, and the laws they follow. */
class UniformityTest {
  /** Merriam and Keller 1978, pp. 41-43: 16 cans of a solid-set test, inches. */
  private static final double[] SOLID_SET = {
    .57, .69, .83, .65, .61, .38, .27, .64, .51, .26, .36, .52, .79, .65, .61, .86
  };

  /** 15 cans, ml, of the manual of a registered R package, which prints DU 49.62039. */
  private static final double[] FIFTEEN = {
    47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12
  };

  private static Uniformity of(double[] catches) {
    return Uniformity.of(catches, LowQuarter.UP);
  }

  @Test
  void theSolidSetTestAsPublished() {
    Uniformity u = of(SOLID_SET);
    // published in whole per cents: CU 75, DU 55, DU of the low half 76; mean 0.575
    assertThat(Math.round(u.cuPct())).isEqualTo(75);
    assertThat(Math.round(100 * u.duLowQuarter())).isEqualTo(55);
    assertThat(Math.round(100 * u.duLowHalf())).isEqualTo(76);
    assertThat(u.mean()).isCloseTo(0.575, within(1e-12));
    // the same by arithmetic, more digits
    assertThat(u.cuPct()).isCloseTo(74.89130434782608, within(1e-9));
    assertThat(100 * u.duLowQuarter()).isCloseTo(55.21739130434783, within(1e-9));
    assertThat(100 * u.duLowHalf()).isCloseTo(75.65217391304348, within(1e-9));
    assertThat(u.cvPct()).isCloseTo(31.986134362100902, within(1e-9));
  }

  @Test
  void fifteenCansByEachRule() {
    assertThat(100 * of(FIFTEEN).duLowQuarter()).isCloseTo(49.62039, within(5e-6)); // printed
    assertThat(100 * of(FIFTEEN).duLowHalf()).isCloseTo(71.58351409978307, within(1e-9));
    assertThat(of(FIFTEEN).cuPct()).isCloseTo(69.13955169920463, within(1e-9));
    assertThat(of(FIFTEEN).cvPct()).isCloseTo(38.62624768676492, within(1e-9));
    // floor of 3 cans and 3.75 cans, by arithmetic
    assertThat(100 * Uniformity.of(FIFTEEN, LowQuarter.DOWN).duLowQuarter())
        .isCloseTo(40.13015184381779, within(1e-9));
    assertThat(100 * Uniformity.of(FIFTEEN, LowQuarter.FRACTION).duLowQuarter())
        .isCloseTo(47.72234273318871, within(1e-9));
    assertThat(100 * Uniformity.of(FIFTEEN, LowQuarter.FRACTION).duLowHalf())
        .isCloseTo(69.41431670281995, within(1e-9));
  }

  @Test
  void theRulesAgreeWhereTheCountDivides() {
    for (LowQuarter rule : LowQuarter.values()) {
      assertThat(Uniformity.of(SOLID_SET, rule)).isEqualTo(of(SOLID_SET));
    }
  }

  @Test
  void equalCansAreEven() {
    double[] equal = new double[13];
    Arrays.fill(equal, 3.3);
    Uniformity u = of(equal);
    assertThat(u.duLowQuarter()).isCloseTo(1, within(1e-15));
    assertThat(u.duLowHalf()).isCloseTo(1, within(1e-15));
    assertThat(u.cuPct()).isCloseTo(100, within(1e-12));
    assertThat(u.cvPct()).isCloseTo(0, within(1e-12));
  }

  @Test
  void lawsOfAnyCatches() {
    NormalStream random = new NormalStream(5, 1);
    for (int trial = 0; trial < 300; trial++) {
      double[] x = new double[3 + trial % 40];
      for (int i = 0; i < x.length; i++) {
        x[i] = Math.exp(0.7 * random.next());
      }
      for (LowQuarter rule : LowQuarter.values()) {
        Uniformity u = Uniformity.of(x, rule);
        String what = "trial " + trial + ", " + rule;
        assertThat(u.duLowQuarter()).as(what).isPositive().isLessThanOrEqualTo(u.duLowHalf());
        assertThat(u.duLowHalf()).as(what).isLessThanOrEqualTo(1);
        assertThat(u.cuPct()).as(what).isLessThan(100);
        Uniformity scaled = Uniformity.of(Arrays.stream(x).map(v -> 10 / 95.0 * v).toArray(), rule);
        assertThat(scaled.duLowQuarter()).as(what).isCloseTo(u.duLowQuarter(), within(1e-12));
        assertThat(scaled.cuPct()).as(what).isCloseTo(u.cuPct(), within(1e-10));
        double[] turned = new double[x.length];
        for (int i = 0; i < x.length; i++) {
          turned[i] = x[(i + 1 + trial) % x.length];
        }
        assertThat(Uniformity.of(turned, rule)).as(what).isEqualTo(u);
      }
    }
  }

  @Test
  void emptyCatchesAreRefused() {
    assertThatThrownBy(() -> of(new double[] {0, 0})).hasMessageContaining("not all 0");
    assertThatThrownBy(() -> of(new double[] {1, -1})).hasMessageContaining("-1");
    assertThatThrownBy(() -> of(new double[0])).hasMessageContaining("[]");
  }

  @Test
  void readingLevels() {
    // DU of two cans, low quarter of one: 2 x / (x + 1)
    assertThat(of(new double[] {0.68, 1}).reading()).isEqualTo("good");
    assertThat(of(new double[] {0.6, 1}).reading()).isEqualTo("acceptable");
    assertThat(of(new double[] {0.5, 1}).reading()).isEqualTo("low");
  }

  /** Invented catches: normal, mean 1, SD 0.3, whose DU is 1 - 0.3 · 1.2711 = 0.6187. */
  @Test
  void theIntervalsHoldTheTruthAboutAsOftenAsTheySay() {
    NormalStream random = new NormalStream(11, 3);
    double truth = 1 - 0.3 * 1.2711063; // mean of the lowest quarter of a standard normal
    int held = 0;
    int trials = 300;
    for (int t = 0; t < trials; t++) {
      double[] x = new double[24];
      for (int i = 0; i < x.length; i++) {
        x[i] = Math.max(0.01, 1 + 0.3 * random.next());
      }
      Interval du = UniformityEstimate.of(x, LowQuarter.UP, 500, t).duLowQuarter();
      assertThat(du.low()).isLessThan(du.high());
      held += du.low() <= truth && truth <= du.high() ? 1 : 0;
    }
    assertThat(held / (double) trials).isBetween(0.78, 0.93);
  }

  @Test
  void theSameSeedGivesTheSameIntervals() {
    UniformityEstimate a = UniformityEstimate.of(FIFTEEN, LowQuarter.UP, 300, 7);
    assertThat(UniformityEstimate.of(FIFTEEN, LowQuarter.UP, 300, 7)).isEqualTo(a);
    assertThat(UniformityEstimate.of(FIFTEEN, LowQuarter.UP, 300, 8)).isNotEqualTo(a);
    assertThat(a.cuPct().low()).isLessThan(a.figures().cuPct());
    assertThat(a.cuPct().high()).isGreaterThan(a.figures().cuPct());
  }

  @Test
  void fourCansHaveNoInterval() {
    assertThat(
            UniformityEstimate.of(new double[] {1, 2, 3, 4}, LowQuarter.UP, 200, 1).hasIntervals())
        .isFalse();
  }

  @Test
  void runTimeMultipliers() {
    // arithmetic: the sheet of the 15 cans has 1/(0.4 + 0.6 DU) = 1.433234882636406
    RunTime fifteen = RunTime.of(of(FIFTEEN).duLowQuarter());
    assertThat(fifteen.alternative()).isCloseTo(1.433234882636406, within(1e-12));
    assertThat(fifteen.multiplier())
        .isCloseTo(1 / (0.386 + 0.614 * 0.4962039045553145), within(1e-12));
    assertThat(RunTime.of(1).multiplier()).isCloseTo(1, within(1e-15));
    // 5 mm/d at Kc 0.9 less 1 mm of rain at 12 mm/h, even: 60 · 3.5 / 12 min
    assertThat(RunTime.of(1).with(new WaterNeed(5, 0.9, 1), 12).minutes())
        .isCloseTo(17.5, within(1e-12));
    assertThat(RunTime.of(0.5).with(new WaterNeed(3, 0.9, 9), 12).minutes()).isZero();
    assertThat(RunTime.of(0.5).with(new WaterNeed(3, 0.9, 0), Double.NaN).minutes()).isNaN();
  }
}
